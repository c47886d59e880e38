package plantest

import (
	"pgregory.net/rapid"

	"fourturn/planner"
)

// wishes draws wishes for the year of all pots.
func wishes(t *rapid.T) planner.YearSettings {
	if rapid.Bool().Draw(t, "no wishes") {
		return planner.YearSettings{}
	}
	words := rapid.SliceOfNDistinct(rapid.StringMatching(`[a-z][a-z0-9_]{0,8}`), 0, 3, func(s string) string { return s })
	y := planner.YearSettings{
		ChangeOuts: rapid.IntRange(0, 5).Draw(t, "change-outs"), Weekdays: some(t, []string{"monday", "saturday", "sunday"}),
		Lead:        rapid.IntRange(0, 60).Draw(t, "lead"),
		LikedPlants: words.Draw(t, "liked"), RefusedPlants: words.Draw(t, "refused"),
		LikedColours: words.Draw(t, "liked colours"), RefusedColours: words.Draw(t, "refused colours"),
		DayWorth: decimal(t, 1, 10, 1), Labour: decimal(t, 1, 90, 1), Minutes: decimal(t, 1, 90, 1), Trip: decimal(t, 1, 90, 1),
		CrewHours: decimal(t, 1, 24, 1),
	}
	for range rapid.IntRange(0, 2).Draw(t, "stretches") {
		y.Refused = append(y.Refused, planner.Days{From: date(t, false), To: date(t, true)})
	}
	return y
}

// wanted draws wishes for one pot.
func wanted(t *rapid.T, p *planner.Pot, recipes []string) {
	if rapid.Bool().Draw(t, "no wishes") {
		return
	}
	p.ChangeOuts, p.Match = rapid.IntRange(0, 5).Draw(t, "change-outs"), Text().Draw(t, "match")
	p.Pins = each(t, "pins", func(t *rapid.T, id string) planner.Pin {
		return planner.Pin{
			ID: id, Recipe: one(t, recipes), Season: season(t), Plant: word(t), Colour: word(t),
			Days: planner.Days{From: date(t, false), To: date(t, true)}, Start: rapid.Bool().Draw(t, "start"),
		}
	})
	p.Bans = each(t, "bans", func(t *rapid.T, id string) planner.Ban {
		return planner.Ban{ID: id, Recipe: one(t, recipes), Plant: word(t), Colour: word(t), Days: planner.Days{From: date(t, true), To: date(t, true)}}
	})
}
