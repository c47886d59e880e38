package climate

import (
	"fourturn/planner/civil"
	"fourturn/planner/working"
)

// SpellRisk is how likely a run of hot days is in a year.
type SpellRisk struct {
	Odds   float64 // of at least one run in a year
	spell  HotSpell
	source working.Source
	by     *Year // from the coldest half of the year on
	from   civil.MonthDay
}

// spellSource is what the odds of a run rest on where there is no whole record.
var spellSource = working.Source{
	Status: working.Estimated, Cite: "days scattered about the normals that hang together as a chain",
}

// HotSpellRisk returns how likely a run of hot days is in a year, counted from the
// middle of winter: 1 January north of the equator, 1 July south of it.
func (c *Climate) HotSpellRisk(spell HotSpell) SpellRisk {
	from := civil.MonthDay{Month: 1, Day: 1}
	if c.Southern() {
		from.Month = 7
	}
	r := SpellRisk{spell: spell, source: spellSource, from: from, by: c.HotSpellOdds(spell, from)}
	if rec := c.base.record; rec != nil {
		if _, ok := rec.spellOdds(float64(spell.Above)-c.maxShift, spell.Days, from); ok {
			r.source = working.Source{Status: working.Entered}
		}
	}
	r.Odds = r.by[DaysPerYear-1]
	return r
}

// By returns the day by which a run has come with the odds given; ok is false where
// they are never reached in a year.
func (r SpellRisk) By(odds Risk) (day civil.MonthDay, ok bool) {
	for i, p := range r.by {
		if p >= odds.clamp()-rounding {
			return MonthDayAt(MonthDayIndex(r.from) + i), true
		}
	}
	return civil.MonthDay{}, false
}

// Estimated reports whether the odds are estimated from means.
func (r SpellRisk) Estimated() bool { return r.source.Status == working.Estimated }

// Working returns the trace of the odds.
func (r SpellRisk) Working() working.Trace {
	entered := working.Source{Status: working.Entered}
	t := working.Trace{
		Name: "climate.hot_spell", Formula: "P(n days in a row with Tmax > θ)",
		Inputs: []working.Input{
			{Symbol: "n", Name: "climate.spell_days", Value: working.Number(float64(r.spell.Days), working.Day), Source: entered},
			{Symbol: "θ", Name: "climate.limit", Value: working.Number(float64(r.spell.Above), working.Celsius), Source: entered},
		},
		Result: working.Number(r.Odds, working.Share), Source: r.source,
	}
	if r.Estimated() {
		t.Notes = append(t.Notes, "climate.note_estimated")
	}
	return t
}
