package planfile

import (
	"gopkg.in/yaml.v3"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/mix"
	"fourturn/planner/quantity"
)

// Ranges are wide: they refuse slips of the keyboard, not unusual plans. Each is
// the planner's own judgement but where a source is named.
const (
	lowestElevation   quantity.Length = -450  // below the shore of the Dead Sea
	highestElevation  quantity.Length = 6000  // above any town
	widestOffset                      = 20.0  // K
	steepestLapse                     = 20.0  // K/km, as the climate chapter takes
	largestCan        quantity.Volume = 2000  // L, a tank on a trailer
	longestInterval                   = 90    // days
	highestPrice                      = 1e6   // in any currency
	largestStock                      = 1e6   // kg or L
	mostPlants                        = 10000 // of one kind in one pot
	longestRetirement                 = 100   // planting seasons, 25 years
	largestPail       quantity.Volume = 500   // L, a wheelbarrow and more
	mostParts                         = 1000  // of one thing in a blend
	mostExpansion                     = 10.0  // of a pressed bale
)

var planForm = newForm(
	versionField(),
	text("id", MaxID, func(p *planner.Plan) *string { return &p.ID }),
	text("title", MaxName, func(p *planner.Plan) *string { return &p.Title }),
	units(func(p *planner.Plan) *quantity.System { return &p.Units }),
	currency("currency", func(p *planner.Plan) *string { return &p.Currency }),
	number("risk", shareMeasure, 0.01, 0.99, func(p *planner.Plan) *float64 { return &p.Risk }),
	inner("household", householdForm, func(p *planner.Plan) *planner.Household { return &p.Household }),
	table("sites", siteForm, func(s *planner.Site) *string { return &s.ID }, func(p *planner.Plan) *[]planner.Site { return &p.Sites }),
	table("spots", spotForm, func(s *planner.Spot) *string { return &s.ID }, func(p *planner.Plan) *[]planner.Spot { return &p.Spots }),
	inner("mix", mixForm, func(p *planner.Plan) *planner.MixSettings { return &p.Mix }),
	inner("year", yearForm, func(p *planner.Plan) *planner.YearSettings { return &p.Year }),
	inner("feeding", feedingForm, func(p *planner.Plan) *planner.FeedingSettings { return &p.Feeding }),
	table("products", productForm, func(s *planner.Product) *string { return &s.ID }, func(p *planner.Plan) *[]planner.Product { return &p.Products }),
	table("blends", blendForm, func(s *planner.Blend) *string { return &s.ID }, func(p *planner.Plan) *[]planner.Blend { return &p.Blends }),
	table("recipes", recipeForm, func(s *planner.Recipe) *string { return &s.ID }, func(p *planner.Plan) *[]planner.Recipe { return &p.Recipes }),
	table("pots", potForm, func(s *planner.Pot) *string { return &s.ID }, func(p *planner.Plan) *[]planner.Pot { return &p.Pots }),
	inner("reminders", remindersForm, func(p *planner.Plan) *planner.Reminders { return &p.Reminders }),
	list("snoozed", snoozeForm, func(*planner.Snooze) string { return "" }, func(p *planner.Plan) *[]planner.Snooze { return &p.Snoozed }),
	unique(list("log", entryForm, func(e *planner.Entry) string { return e.ID }, func(p *planner.Plan) *[]planner.Entry { return &p.Log })),
)

var householdForm = newForm(
	flag("cats", func(h *planner.Household) *bool { return &h.Cats }),
	flag("dogs", func(h *planner.Household) *bool { return &h.Dogs }),
	flag("children", func(h *planner.Household) *bool { return &h.Children }),
)

var siteForm = newForm(
	text("name", MaxName, func(s *planner.Site) *string { return &s.Name }),
	coordinate("latitude", "longitude", latitudeMeasure, 90, func(s *planner.Site) (_, _ **float64) { return &s.Latitude, &s.Longitude }),
	coordinate("longitude", "latitude", longitudeMeasure, 180, func(s *planner.Site) (_, _ **float64) { return &s.Longitude, &s.Latitude }),
	text("station", MaxID, func(s *planner.Site) *string { return &s.Station }),
	optional("elevation", elevationMeasure, lowestElevation, highestElevation, func(s *planner.Site) **quantity.Length { return &s.Elevation }),
	number("lapse_rate", lapseMeasure, 0.1, steepestLapse, func(s *planner.Site) *float64 { return &s.LapseRate }),
	text("freeze_station", MaxID, func(s *planner.Site) *string { return &s.FreezeStation }),
	inner("frost", frostForm, func(s *planner.Site) *planner.FrostDates { return &s.Frost }),
	byMonth(table("means", monthMeansForm,
		func(m *planner.MonthMeans) *string { return (*string)(&m.Month) },
		func(s *planner.Site) *[]planner.MonthMeans { return &s.Means }), monthsOf),
	record(),
)

var frostForm = newForm(
	monthDay("last", func(f *planner.FrostDates) *civil.MonthDay { return &f.Last }),
	monthDay("first", func(f *planner.FrostDates) *civil.MonthDay { return &f.First }),
	number("odds", shareMeasure, 0.01, 0.99, func(f *planner.FrostDates) *float64 { return &f.Odds }),
)

func monthsOf(s *planner.Site) []planner.Month {
	months := make([]planner.Month, len(s.Means))
	for i := range s.Means {
		months[i] = s.Means[i].Month
	}
	return months
}

// coordinate is a field of a latitude or longitude, which stands only with the other.
func coordinate(key, other string, m *measure, highest float64, get func(*planner.Site) (own, others **float64)) field[planner.Site] {
	f := optional(key, m, -highest, highest, func(s *planner.Site) **float64 { own, _ := get(s); return own })
	inner := f.check
	f.check = func(c *checker, at *place, from *planner.Site) {
		if own, others := get(from); *own != nil && *others == nil {
			c.report(problem("planfile.missing", at.in(other), "key", other))
		}
		inner(c, at, from)
	}
	return f
}

var spotForm = newForm(
	text("name", MaxName, func(s *planner.Spot) *string { return &s.Name }),
	refer("site", siteReference, func(s *planner.Spot) *string { return &s.Site }),
	word("light", func(s *planner.Spot) *planner.Light { return &s.Light }, planner.Sun, planner.PartSun, planner.Shade),
	text("shelter", MaxID, func(s *planner.Spot) *string { return &s.Shelter }),
	optional("night_offset", offsetMeasure, -widestOffset, widestOffset, func(s *planner.Spot) **float64 { return &s.NightOffset }),
	optional("day_offset", offsetMeasure, -widestOffset, widestOffset, func(s *planner.Spot) **float64 { return &s.DayOffset }),
)

var mixForm = newForm(
	number("settling", shareMeasure, 0.001, 0.6, func(m *planner.MixSettings) *float64 { return &m.Settling }),
	number("refresh", shareMeasure, 0.01, 1, func(m *planner.MixSettings) *float64 { return &m.Refresh }),
	whole("retire_after", countMeasure, 1, longestRetirement, func(m *planner.MixSettings) *int { return &m.RetireAfter }),
	word("substrate", func(m *planner.MixSettings) *string { return &m.Substrate }, substrates()...),
	refer("blend", blendReference, func(m *planner.MixSettings) *string { return &m.Blend }),
	number("pail", volumeMeasure, 0.1, largestPail, func(m *planner.MixSettings) *quantity.Volume { return &m.Pail }),
	number("scoop", volumeMeasure, 0.001, 10, func(m *planner.MixSettings) *quantity.Volume { return &m.Scoop }),
)

// substrates are the keys of the mixes with published properties.
func substrates() []string {
	keys := make([]string, len(mix.Substrates))
	for i, s := range mix.Substrates {
		keys[i] = s.Key
	}
	return keys
}

var recipeForm = newForm(
	text("name", MaxName, func(r *planner.Recipe) *string { return &r.Name }),
	word("season", func(r *planner.Recipe) *planner.Season { return &r.Season }, planner.Seasons[:]...),
	word("light", func(r *planner.Recipe) *planner.Light { return &r.Light }, planner.Sun, planner.PartSun, planner.Shade),
	list("plants", partForm, func(p *planner.Part) string { return p.Plant }, func(r *planner.Recipe) *[]planner.Part { return &r.Parts }),
)

var partForm = newForm(
	required(text("plant", MaxID, func(p *planner.Part) *string { return &p.Plant })),
	word("role", func(p *planner.Part) *planner.Role { return &p.Role }, planner.Thriller, planner.Filler, planner.Spiller),
	whole("count", countMeasure, 1, mostPlants, func(p *planner.Part) *int { return &p.Count }),
	number("share", shareMeasure, 0.001, 1, func(p *planner.Part) *float64 { return &p.Share }),
	flag("stays", func(p *planner.Part) *bool { return &p.Stays }),
)

var entryForm = newForm(
	required(text("id", MaxID, func(e *planner.Entry) *string { return &e.ID })),
	required(date("date", func(e *planner.Entry) *civil.Date { return &e.Date })),
	required(word("kind", func(e *planner.Entry) *planner.EntryKind { return &e.Kind },
		planner.Fed, planner.Skipped, planner.Planted, planner.Diseased, planner.Lost, planner.Lovely, planner.Noted, planner.TopDressed)),
	remembered(names("pots", potReference, func(e *planner.Entry) *[]string { return &e.Pots })),
	remembered(refer("product", productReference, func(e *planner.Entry) *string { return &e.Product })),
	word("season", func(e *planner.Entry) *planner.Season { return &e.Season }, planner.Seasons[:]...),
	number("mass", massMeasure, 1e-6, 1000, func(e *planner.Entry) *quantity.Mass { return &e.Mass }),
	text("text", MaxNotes, func(e *planner.Entry) *string { return &e.Text }),
)

// versionField is the key that makes a YAML file a plan. Its value was looked at
// before the form is read.
func versionField() field[planner.Plan] {
	return field[planner.Plan]{
		key:   versionKey,
		read:  func(*reader, *place, *yaml.Node, *planner.Plan) {},
		write: func(*writer, *planner.Plan) *value { return bareValue(currentVersionText) },
	}
}

// currency is a field of an ISO 4217 code: three capital letters.
func currency[T any](key string, get func(*T) *string) field[T] {
	f := text(key, MaxID, get)
	f.check = func(c *checker, at *place, from *T) {
		code := *get(from)
		bad := len(code) != 3
		for i := 0; i < len(code) && !bad; i++ {
			bad = code[i] < 'A' || code[i] > 'Z'
		}
		if code != "" && bad {
			c.report(problem("planfile.currency", at.in(key), "text", code))
		}
	}
	return f
}

// unique adds to the log that no id may stand twice.
func unique(f field[planner.Plan]) field[planner.Plan] {
	inner := f.check
	f.check = func(c *checker, at *place, from *planner.Plan) {
		inner(c, at, from)
		seen := make(map[string]bool, len(from.Log))
		for i := range from.Log {
			id := from.Log[i].ID
			entryAt := at.in(f.key).in(itemName(id, i))
			if id != "" {
				c.id(entryAt, id)
			}
			if id != "" && seen[id] {
				c.report(problem("planfile.duplicate_id", entryAt, "id", id))
			}
			seen[id] = true
		}
	}
	return f
}

// remembered turns broken references into warnings: the log tells what happened,
// and a pot that was given away since is no reason to refuse the file.
func remembered[T any](f field[T]) field[T] {
	inner := f.check
	f.check = func(c *checker, at *place, from *T) {
		mild := *c
		mild.problems = c.warnings
		inner(&mild, at, from)
	}
	return f
}
