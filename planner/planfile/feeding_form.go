package planfile

import (
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

var feedingForm = newForm(
	refer("slow_release", productReference, func(f *planner.FeedingSettings) *string { return &f.SlowRelease }),
	flag("on_top", func(f *planner.FeedingSettings) *bool { return &f.OnTop }),
	word("basis", func(f *planner.FeedingSettings) *planner.ChargeBasis { return &f.Basis }, planner.ChargeAll, planner.ChargeFresh),
	names("turn", productReference, func(f *planner.FeedingSettings) *[]string { return &f.Turn }),
	whole("interval", daysMeasure, 1, longestInterval, func(f *planner.FeedingSettings) *int { return &f.Interval }),
	number("can", volumeMeasure, 0.1, largestCan, func(f *planner.FeedingSettings) *quantity.Volume { return &f.Can }),
	word("first_day", func(f *planner.FeedingSettings) *string { return &f.FirstDay },
		weekdays...),
	number("water_ec", conductivityMeasure, 0.001, 10, func(f *planner.FeedingSettings) *float64 { return &f.WaterEC }),
	number("leaching", shareMeasure, 0.01, 0.6, func(f *planner.FeedingSettings) *float64 { return &f.Leaching }),
	number("injector", countMeasure, 2, 2000, func(f *planner.FeedingSettings) *float64 { return &f.Injector }),
	flag("parts_added", func(f *planner.FeedingSettings) *bool { return &f.PartsAdded }),
	whole("lead", daysMeasure, 1, 365, func(f *planner.FeedingSettings) *int { return &f.Lead }),
	inner("rules", feedRulesForm, func(f *planner.FeedingSettings) *planner.FeedRules { return &f.Rules }),
	inner("release", releaseForm, func(f *planner.FeedingSettings) *planner.ReleaseSettings { return &f.Release }),
)

var feedRulesForm = newForm(
	number("starter_weeks", weeksMeasure, 0.1, 26, func(r *planner.FeedRules) *float64 { return &r.StarterWeeks }),
	number("charge_weeks", weeksMeasure, 0.1, 52, func(r *planner.FeedRules) *float64 { return &r.ChargeWeeks }),
	whole("stop_before", daysMeasure, 1, 90, func(r *planner.FeedRules) *int { return &r.StopBefore }),
	optional("coldest", temperatureMeasure, -10, 25, func(r *planner.FeedRules) **quantity.Temperature { return &r.Coldest }),
	number("heat_above", temperatureMeasure, 15, 60, func(r *planner.FeedRules) *quantity.Temperature { return &r.HeatAbove }),
	number("heat_share", shareMeasure, 0.05, 1, func(r *planner.FeedRules) *float64 { return &r.HeatShare }),
	whole("young_days", daysMeasure, 1, 180, func(r *planner.FeedRules) *int { return &r.YoungDays }),
	number("young_share", shareMeasure, 0.05, 1, func(r *planner.FeedRules) *float64 { return &r.YoungShare }),
	monthDay("rest_from", func(r *planner.FeedRules) *civil.MonthDay { return &r.RestFrom }),
	monthDay("rest_to", func(r *planner.FeedRules) *civil.MonthDay { return &r.RestTo }),
)

// Published shares at which a charge counts as spent are 75 to 95 %, and activation
// energies 37 to 46 kJ/mol; what lies a little outside may be measured by a person.
var releaseForm = newForm(
	number("spent", shareMeasure, 0.55, 0.99, func(r *planner.ReleaseSettings) *float64 { return &r.Spent }),
	number("activation_energy", energyMeasure, 1, 150, func(r *planner.ReleaseSettings) *float64 { return &r.ActivationEnergy }),
)

var remindersForm = newForm(
	clock("at", func(r *planner.Reminders) *string { return &r.At }),
	flag("quiet", func(r *planner.Reminders) *bool { return &r.Quiet }),
)

var snoozeForm = newForm(
	required(word("kind", func(s *planner.Snooze) *planner.DueKind { return &s.Kind }, planner.DueFeed, planner.DueChangeOut)),
	remembered(names("pots", potReference, func(s *planner.Snooze) *[]string { return &s.Pots })),
	word("season", func(s *planner.Snooze) *planner.Season { return &s.Season }, planner.Seasons[:]...),
	required(date("until", func(s *planner.Snooze) *civil.Date { return &s.Until })),
	date("set", func(s *planner.Snooze) *civil.Date { return &s.Set }),
)

// clock is a field of a time of day, HH:MM.
func clock[T any](key string, get func(*T) *string) field[T] {
	f := text(key, MaxID, get)
	f.check = func(c *checker, at *place, from *T) {
		if s := *get(from); s != "" && !validClock(s) {
			c.report(problem("planfile.clock", at.in(key), "text", s))
		}
	}
	return f
}

func validClock(s string) bool {
	if len(s) != len("08:00") || s[2] != ':' {
		return false
	}
	for _, i := range []int{0, 1, 3, 4} {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s[:2] < "24" && s[3:] < "60"
}
