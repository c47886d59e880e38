package planner

import (
	"math"
	"slices"
	"time"

	"fourturn/planner/finding"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// roundDays is how far ahead rounds are planned: a year and a few days, so that the
// round a year from now is there too.
const roundDays = 371

// roundEffort bounds the search for rounds, so that the answer to a keystroke does not
// wait for it: at this effort the example's plan takes as many rounds as at the usual.
const roundEffort = 4_000

// feeding is what the rounds need of one pot.
type feeding struct {
	pot  int // index into Outlook.Pots
	pour nutrition.Pour
}

// rounds plans the shared feeding days from today on and gives every pot its feeds.
func (w *workOut) rounds() {
	turn := w.turn()
	w.doneFeeds()
	if len(turn) == 0 {
		return
	}
	demands, pots := w.demands(turn)
	plan := nutrition.PlanRounds(demands, nutrition.RoundRules{
		First: w.Today, Last: w.Today.AddDays(roundDays), Products: len(turn), Prefer: w.preferred(), Effort: roundEffort,
	})
	w.Findings = append(w.Findings, plan.Findings...)
	turn = w.fromTheFirst(turn, plan.Rounds)
	for i, feeds := range plan.Feeds {
		out := &w.Pots[pots[i].pot]
		for _, f := range feeds {
			out.Feeds = append(out.Feeds, Feed{Date: f.Date, Product: turn[f.Product].product.ID, Water: pourFigure(pots[i].pour)})
		}
	}
	for _, r := range plan.Rounds {
		w.Rounds = append(w.Rounds, w.round(r, turn[r.Product], pots))
	}
}

// fromTheFirst returns the turn as the rounds number it, begun with the first product
// of the plan where no pot has been fed yet: whose turn it is first is then free, and a
// person expects the first.
func (w *workOut) fromTheFirst(turn []turnProduct, rounds []nutrition.Round) []turnProduct {
	if len(rounds) == 0 {
		return turn
	}
	for _, e := range w.Plan.Log {
		if e.Kind == Fed {
			return turn
		}
	}
	first := len(turn) - rounds[0].Product
	return append(append([]turnProduct(nil), turn[first%len(turn):]...), turn[:first%len(turn)]...)
}

func pourFigure(p nutrition.Pour) Figure {
	return NewFigure(working.Number(float64(p.Volume), working.Litre), p.Working)
}

// turnProduct is one soluble product with what stands in the can.
type turnProduct struct {
	product  *Product
	solution nutrition.Solution
}

// turn returns the soluble products in the order of their turns. A product that
// cannot be mixed is left out with a finding.
func (w *workOut) turn() []turnProduct {
	var turn []turnProduct
	for i, id := range w.Plan.Feeding.Turn {
		if slices.Contains(w.Plan.Feeding.Turn[:i], id) {
			continue // named twice
		}
		where := finding.Where{"products", id, "analysis"}
		product := w.Plan.Product(id)
		if product == nil {
			continue
		}
		analysis, err := nutrition.ParseAnalysis(product.Analysis)
		if err != nil {
			w.find("plan.no_analysis", finding.Warning, where)
			continue
		}
		strength := nutrition.PPM(product.Strength)
		if strength == 0 {
			strength = nutrition.ClassOf(nutrition.MediumFeeder).Nitrogen()
		}
		solution, err := nutrition.AtStrength(analysis, strength)
		if err != nil {
			w.find("plan.no_nitrogen", finding.Warning, where)
			continue
		}
		turn = append(turn, turnProduct{product: product, solution: solution})
		if len(turn) == nutrition.MostProducts {
			break
		}
	}
	return turn
}

// demands returns what each pot that is fed asks of the rounds.
func (w *workOut) demands(turn []turnProduct) ([]nutrition.Demand, []feeding) {
	var demands []nutrition.Demand
	var pots []feeding
	for i := range w.Pots {
		out := &w.Pots[i]
		if out.Vessel == nil {
			continue
		}
		open, feeder := w.openSpans(out)
		if len(open) == 0 {
			continue
		}
		d := nutrition.Demand{
			Pot: out.Pot.ID, Interval: w.interval(feeder), Open: open, LastProduct: nutrition.AnyProduct,
		}
		w.remember(&d, turn)
		demands = append(demands, d)
		pots = append(pots, feeding{pot: i, pour: nutrition.PourFor(out.Vessel.FillVolume(), 0, 0)})
	}
	return demands, pots
}

// interval returns the days between feeds: those of the feeder class, or within two
// days of what the person wants.
func (w *workOut) interval(feeder nutrition.Feeder) nutrition.Interval {
	const leeway = 2 // days, so that pots can share rounds; judgement
	if n := w.Plan.Feeding.Interval; n > 0 {
		n = min(n, nutrition.LongestInterval)
		return nutrition.Interval{Shortest: max(1, n-leeway), Longest: min(n+leeway, nutrition.LongestInterval), Wanted: n}
	}
	return nutrition.ClassOf(feeder).Interval
}

// remember takes the last feed from the log, and a skip that came after it. What was
// really in the can decides whose turn it is.
func (w *workOut) remember(d *nutrition.Demand, turn []turnProduct) {
	for _, e := range w.history.fed[d.Pot] {
		if e.Date > w.Today {
			continue
		}
		if e.Kind == Skipped {
			d.NotBefore = e.Date.AddDays(d.Interval.Shortest)
			continue
		}
		d.LastFed, d.LastProduct, d.NotBefore = e.Date, nutrition.AnyProduct, 0
		for k, t := range turn {
			if t.product.ID == e.Product {
				d.LastProduct = k
			}
		}
	}
}

// doneFeeds lists what the log says each pot really had.
func (w *workOut) doneFeeds() {
	for i := range w.Pots {
		out := &w.Pots[i]
		for _, e := range w.history.fed[out.Pot.ID] {
			if e.Kind == Fed && e.Date >= w.First && e.Date <= w.Today {
				out.Feeds = append(out.Feeds, Feed{Date: e.Date, Product: e.Product, Done: true})
			}
		}
	}
	index := make(map[string]int, len(w.Pots))
	for i := range w.Pots {
		index[w.Pots[i].Pot.ID] = i
	}
	for _, e := range w.Plan.Log {
		if e.Kind != Fed || e.Date < w.First || e.Date > w.Today {
			continue
		}
		r := Round{Date: e.Date, Product: e.Product, Done: true}
		for _, id := range e.Pots {
			if i, ok := index[id]; ok {
				r.Pots = append(r.Pots, i)
			}
		}
		w.Rounds = append(w.Rounds, r)
	}
	slices.SortStableFunc(w.Rounds, func(a, b Round) int { return int(a.Date - b.Date) })
}

func (w *workOut) preferred() []time.Weekday {
	for day := time.Sunday; day <= time.Saturday; day++ {
		if weekdayNames[day] == w.Plan.Feeding.FirstDay {
			return []time.Weekday{day}
		}
	}
	return nil
}

var weekdayNames = [...]string{"sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"}

// round works out the can for a round.
func (w *workOut) round(r nutrition.Round, t turnProduct, pots []feeding) Round {
	out := Round{Date: r.Date, Product: t.product.ID}
	total := quantity.Volume(0)
	for _, i := range r.Pots {
		out.Pots = append(out.Pots, pots[i].pot)
		total += pots[i].pour.Volume
	}
	can := w.Plan.Feeding.Can
	if can == 0 {
		can = nutrition.UsualCan
	}
	tablespoon := t.product.SpoonMass
	if tablespoon == 0 {
		tablespoon = nutrition.SolubleSpoon
	}
	volume, filling := sum{name: "plan.round_water", unit: working.Litre, total: float64(total), n: len(r.Pots)}, nutrition.CansOf(t.solution, total, can)
	out.Water = volume.figure()
	out.Dose = NewFigure(working.Number(float64(t.solution.For(total)), working.Kilogram), func() working.Trace {
		return doseWorking(t.solution, total)
	})
	level := nutrition.SpoonsOf(filling.PerCan, tablespoon)
	out.Spoons = NewFigure(working.Number(float64(level.Tablespoons)*3+level.Teaspoons, working.None), func() working.Trace {
		return spoonWorking(t.solution, can, tablespoon, level)
	})
	cans := math.Ceil(float64(total/can)*2) / 2 // half cans are easy to fill
	out.Cans = NewFigure(working.Number(cans, working.None), func() working.Trace {
		return canWorking(total, can, cans)
	})
	return out
}
