package feeding

import (
	"slices"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Fewest returns how many rounds are to come; its working shows the bound below which no
// plan goes. The value is "–" without any.
func (s *Screen) Fewest() Figure {
	all, _ := s.session.Outlook()
	if all == nil {
		return Figure{}
	}
	return s.figure("feeding.fewest", all.Fewest)
}

// Remarks returns what the plan says of feeding, the gravest first, at most n of them,
// and how many more there are.
func (s *Screen) Remarks(n int) (texts []string, more int) {
	all, _ := s.session.Outlook()
	if all == nil {
		return nil, 0
	}
	for _, f := range all.Findings {
		if !strings.HasPrefix(f.Code, "nutrition.") && f.Code != "plan.shared_strength" && f.Code != "plan.rate_unreadable" {
			continue
		}
		if len(texts) == n {
			more++
			continue
		}
		texts = append(texts, s.words.Finding(f, s.session.Plan().Units))
	}
	return texts, more
}

// Pots returns the names of the pots that have a balance, and their places in the plan.
func (s *Screen) Pots() (names []string, places []int) {
	all, _ := s.session.Outlook()
	if all == nil {
		return nil, nil
	}
	for i := range all.Pots {
		if _, ok := all.Balance(i); ok {
			names, places = append(names, all.Pots[i].Pot.Label()), append(places, i)
		}
	}
	return names, places
}

// Week is one week of a pot's nutrients, as shares of the most that is shown.
type Week struct {
	When                   string
	Charge, Feed           float64 // 0 to 1, heights of what slow release and feeds bring
	Low, High              float64 // 0 to 1, the need
	Now                    bool    // today falls into it
	Supply, Need, Salinity string
	Nitrogen               Figure
}

// Balance returns the nitrogen of a pot week by week, from slow release and feeds,
// against the need of its feeder class.
func (s *Screen) Balance(place int) []Week {
	all, _ := s.session.Outlook()
	if all == nil || place < 0 || place >= len(all.Pots) {
		return nil
	}
	ledger, ok := all.Balance(place)
	if !ok {
		return nil
	}
	top := quantity.Mass(0)
	for _, w := range ledger.Weeks {
		top = max(top, w.Nitrogen(), w.Need.High)
	}
	if top == 0 {
		return nil
	}
	list := make([]Week, len(ledger.Weeks))
	for i, w := range ledger.Weeks {
		list[i] = s.week(ledger, i, top)
		list[i].Now = i == all.BalanceWeek()
		list[i].When = s.words.Date(w.First)
	}
	return list
}

func (s *Screen) week(ledger nutrition.Ledger, i int, top quantity.Mass) Week {
	w, units := ledger.Weeks[i], s.session.Plan().Units
	share := func(m quantity.Mass) float64 { return float64(m / top) }
	week := Week{
		Charge: share(w.Charge.N), Feed: share(w.Feed.N), Low: share(w.Need.Low), High: share(w.Need.High),
		Supply: s.words.Mass(w.Nitrogen(), units), Need: "–",
		Salinity: s.words.Value(working.Number(float64(w.Drain), working.MilliSiemensPerCM), units),
	}
	if w.Need.High > 0 {
		week.Need = s.words.T("feeding.need", words.A{"low": s.words.Mass(w.Need.Low, units), "high": s.words.Mass(w.Need.High, units)})
	}
	week.Nitrogen = s.figure("feeding.nitrogen", planner.NewFigure(working.Number(float64(w.Nitrogen()), working.Kilogram), func() working.Trace {
		return ledger.Working(i)
	}))
	return week
}

// History returns what a pot really had, the latest first: the day and what it was.
func (s *Screen) History(place int) (days, what []string) {
	all, _ := s.session.Outlook()
	if all == nil || place < 0 || place >= len(all.Pots) {
		return nil, nil
	}
	id := all.Pots[place].Pot.ID
	for i := len(all.Plan.Log) - 1; i >= 0; i-- {
		e := &all.Plan.Log[i]
		if !slices.Contains(e.Pots, id) {
			continue
		}
		text := ""
		switch e.Kind {
		case planner.Fed:
			text = s.words.T("feeding.had_fed", words.A{"product": all.Plan.ProductLabel(e.Product)})
		case planner.Skipped:
			text = s.words.T("feeding.had_none")
		default:
			continue
		}
		days, what = append(days, s.words.WeekdayDate(e.Date)), append(what, text)
	}
	return days, what
}
