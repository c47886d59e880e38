package planner

import (
	"context"
	"errors"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/rotation"
	"fourturn/planner/working"
)

// BestYear is the best sequence of plantings for a pot, by the measure of the rotation
// chapter, with others that really differ from it. It is a proposal: [TakeYear] makes
// one of them the pot's own.
type BestYear struct {
	Pot      string // id
	Matching []string
	From     civil.Date
	Until    civil.Date // end of the days that were weighed; its own day no longer counts
	Choices  []YearChoice
	Findings []finding.Finding // wishes that cannot hold, with why and what would
	Weighed  int               // plantings that were weighed against each other
}

// YearChoice is one sequence of plantings for a pot. The first of a [BestYear] is the
// best.
type YearChoice struct {
	Stays  []YearStay
	Total  Figure  // display days, all costs taken off
	Money  Figure  // for plants, mix and labour, in the plan's currency
	Loss   float64 // display days by which the total falls short of the best
	Days   int     // on which something else stands than in the best
	Gains  []YearTrade
	Losses []YearTrade
}

// YearTrade is one thing that a choice does better or worse than the best: a key, such
// as "rotation.display", and how much, in display days.
type YearTrade struct {
	Name   string
	Amount float64
}

// YearStay is one planting of a choice from its change-out to the next.
type YearStay struct {
	Planting Planting // as it would stand in the plan; without plants where the pot is empty
	Stood    bool     // it stands already
	Empty    bool     // the pot is empty
	From     civil.Date
	Until    civil.Date // the day of the next
	Earliest civil.Date // zero for what stands
	Latest   civil.Date
	Good     Days
	Reasons  []string // keys of why it begins when it does
	NewMix   bool     // all the mix is replaced before it
	Display  float64  // display days that it is expected to give
}

// ErrNoYear is the error of a search for a pot that has no climate or no size.
var ErrNoYear = errors.New("planner: no year can be planned for a pot without a climate or a size")

// bestMonths is how far ahead the best year looks: a year and a half, so that what is
// planted in a year is judged by what it gives.
const bestMonths = 18

// FindBestYear looks for the best year of a pot: from the plan's recipes, what the pot is
// planted with, single plants of the book and combinations of them, as far as they suit
// its light, its size, the household and the person's taste. It takes seconds at most; an
// error is [ErrNoYear], that of the context, or one that names a fault in the data. It
// only reads its arguments and may run on any goroutine.
func FindBestYear(ctx context.Context, o *Outlook, pot int) (*BestYear, error) {
	if pot < 0 || pot >= len(o.Pots) {
		panic("planner: no such pot")
	}
	b, err := o.yearRequest(pot)
	if err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	result, err := b.search(ctx)
	if err != nil {
		return nil, err
	}
	others, err := result.AlternativesContext(ctx)
	if err != nil {
		return nil, err
	}
	year := &BestYear{
		Pot: o.Pots[pot].Pot.ID, From: b.request.Today, Until: b.request.Until, Findings: b.told(result.Findings),
		Weighed: len(b.request.Candidates),
	}
	for _, i := range b.pots {
		year.Matching = append(year.Matching, o.Pots[i].Pot.ID)
	}
	year.Choices = append(year.Choices, b.choice(result.Best, NewFigure(
		working.Number(result.Best.Value.Total, working.DisplayDay), result.Working)))
	for _, other := range others {
		total := working.Number(other.Sequence.Value.Total, working.DisplayDay)
		c := b.choice(other.Sequence, NewFigure(total, func() working.Trace { return result.WorkingOfSequence(other.Sequence) }))
		c.Loss, c.Days, c.Gains, c.Losses = other.Loss, other.Days, trades(other.Gains), trades(other.Losses)
		year.Choices = append(year.Choices, c)
	}
	return year, nil
}

// search plans the year. Where fewer change-outs are wanted than there are seasons, each
// choice of seasons is planned, and the best is taken.
func (b *yearRequest) search(ctx context.Context) (*rotation.Result, error) {
	var best *rotation.Result
	var failed error
	for _, seasons := range b.choicesOfSeasons() {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		r := b.request
		r.Turns = b.turnsIn(seasons)
		result, err := rotation.Plan(r)
		if errors.Is(err, rotation.ErrNoDays) { // plantings stand as long as they can
			r.MinStand = looseStand
			result, err = rotation.Plan(r)
		}
		switch {
		case err != nil:
			failed = err
		case best == nil || result.Best.Value.Total > best.Best.Value.Total:
			best = result
		}
	}
	if best == nil {
		return nil, failed
	}
	return best, nil
}

func trades(list []rotation.Trade) []YearTrade {
	var told []YearTrade
	for _, t := range list {
		told = append(told, YearTrade{t.Name, t.Amount})
	}
	return told
}

// choice tells a sequence in the plan's terms.
func (b *yearRequest) choice(seq rotation.Sequence, total Figure) YearChoice {
	c := YearChoice{Total: total, Money: NewFigure(working.Number(seq.Value.Money, working.Money), total.Working)}
	for i, stay := range seq.Stays {
		y := YearStay{
			From: stay.From, Until: stay.Until, NewMix: stay.MixReplaced, Display: stay.Value.Display,
			Stood: stay.Candidate == rotation.Stood, Empty: stay.Candidate == rotation.Bare,
		}
		switch {
		case stay.Candidate >= 0:
			y.Planting = b.candidates[stay.Candidate].planting
			y.Planting.Season = b.seasonOn(stay.From)
		case y.Stood && b.standing != nil:
			y.Planting = *b.standing
		}
		if i > 0 || stay.Candidate >= 0 {
			for _, change := range seq.ChangeOuts {
				if change.Day == stay.From && change.To == stay.Candidate {
					y.Earliest, y.Latest, y.Good = min(change.Safe, change.Day), max(change.Latest, change.Day), Days{From: change.Good.From, To: change.Good.To}
					y.Reasons = reasonKeys(change.Reasons)
				}
			}
		}
		c.Stays = append(c.Stays, y)
	}
	return c
}

func reasonKeys(reasons []rotation.Reason) []string {
	keys := make([]string, len(reasons))
	for i, reason := range reasons {
		keys[i] = string(reason)
	}
	return keys
}

// startNear returns the start of a season nearest to a day; false where the spot has no
// such season.
func (s *yearSpot) startNear(season Season, day civil.Date) (civil.Date, bool) {
	named := s.seasonNamed(season)
	if !named.Exists {
		return 0, false
	}
	if named.AllYear {
		return day, true
	}
	best := named.Start.In(day.Year())
	for _, year := range []int{day.Year() - 1, day.Year() + 1} {
		if start := named.Start.In(year); far(start, day) < far(best, day) {
			best = start
		}
	}
	return best, true
}

// TakeYear returns the plan with one choice of a best year as the pot's own plantings,
// and those of the pots that match it: the next planting of each season that the choice
// has. What stands today keeps its season unless the choice changes it within the year.
// No day is pinned. The error is a [*MissingError] where a pot is gone.
func TakeYear(plan Plan, best *BestYear, which int) (Plan, error) {
	if which < 0 || which >= len(best.Choices) {
		panic("planner: no such choice of a year")
	}
	var plantings []Planting
	has := map[Season]bool{}
	add := func(p Planting) {
		if !has[p.Season] && p.Season != "" {
			has[p.Season] = true
			plantings = append(plantings, p)
		}
	}
	for _, stay := range best.Choices[which].Stays {
		if !stay.Stood && !stay.Empty {
			p := stay.Planting
			p.Start = 0
			add(p)
		}
	}
	ids := append([]string{best.Pot}, best.Matching...)
	for _, stay := range best.Choices[which].Stays {
		if stay.Stood {
			add(stay.Planting)
		}
	}
	sortBySeason(plantings)
	return plan.WithPots(ids, func(pot *Pot) { pot.Plantings = clonePlantings(plantings) })
}
