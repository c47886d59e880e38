package planfile

import (
	"gopkg.in/yaml.v3"

	"fourturn/planner"
	"fourturn/planner/civil"
)

// Ranges of wishes: judgements, as those of the plan.
const (
	mostChangeOuts = 5     // a year, that can be planned
	longestLead    = 180   // days from ordering to planting
	highestMinutes = 10000 // of work at one pot, or on the way
	mostHours      = 1000  // of a crew's day
)

// weekdays are the words for the days of a week.
var weekdays = []string{"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"}

var yearForm = newForm(
	whole("change_outs", countMeasure, 1, mostChangeOuts, func(y *planner.YearSettings) *int { return &y.ChangeOuts }),
	wordList("weekdays", MaxID, weekdays, func(y *planner.YearSettings) *[]string { return &y.Weekdays }),
	list("refused_days", daysForm, func(d *planner.Days) string { return d.From.String() }, func(y *planner.YearSettings) *[]planner.Days { return &y.Refused }),
	whole("lead", daysMeasure, 1, longestLead, func(y *planner.YearSettings) *int { return &y.Lead }),
	wordList("liked_plants", MaxID, nil, func(y *planner.YearSettings) *[]string { return &y.LikedPlants }),
	wordList("refused_plants", MaxID, nil, func(y *planner.YearSettings) *[]string { return &y.RefusedPlants }),
	wordList("liked_colours", MaxID, nil, func(y *planner.YearSettings) *[]string { return &y.LikedColours }),
	wordList("refused_colours", MaxID, nil, func(y *planner.YearSettings) *[]string { return &y.RefusedColours }),
	number("day_worth", priceMeasure, 0.001, highestPrice, func(y *planner.YearSettings) *float64 { return &y.DayWorth }),
	number("labour", priceMeasure, 0.001, highestPrice, func(y *planner.YearSettings) *float64 { return &y.Labour }),
	number("minutes", minutesMeasure, 0.1, highestMinutes, func(y *planner.YearSettings) *float64 { return &y.Minutes }),
	number("trip", minutesMeasure, 0.1, highestMinutes, func(y *planner.YearSettings) *float64 { return &y.Trip }),
	number("crew_hours", hoursMeasure, 0.1, mostHours, func(y *planner.YearSettings) *float64 { return &y.CrewHours }),
)

var daysForm = newForm(
	required(date("from", func(d *planner.Days) *civil.Date { return &d.From })),
	date("to", func(d *planner.Days) *civil.Date { return &d.To }),
)

var pinForm = newForm(
	refer("recipe", recipeReference, func(p *planner.Pin) *string { return &p.Recipe }),
	word("season", func(p *planner.Pin) *planner.Season { return &p.Season }, planner.Seasons[:]...),
	text("plant", MaxID, func(p *planner.Pin) *string { return &p.Plant }),
	text("colour", MaxID, func(p *planner.Pin) *string { return &p.Colour }),
	required(date("from", func(p *planner.Pin) *civil.Date { return &p.From })),
	date("to", func(p *planner.Pin) *civil.Date { return &p.To }),
	flag("start", func(p *planner.Pin) *bool { return &p.Start }),
)

var banForm = newForm(
	refer("recipe", recipeReference, func(b *planner.Ban) *string { return &b.Recipe }),
	text("plant", MaxID, func(b *planner.Ban) *string { return &b.Plant }),
	text("colour", MaxID, func(b *planner.Ban) *string { return &b.Colour }),
	date("from", func(b *planner.Ban) *civil.Date { return &b.From }),
	date("to", func(b *planner.Ban) *civil.Date { return &b.To }),
)

// wordList is a field that holds words on one line, each once, and out of a few where
// they are given.
func wordList[T any](key string, longest int, allowed []string, get func(*T) *[]string) field[T] {
	return field[T]{
		key:  key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) { r.texts(at, n, get(into)) },
		write: func(_ *writer, from *T) *value {
			words := *get(from)
			return onOneLine(len(words), func(i int) string { return words[i] }, func(i int) *value { return textValue(words[i]) })
		},
		check: func(c *checker, at *place, from *T) {
			here := at.in(key)
			seen := make(map[string]bool, len(*get(from)))
			for i, one := range *get(from) {
				itemAt := here.in(itemName(one, i))
				switch p, bad := wordProblem(itemAt, one, allowed); {
				case allowed != nil && bad:
					c.report(p)
				case seen[one]:
					c.report(problem("planfile.duplicate_id", itemAt, "id", one))
				default:
					c.text(here, itemName(one, i), one, longest)
				}
				seen[one] = true
			}
		},
	}
}
