package feeding

// Charge is the slow release of one pot.
type Charge struct {
	Pot    string
	Season string
	When   string
	Mass   Figure
	Spoons Figure
	Spent  Figure
}

// Charges returns the slow release that is in the pots or goes in next.
func (s *Screen) Charges() []Charge {
	all, _ := s.session.Outlook()
	if all == nil {
		return nil
	}
	var list []Charge
	for i := range all.Pots {
		p := &all.Pots[i]
		for k := range p.Stands {
			stand := &p.Stands[k]
			if stand.Charge.IsZero() || stand.To <= all.Today {
				continue
			}
			name := p.Pot.Label()
			list = append(list, Charge{
				Pot: name, Season: s.words.T("plan.season." + string(stand.Season)), When: s.words.Date(stand.From),
				Mass: s.figure("feeding.charge", stand.Charge), Spoons: s.figure("feeding.tablespoons", stand.Spoons),
				Spent: s.figure("feeding.spent", stand.Spent),
			})
			break
		}
	}
	return list
}
