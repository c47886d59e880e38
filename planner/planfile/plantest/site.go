package plantest

import (
	"pgregory.net/rapid"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/quantity"
)

func temperature(t *rapid.T) float64 { return decimal(t, -60, 50, 1) }

// means draws some months of typed means.
func means(t *rapid.T) []planner.MonthMeans {
	var list []planner.MonthMeans
	for _, month := range planner.Months {
		if rapid.IntRange(0, 9).Draw(t, "month") == 0 {
			list = append(list, planner.MonthMeans{
				Month: month, Tmin: maybe(t, quantity.Temperature(temperature(t))), Tmax: maybe(t, quantity.Temperature(temperature(t))),
			})
		}
	}
	return list
}

// record draws what a daily record might tell; it makes no climate.
func record(t *rapid.T) *climate.Digest {
	if rapid.IntRange(0, 3).Draw(t, "no record") != 0 {
		return nil
	}
	d := &climate.Digest{
		Name: Text().Draw(t, "file"), From: date(t, false), To: date(t, false), TminDays: rapid.IntRange(0, 9999).Draw(t, "lows"),
		TmaxDays: rapid.IntRange(0, 9999).Draw(t, "highs"), Southern: rapid.Bool().Draw(t, "southern"), Persistence: share(t, 0.1, 0.9),
	}
	for i := range 12 {
		if rapid.Bool().Draw(t, "month") {
			d.Means.Tmin[i], d.Means.Tmax[i] = temperature(t), temperature(t)
			d.Scatter.Tmin[i], d.Scatter.Tmax[i] = decimal(t, 1, 9, 1), decimal(t, 1, 9, 1)
		}
	}
	for range rapid.IntRange(0, 2).Draw(t, "seasons") {
		d.Seasons = append(d.Seasons, climate.SeasonDigest{
			Year: rapid.IntRange(1900, 2399).Draw(t, "year"), Missing: rapid.IntRange(0, 366).Draw(t, "missing"), Lowest: temperature(t),
			Last: monthDay(t), First: monthDay(t),
		})
	}
	for range rapid.IntRange(0, 2).Draw(t, "freezes") {
		f := climate.FreezeDigest{Threshold: temperature(t), Share: share(t, 0.1, 1)}
		for range rapid.IntRange(0, 3).Draw(t, "levels") {
			f.Last, f.First = append(f.Last, someDay(t)), append(f.First, someDay(t))
		}
		d.Freezes = append(d.Freezes, f)
	}
	for range rapid.IntRange(0, 2).Draw(t, "heat") {
		d.Hot = append(d.Hot, climate.HotDigest{Limit: temperature(t), Days: decimal(t, 1, 300, 1)})
	}
	return d
}

func someDay(t *rapid.T) civil.MonthDay {
	return civil.New(2000, 1, 1).AddDays(rapid.IntRange(0, 365).Draw(t, "day")).MonthDay()
}
