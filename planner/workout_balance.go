package planner

import (
	"slices"
	"strings"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Weeks of a pot's balance before and after today's: a season back, for the salts that
// are still there, and nearly a year ahead.
const (
	balanceBack  = 12
	balanceAhead = 40
)

// balances settles the slow release of every pot and reports pots that get too little,
// too much or grow too salty.
func (w *workOut) balances() {
	for i := range w.Pots {
		out := &w.Pots[i]
		if out.Vessel == nil {
			continue
		}
		w.settle(out)
		out.thermal = w.thermal(out)
		out.growth = w.growth(out)
		if !w.fedAtAll() {
			continue
		}
		if ledger, ok := w.Balance(i); ok {
			w.Findings = append(w.Findings, ledger.FindingsFrom(balanceBack)...)
		}
	}
}

// fedAtAll reports whether the plan feeds: where it names neither slow release nor
// soluble products, that every pot gets too little is no news.
func (w *workOut) fedAtAll() bool { return w.slow != nil || len(w.Plan.Feeding.Turn) > 0 }

// growth returns the days on which the plants of a pot grow and eat: not while the mix's
// own charge feeds them, nor in the cold, nor at rest.
func (w *workOut) growth(out *PotOutlook) []nutrition.Growth {
	var growth []nutrition.Growth
	for i := range out.Stands {
		s := &out.Stands[i]
		if !s.Feeder.Known() || s.To <= s.From {
			continue
		}
		days := w.opening(out, s).days
		starter := s.From.AddDays(int(w.rules.StarterWeeks * 7))
		spans := slices.Clone(days.Open)
		for _, c := range days.Closed {
			if c.Reason == "nutrition.closed.change_out" || c.Reason == "nutrition.closed.covered" {
				spans = append(spans, nutrition.Span{First: max(c.First, starter), Last: c.Last})
			}
		}
		class := nutrition.ClassOf(s.Feeder)
		for _, span := range nutrition.JoinSpans(spans) {
			growth = append(growth, nutrition.Growth{Span: span, Class: class})
		}
	}
	return growth
}

// BalanceStart returns the first day of the balances: a Monday, so that a week reads as
// one.
func (o *Outlook) BalanceStart() civil.Date {
	monday := o.Today
	for monday.Weekday() != 1 {
		monday--
	}
	return monday.AddDays(-7 * balanceBack)
}

// BalanceWeek returns the number of the week of a balance that today falls into.
func (o *Outlook) BalanceWeek() int { return balanceBack }

// Balance returns the nutrients of a pot week by week, from slow release and feeds,
// against what its plants need. Feeds that the log tells of count with the strength that
// their can would have today. ok is false for a pot whose size is faulty.
func (o *Outlook) Balance(pot int) (l nutrition.Ledger, ok bool) {
	out := &o.Pots[pot]
	if out.Vessel == nil || len(out.growth) == 0 && len(out.tracks) == 0 {
		return nutrition.Ledger{}, false
	}
	account := nutrition.Account{
		Pot: out.Pot.ID, Mix: out.Vessel.FillVolume(), Growth: out.growth, Tracks: out.tracks,
		Water: nutrition.Conductivity(o.Plan.Feeding.WaterEC), Leaching: o.Plan.Feeding.Leaching,
	}
	if !(account.Mix > 0) {
		return nutrition.Ledger{}, false
	}
	pour := nutrition.PourFor(account.Mix, 0, account.Leaching).Volume
	for _, f := range out.Feeds {
		if given, known := o.given(out, f, pour); known {
			account.Feeds = append(account.Feeds, given)
		}
	}
	return account.Weeks(o.BalanceStart(), balanceBack+balanceAhead), true
}

// given returns what a feed brings a pot; known is false where nobody knows what was in
// the can.
func (o *Outlook) given(out *PotOutlook, f Feed, pour quantity.Volume) (given nutrition.GivenFeed, known bool) {
	solution, ok := o.inCan(f.Date, f.Product, out)
	if !ok {
		return nutrition.GivenFeed{}, false
	}
	if f.Share > 0 {
		solution = solution.Diluted(f.Share)
	}
	given = nutrition.GivenFeed{Date: f.Date, Solution: solution, Volume: pour}
	if slope, published := o.slopes[f.Product]; published {
		given.Slope = slope
	}
	return given, true
}

// inCan returns the solution of a round, or for one that is done that of the pot's own
// class.
func (o *Outlook) inCan(day civil.Date, product string, out *PotOutlook) (nutrition.Solution, bool) {
	if s, ok := o.cans[can{day, product}]; ok {
		return s, true
	}
	p, ok := o.soluble[product]
	if !ok {
		return nutrition.Solution{}, false
	}
	feeders := map[nutrition.Feeder]bool{}
	if s := out.Standing(day); s != nil {
		feeders[s.Feeder] = true
	}
	return p.solution(strengthOf(p.product, feeders)), true
}

// can tells one can from others.
type can struct {
	day     civil.Date
	product string
}

// remember keeps what was worked out of the cans, for the balances.
func (w *workOut) remember() {
	w.cans, w.soluble, w.slopes = map[can]nutrition.Solution{}, map[string]turnProduct{}, map[string]nutrition.Slope{}
	for i := range w.Rounds {
		if r := &w.Rounds[i]; !r.Done {
			w.cans[can{r.Date, r.Product}] = r.solution
		}
	}
	for i := range w.Plan.Products {
		p := &w.Plan.Products[i]
		analysis, err := nutrition.ParseAnalysis(p.Analysis)
		if p.Kind != Soluble || err != nil || analysis.N == 0 {
			continue
		}
		w.soluble[p.ID] = turnProduct{product: p, analysis: analysis}
		if slope, ok := SlopeOf(p); ok {
			w.slopes[p.ID] = slope
		}
	}
}

// nameParts gives the remarks on feeding the names of pots, by which a person knows
// them, for their ids.
func (w *workOut) nameParts() {
	labels := make(map[string]string, len(w.Pots))
	for i := range w.Pots {
		labels[w.Pots[i].Pot.ID] = w.Pots[i].Pot.Label()
	}
	for i := range w.Findings {
		f := &w.Findings[i]
		if !strings.HasPrefix(f.Code, "nutrition.") {
			continue
		}
		f.Args = slices.Clone(f.Args)
		for k := range f.Args {
			a := &f.Args[k]
			if label, ok := labels[a.Value.Text]; ok && (a.Name == "pot" || a.Name == "other") {
				a.Value = working.Text(label)
			}
		}
	}
}

// namedProducts gives remarks that number a product of the turn its name.
func namedProducts(found []finding.Finding, turn []turnProduct) []finding.Finding {
	for i := range found {
		for k := range found[i].Args {
			a := &found[i].Args[k]
			if n := int(a.Value.Number); a.Name == "product" && a.Value.Text == "" && n >= 1 && n <= len(turn) {
				a.Value = working.Text(labelOf(turn[n-1].product.Name, turn[n-1].product.ID))
			}
		}
	}
	return found
}
