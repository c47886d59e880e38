package rotation

import (
	"math"

	"fourturn/planner/civil"
	"fourturn/planner/working"
)

// WorkingOn returns how the display value of a planting on a day comes about: each
// part's fullness, what heat and age have left, the look of the season, the chance
// to be alive. It panics when the days lie outside the climate.
func (o *Outlook) WorkingOn(p *Planting, start, day civil.Date) working.Trace {
	params := o.params.Working()
	t := working.Trace{
		Name:    "rotation.display_value",
		Formula: "V = Σ s × v",
		Result:  working.Number(o.Value(p, start, day), working.Share),
		Source:  judgement,
		Notes:   []string{"rotation.note_expected"},
	}
	for _, part := range p.Parts {
		own := o.workingOfPart(part, start, day)
		t.Inputs = append(
			t.Inputs,
			working.Input{Symbol: "s", Name: "rotation.share", Value: working.Number(part.Share, working.Share), Source: working.Source{Status: working.Entered}},
			working.Input{Symbol: "v", Name: "rotation.part", Value: own.Result, Source: judgement, From: own},
		)
	}
	t.Inputs = append(t.Inputs, working.Input{Name: "rotation.parameters", Source: judgement, From: &params})
	return t
}

func (o *Outlook) workingOfPart(part Part, start, day civil.Date) *working.Trace {
	from, to := o.span(start, day)
	c := o.newCourse(part)
	for i := from; i < to; i++ {
		c.step(i)
	}
	d, derived := c.days, working.Source{Status: working.Derived}
	input := func(symbol, name string, value float64, source working.Source) working.Input {
		return working.Input{Symbol: symbol, Name: name, Value: working.Number(value, working.Share), Source: source}
	}
	return &working.Trace{
		Name:    "rotation.part",
		Formula: "v = F × H × G × C × A",
		Result:  working.Number(c.value(to), working.Share),
		Source:  judgement,
		Inputs: []working.Input{
			{Name: "rotation.plant", Value: working.Text(part.Plant.ID), Source: derived},
			{Name: "rotation.planted", Value: working.Date(start), Source: derived},
			{Name: "rotation.day", Value: working.Date(day), Source: derived},
			input("F", "rotation.part_fullness", c.fullness, working.Source{
				Status: working.Published,
				Cite:   "development follows the 24-hour mean between base and optimum: Michigan State University Extension, by way of Greenhouse Grower",
			}),
			input("H", "rotation.part_heat", math.Exp(d.heat[from]-d.heat[to]), judgement),
			input("G", "rotation.part_age", c.fade(), judgement),
			input("C", "rotation.part_season", d.steady[to], judgement),
			input("A", "rotation.part_alive", math.Exp(-d.danger(from, to, o.params.HardeningDays)), working.Source{
				Status: working.Derived,
				Cite:   "odds of the last and the first freeze by NOAA's definitions, read as a Poisson process",
			}),
		},
	}
}

// WorkingOf returns why a change-out of the best sequence falls on its day: what it
// costs to move it a week either way, its spread and what the spread rests on.
func (r *Result) WorkingOf(changeOut int) working.Trace {
	c := r.Best.ChangeOuts[changeOut]
	derived := working.Source{Status: working.Derived}
	t := working.Trace{
		Name:    "rotation.change_out",
		Formula: "t = arg max total(t)",
		Result:  working.Date(c.Day),
		Source:  judgement,
		Inputs: []working.Input{
			{Name: "rotation.good_from", Value: working.Date(c.Good.From), Source: judgement},
			{Name: "rotation.good_to", Value: working.Date(c.Good.To), Source: judgement},
			{Name: "rotation.safe", Value: working.Date(c.Safe), Source: derived},
			{Name: "rotation.latest", Value: working.Date(c.Latest), Source: judgement},
			{Name: "rotation.season_value", Value: working.Number(c.SeasonValue, working.DisplayDay), Source: judgement},
			{Name: "rotation.risk", Value: working.Number(r.req.Risk, working.Share), Source: working.Source{Status: working.Entered}},
		},
		Notes: []string{"rotation.note_exact", "rotation.note_expected"},
	}
	const week = 7
	for _, move := range []struct {
		name string
		days int
	}{{"rotation.week_earlier", -week}, {"rotation.week_later", week}} {
		if cost, ok := r.CostOfMoving(changeOut, c.Day.AddDays(move.days)); ok {
			t.Inputs = append(t.Inputs, working.Input{Name: move.name, Value: working.Number(cost, working.DisplayDay), Source: judgement})
		}
	}
	for _, reason := range c.Reasons {
		t.Notes = append(t.Notes, string(reason))
	}
	return t
}
