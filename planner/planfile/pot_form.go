package planfile

import (
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

var potForm = newForm(append(append(
	[]field[planner.Pot]{
		text("name", MaxName, func(p *planner.Pot) *string { return &p.Name }),
		refer("spot", spotReference, func(p *planner.Pot) *string { return &p.Spot }),
		text("client", MaxName, func(p *planner.Pot) *string { return &p.Client }),
	},
	vesselFields()...),
	word("refresh", func(p *planner.Pot) *planner.RefreshPolicy { return &p.Refresh },
		planner.ReplaceShare, planner.TopUp, planner.AllFresh),
	number("refresh_share", shareMeasure, 0.01, 1, func(p *planner.Pot) *float64 { return &p.RefreshShare }),
	whole("retire_after", countMeasure, 1, longestRetirement, func(p *planner.Pot) *int { return &p.RetireAfter }),
	date("mix_since", func(p *planner.Pot) *civil.Date { return &p.MixSince }),
	inSeason(table("plantings", plantingForm,
		func(p *planner.Planting) *string { return (*string)(&p.Season) },
		func(p *planner.Pot) *[]planner.Planting { return &p.Plantings })),
	number("plant_mass", massMeasure, 0.001, 5000, func(p *planner.Pot) *quantity.Mass { return &p.PlantMass }),
	whole("change_outs", countMeasure, 1, mostChangeOuts, func(p *planner.Pot) *int { return &p.ChangeOuts }),
	text("match", MaxName, func(p *planner.Pot) *string { return &p.Match }),
	table("pins", pinForm, func(p *planner.Pin) *string { return &p.ID }, func(p *planner.Pot) *[]planner.Pin { return &p.Pins }),
	table("bans", banForm, func(b *planner.Ban) *string { return &b.ID }, func(p *planner.Pot) *[]planner.Ban { return &p.Bans }),
	text("notes", MaxNotes, func(p *planner.Pot) *string { return &p.Notes }),
)...)

var plantingForm = newForm(
	refer("recipe", recipeReference, func(p *planner.Planting) *string { return &p.Recipe }),
	date("start", func(p *planner.Planting) *civil.Date { return &p.Start }),
	list("plants", partForm, func(p *planner.Part) string { return p.Plant }, func(p *planner.Planting) *[]planner.Part { return &p.Plants }),
)

// inSeason adds to the table of plantings that its keys are the seasons.
func inSeason(f field[planner.Pot]) field[planner.Pot] {
	return keyedBy(f, planner.Seasons[:], func(from *planner.Pot) []planner.Season {
		seasons := make([]planner.Season, len(from.Plantings))
		for i := range seasons {
			seasons[i] = from.Plantings[i].Season
		}
		return seasons
	})
}
