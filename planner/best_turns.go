package planner

import (
	"slices"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/rotation"
	"fourturn/planner/working"
)

// turnStart is a season's change-out in the days ahead, by the site's own day.
type turnStart struct {
	season Season
	day    civil.Date
	by     civil.Date // half way to the next: the last day on which the planting may go out
}

// turnStarts lists the seasons' change-outs that are still to come.
func (b *yearRequest) turnStarts() []turnStart {
	s := b.spots[0]
	var list []turnStart
	for i, named := range s.seasons.List {
		if !named.Exists {
			continue
		}
		for year := b.o.Today.Year() - 1; year <= b.o.Today.Year()+3; year++ {
			start := civil.New(year, 1, 1) // any day will do where the season has no start
			if !named.AllYear {
				start = named.Start.In(year)
			}
			list = append(list, turnStart{season: Seasons[i], day: start})
		}
	}
	slices.SortFunc(list, func(x, y turnStart) int { return int(x.day - y.day) })
	until := b.o.Today.AddMonths(bestMonths)
	kept := list[:0]
	for k := 0; k+1 < len(list); k++ {
		t := list[k]
		t.by = middle(t.day, list[k+1].day)
		if t.by > b.o.Today.AddDays(lateTurn+b.o.Plan.Year.Lead) && t.day < until && !b.done(t) {
			kept = append(kept, t)
		}
	}
	return kept
}

func middle(a, b civil.Date) civil.Date { return a.AddDays(int(b-a) / 2) }

// done reports whether the pot stands in a season's planting already.
func (b *yearRequest) done(t turnStart) bool {
	s := b.first.Standing(b.o.Today)
	return s != nil && s.Season == t.season && far(s.From, t.day) < halfYear/2
}

// choicesOfSeasons lists the sets of seasons to plan for: all that the site has, or each
// choice of as many as are wanted.
func (b *yearRequest) choicesOfSeasons() [][]Season {
	var exist []Season
	for i, named := range b.spots[0].seasons.List {
		if named.Exists {
			exist = append(exist, Seasons[i])
		}
	}
	if b.most >= len(exist) {
		if b.wanted > len(exist) {
			b.beyond = append(b.beyond, finding.Finding{
				Code: "rotation.fewer_change_outs", Severity: finding.Note, Where: finding.Where{"pots", b.first.Pot.ID},
				Args: []finding.Arg{
					{Name: "wanted", Value: working.Number(float64(b.wanted), working.None)},
					{Name: "made", Value: working.Number(float64(len(exist)), working.None)},
				},
			})
		}
		return [][]Season{exist}
	}
	var sets [][]Season
	for bits := range 1 << len(exist) {
		var set []Season
		for i, season := range exist {
			if bits>>i&1 == 1 {
				set = append(set, season)
			}
		}
		if len(set) == b.most {
			sets = append(sets, set)
		}
	}
	return sets
}

// turnsIn lists the turns of some seasons, each with the candidates that are for it. A
// turn for which no candidate has a day may be left out.
func (b *yearRequest) turnsIn(seasons []Season) []rotation.Turn {
	starts := slices.DeleteFunc(slices.Clone(b.starts), func(t turnStart) bool { return !slices.Contains(seasons, t.season) })
	var turns []rotation.Turn
	for k, t := range starts {
		by := t.by
		if k+1 < len(starts) {
			by = middle(t.day, starts[k+1].day)
		}
		turn := rotation.Turn{Candidate: -1, By: by}
		for i := range b.candidates {
			switch {
			case !b.candidates[i].isFor(t.season):
			case turn.Candidate < 0:
				turn.Candidate = i
			default:
				turn.Others = append(turn.Others, i)
			}
		}
		if turn.Candidate >= 0 && by > b.o.Today {
			turns = append(turns, turn)
		}
	}
	r := b.request
	r.Turns = turns
	for _, k := range r.WithoutDays() {
		turns[k].Optional = true
	}
	return turns
}

// seasonOn names the season for which a planting goes out on a day.
func (b *yearRequest) seasonOn(day civil.Date) Season {
	best, away := Seasons[0], -1
	for _, t := range b.starts {
		if away < 0 || far(t.day, day) < away {
			best, away = t.season, far(t.day, day)
		}
	}
	return best
}
