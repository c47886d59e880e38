package pots

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/mix"
)

// policies are what can be done with old mix, in the order in which they are offered.
var policies = [...]planner.RefreshPolicy{planner.ReplaceShare, planner.TopUp, planner.AllFresh}

// mixGroup is what becomes of the pot's mix from change-out to change-out.
func (s *Screen) mixGroup(pot *planner.Pot) Group {
	w := s.words
	g := Group{Key: groupMix, Summary: s.mixSummary(pot)}
	policy := Choice{}
	for i, p := range policies {
		policy.Options = append(policy.Options, w.T("pots.policy."+string(p)))
		if pot.Refresh == p {
			policy.Chosen = i
		}
	}
	g.Fields = append(g.Fields, s.choice("refresh", w.T("pots.policy"), policy, s.setPolicy))
	if policies[policy.Chosen] == planner.ReplaceShare {
		g.Fields = append(g.Fields, Field{
			Key: "refresh_share", Label: w.T("pots.share"), Help: w.T("pots.help_share", words.A{"share": w.Percent(s.planShare())}),
			Value: s.share(pot.RefreshShare), Take: s.setShare,
		})
	}
	since := ""
	if !pot.MixSince.IsZero() {
		since = pot.MixSince.String()
	}
	retire := ""
	if pot.RetireAfter > 0 {
		retire = strconv.Itoa(pot.RetireAfter)
	}
	g.Fields = append(g.Fields,
		Field{Key: "mix_since", Label: w.T("pots.mix_since"), Help: w.T("pots.help_since"), Value: since, Take: s.setMixSince},
		Field{Key: "retire_after", Label: w.T("pots.retire"), Help: w.T("pots.help_retire", words.A{"seasons": s.planRetire()}), Value: retire, Take: s.setRetire})
	if f, ok := s.diseaseField(pot); ok {
		g.Fields = append(g.Fields, f)
	}
	return g
}

func (s *Screen) mixSummary(pot *planner.Pot) string {
	w := s.words
	policy := pot.Refresh
	if policy == "" {
		policy = planner.ReplaceShare
	}
	share := pot.RefreshShare
	if share == 0 {
		share = s.planShare()
	}
	text := w.T("pots.summary_policy."+string(policy), words.A{"share": w.Percent(share)})
	if out, all := s.outlook(pot), s.today(); out != nil {
		if stand := out.Standing(all); stand != nil && !pot.MixSince.IsZero() {
			text = w.T("pots.summary_age", words.A{"policy": text, "age": w.Number(ageOn(stand, all), 1)})
		}
	}
	return words.Capital(text)
}

// ageOn returns the mean age of the mix under a stand on a day, in planting seasons.
func ageOn(stand *planner.Stand, day civil.Date) float64 {
	const season = 365.25 / 4 // days
	return stand.Balance.After.Age + float64(day-stand.From)/season
}

func (s *Screen) today() civil.Date {
	all, _ := s.session.Outlook()
	if all == nil {
		return 0
	}
	return all.Today
}

func (s *Screen) planShare() float64 {
	if share := s.session.Plan().Mix.Refresh; share > 0 {
		return share
	}
	return mix.DefaultShare
}

func (s *Screen) planRetire() int {
	if n := s.session.Plan().Mix.RetireAfter; n > 0 {
		return n
	}
	return mix.DefaultRetireAfter
}

// share writes a share that was given; none is written as nothing.
func (s *Screen) share(x float64) string {
	if x == 0 {
		return ""
	}
	return s.words.Percent(x)
}

func (s *Screen) setPolicy(i int) error {
	pot := s.Chosen()
	if pot == nil || i < 0 || i >= len(policies) || pot.Refresh == policies[i] || i == 0 && pot.Refresh == "" {
		return nil
	}
	return s.do("pots.edit_mix", s.about(pot), func(p *planner.Pot) { p.Refresh = policies[i] })
}

func (s *Screen) setShare(typed string) error {
	pot := s.Chosen()
	if pot == nil {
		return nil
	}
	share := 0.0
	if typed = strings.TrimSpace(typed); typed != "" {
		x, ok := s.words.Reader().Number(strings.TrimSuffix(typed, "%"))
		const least, most = 1, 100 // per cent
		if !ok || x < least || x > most {
			return &words.Refusal{Text: s.words.T("pots.share_range")}
		}
		share = x / 100
	}
	return s.do("pots.edit_mix", s.about(pot), func(p *planner.Pot) { p.RefreshShare = share })
}

func (s *Screen) setMixSince(typed string) error {
	pot := s.Chosen()
	if pot == nil {
		return nil
	}
	since := civil.Date(0)
	if typed = strings.TrimSpace(typed); typed != "" {
		day, err := civil.Parse(typed)
		if err != nil {
			return &words.Refusal{Text: s.words.T("pots.day_format")}
		}
		if today := s.today(); !today.IsZero() && day > today {
			return &words.Refusal{Text: s.words.T("pots.day_future")}
		}
		since = day
	}
	return s.do("pots.edit_mix", s.about(pot), func(p *planner.Pot) { p.MixSince = since })
}

func (s *Screen) setRetire(typed string) error {
	pot := s.Chosen()
	if pot == nil {
		return nil
	}
	n := 0
	if typed = strings.TrimSpace(typed); typed != "" {
		x, ok := s.words.Reader().Number(typed)
		const most = 100
		if !ok || x < 1 || x > most || x != math.Trunc(x) {
			return &words.Refusal{Text: s.words.T("pots.count_range", words.A{"most": most})}
		}
		n = int(x)
	}
	return s.do("pots.edit_mix", s.about(pot), func(p *planner.Pot) { p.RetireAfter = n })
}

// diseaseField is the disease that was seen on what stands in the pot now.
func (s *Screen) diseaseField(pot *planner.Pot) (Field, bool) {
	out := s.outlook(pot)
	if out == nil {
		return Field{}, false
	}
	stand := out.Standing(s.today())
	if stand == nil {
		return Field{}, false
	}
	value := ""
	for _, e := range s.diseases(pot, stand) {
		value = e.Text
		if value == "" {
			value = s.words.T("pots.disease_unnamed")
		}
	}
	return Field{
		Key: "disease", Label: s.words.T("pots.disease"), Help: s.words.T("pots.help_disease"), Value: value,
		Take: func(typed string) error { return s.setDisease(pot, stand, strings.TrimSpace(typed)) },
	}, true
}

// diseases are the entries of the log on disease in what stands in a pot, of that pot
// alone or with others.
func (s *Screen) diseases(pot *planner.Pot, stand *planner.Stand) []planner.Entry {
	var list []planner.Entry
	for _, e := range s.session.Plan().Log {
		if e.Kind == planner.Diseased && e.Date >= stand.From && e.Date < stand.To && slices.Contains(e.Pots, pot.ID) {
			list = append(list, e)
		}
	}
	return list
}

// setDisease enters in the log which disease was seen today, or takes it back.
func (s *Screen) setDisease(pot *planner.Pot, stand *planner.Stand, name string) error {
	seen := s.diseases(pot, stand)
	if name == "" && len(seen) == 0 || len(seen) == 1 && seen[0].Text == name {
		return nil
	}
	entry := planner.Entry{ID: s.newID(), Date: s.today(), Kind: planner.Diseased, Pots: []string{pot.ID}, Text: name}
	if len(seen) > 0 {
		entry.Date = seen[0].Date
	}
	err := s.session.Do("pots.edit_disease", s.about(pot), func(p planner.Plan) (planner.Plan, error) {
		var err error
		for _, e := range seen {
			if p, err = p.WithoutEntry(e.ID); err != nil {
				return p, err
			}
			if others := slices.DeleteFunc(slices.Clone(e.Pots), func(id string) bool { return id == pot.ID }); len(others) > 0 { // what it says of others stays
				e.Pots = others
				p = p.WithEntry(e)
			}
		}
		if name != "" {
			p = p.WithEntry(entry)
		}
		return p, nil
	})
	return s.readable(err)
}

// BalanceRow is one change-out of the chosen pot in volumes, firm.
type BalanceRow struct {
	When, Season                            string
	BallsOut, OldOut, BallsIn, Fresh, After string
	Age                                     string
	Reason                                  string
	Now                                     bool // what stands there now began with it
	Figure                                  planner.Figure
}

// Balance returns what goes into the chosen pot and what comes out, at each change-out
// from the one before to the last that is planned.
func (s *Screen) Balance() []BalanceRow {
	out := s.outlook(s.Chosen())
	if out == nil || out.Vessel == nil {
		return nil
	}
	today := s.today()
	rows := make([]BalanceRow, 0, len(out.Stands))
	for i := range out.Stands {
		stand := &out.Stands[i]
		b := &stand.Balance
		if stand.Mix.IsZero() {
			continue
		}
		rows = append(rows, BalanceRow{
			When: s.words.ShortDate(stand.From), Season: s.words.T("plan.season." + string(stand.Season)),
			BallsOut: s.volume(b.BallsOut), OldOut: s.volume(b.OldOut), BallsIn: s.volume(b.BallsIn),
			Fresh: s.volume(b.Fresh), After: s.volume(b.After.Volume), Age: s.words.Number(b.After.Age, 1),
			Reason: s.words.T(string(b.Reason)), Now: stand.From <= today && today < stand.To, Figure: stand.Mix,
		})
	}
	return rows
}

// Through returns the sums of a year from today of the chosen pot's balance, in words.
func (s *Screen) Through() string {
	out := s.outlook(s.Chosen())
	if out == nil {
		return ""
	}
	const year = 365
	var total mix.Total
	n := 0
	for i := range out.Stands {
		if stand := &out.Stands[i]; !stand.Mix.IsZero() && stand.From >= s.today() && stand.From < s.today().AddDays(year) {
			total.Add(stand.Balance)
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return s.words.T("pots.balance_year", words.A{
		"count": n, "fresh": s.volume(total.Fresh), "loose": s.volume(total.Loose), "old": s.volume(total.OldOut + total.BallsOut),
	})
}
