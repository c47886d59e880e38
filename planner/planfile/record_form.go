package planfile

import (
	"gopkg.in/yaml.v3"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/quantity"
)

// What a record can hold, as wide as the loader of daily records is.
const (
	coldestAir   quantity.Temperature = -90 // °C
	hottestAir   quantity.Temperature = 60
	widestSpread                      = 25.0 // K
	mostDays                          = 200_000
)

// monthMeansForm is the form of the means of a month that a person typed.
var monthMeansForm = newForm(
	optional("tmin", temperatureMeasure, coldestAir, hottestAir, func(m *planner.MonthMeans) **quantity.Temperature { return &m.Tmin }),
	optional("tmax", temperatureMeasure, coldestAir, hottestAir, func(m *planner.MonthMeans) **quantity.Temperature { return &m.Tmax }),
)

// recordForm is the form of what a daily record tells, as it stands in the file.
var recordForm = newForm(
	text("file", MaxName, func(r *recordInFile) *string { return &r.digest.Name }),
	required(date("from", func(r *recordInFile) *civil.Date { return &r.digest.From })),
	required(date("to", func(r *recordInFile) *civil.Date { return &r.digest.To })),
	whole("days_with_low", countMeasure, 0, mostDays, func(r *recordInFile) *int { return &r.digest.TminDays }),
	whole("days_with_high", countMeasure, 0, mostDays, func(r *recordInFile) *int { return &r.digest.TmaxDays }),
	flag("southern", func(r *recordInFile) *bool { return &r.digest.Southern }),
	number("persistence", shareMeasure, 0, 0.99, func(r *recordInFile) *float64 { return &r.digest.Persistence }),
	byMonth(table("months", recordMonthForm,
		func(m *recordMonth) *string { return (*string)(&m.month) },
		func(r *recordInFile) *[]recordMonth { return &r.months }),
		func(r *recordInFile) []planner.Month {
			var months []planner.Month
			for _, m := range r.months {
				months = append(months, m.month)
			}
			return months
		}),
	list("seasons", seasonForm, func(*climate.SeasonDigest) string { return "" }, func(r *recordInFile) *[]climate.SeasonDigest { return &r.digest.Seasons }),
	list("freezes", freezeForm, func(*climate.FreezeDigest) string { return "" }, func(r *recordInFile) *[]climate.FreezeDigest { return &r.digest.Freezes }),
	list("heat", heatForm, func(*climate.HotDigest) string { return "" }, func(r *recordInFile) *[]climate.HotDigest { return &r.digest.Hot }),
)

// recordInFile is a digest with its months as rows.
type recordInFile struct {
	digest climate.Digest
	months []recordMonth
}

// recordMonth are the figures of a month of a record.
type recordMonth struct {
	month                  planner.Month
	tmin, tmax             float64 // °C
	tminSpread, tmaxSpread float64 // K
}

var recordMonthForm = newForm(
	stated("tmin", temperatureMeasure, float64(coldestAir), float64(hottestAir), func(m *recordMonth) *float64 { return &m.tmin }),
	stated("tmax", temperatureMeasure, float64(coldestAir), float64(hottestAir), func(m *recordMonth) *float64 { return &m.tmax }),
	number("tmin_spread", spreadMeasure, 0, widestSpread, func(m *recordMonth) *float64 { return &m.tminSpread }),
	number("tmax_spread", spreadMeasure, 0, widestSpread, func(m *recordMonth) *float64 { return &m.tmaxSpread }),
)

var seasonForm = newForm(
	required(whole("begins", countMeasure, civil.MinYear-1, civil.MaxYear, func(s *climate.SeasonDigest) *int { return &s.Year })),
	whole("missing", countMeasure, 0, 366, func(s *climate.SeasonDigest) *int { return &s.Missing }),
	lowest(),
	monthDay("last", func(s *climate.SeasonDigest) *civil.MonthDay { return &s.Last }),
	monthDay("first", func(s *climate.SeasonDigest) *civil.MonthDay { return &s.First }),
)

// lowest is the field of the lowest temperature of a season, which says nothing where
// the season does not count.
func lowest() field[climate.SeasonDigest] {
	f := stated("lowest", temperatureMeasure, float64(coldestAir), float64(hottestAir), func(s *climate.SeasonDigest) *float64 { return &s.Lowest })
	write := f.write
	f.write = func(w *writer, from *climate.SeasonDigest) *value {
		if !from.Counts() && from.Lowest == 0 {
			return nil
		}
		return write(w, from)
	}
	return f
}

var freezeForm = newForm(
	stated("at", temperatureMeasure, float64(coldestAir), float64(hottestAir), func(f *climate.FreezeDigest) *float64 { return &f.Threshold }),
	number("share", shareMeasure, 0, 1, func(f *climate.FreezeDigest) *float64 { return &f.Share }),
	monthDays("last", func(f *climate.FreezeDigest) *[]civil.MonthDay { return &f.Last }),
	monthDays("first", func(f *climate.FreezeDigest) *[]civil.MonthDay { return &f.First }),
)

var heatForm = newForm(
	stated("above", temperatureMeasure, float64(coldestAir), float64(hottestAir), func(h *climate.HotDigest) *float64 { return &h.Limit }),
	number("days", daysMeasure, 0, 366, func(h *climate.HotDigest) *float64 { return &h.Days }),
)

// record is the field of what a person's own daily record tells. To a merge it is one
// value: half of one record and half of another would be the climate of no place.
func record() field[planner.Site] {
	const key = "record"
	return field[planner.Site]{
		key: key,
		read: func(r *reader, at *place, n *yaml.Node, into *planner.Site) {
			if n.Kind == yaml.ScalarNode && n.Tag == "!!null" {
				return
			}
			var file recordInFile
			recordForm.read(r, at, n, &file)
			into.Record = file.toDigest()
		},
		write: func(w *writer, from *planner.Site) *value {
			if from.Record == nil {
				return nil
			}
			v := recordForm.write(w, inFile(from.Record))
			v.unit = true
			return v
		},
		check: func(c *checker, at *place, from *planner.Site) {
			if from.Record != nil {
				recordForm.check(c, at.in(key), inFile(from.Record))
			}
		},
	}
}

func inFile(d *climate.Digest) *recordInFile {
	r := &recordInFile{digest: *d}
	for i, month := range planner.Months {
		row := recordMonth{month, d.Means.Tmin[i], d.Means.Tmax[i], d.Scatter.Tmin[i], d.Scatter.Tmax[i]}
		if row != (recordMonth{month: month}) {
			r.months = append(r.months, row)
		}
	}
	return r
}

func (r *recordInFile) toDigest() *climate.Digest {
	d := r.digest
	for _, row := range r.months {
		if i := row.month.Index(); i >= 0 {
			d.Means.Tmin[i], d.Means.Tmax[i] = row.tmin, row.tmax
			d.Scatter.Tmin[i], d.Scatter.Tmax[i] = row.tminSpread, row.tmaxSpread
		}
	}
	return &d
}

// byMonth writes each entry of a table on one line and checks that its keys are months.
func byMonth[T any](f field[T], months func(*T) []planner.Month) field[T] {
	write := f.write
	f.write = func(w *writer, from *T) *value {
		v := write(w, from)
		if v != nil {
			for _, e := range v.entries {
				e.value.flow = true
			}
		}
		return v
	}
	return keyedBy(f, planner.Months[:], months)
}

// monthDays is a field of days of every year on one line.
func monthDays[T any](key string, get func(*T) *[]civil.MonthDay) field[T] {
	one := monthDay(key, func(d *civil.MonthDay) *civil.MonthDay { return d })
	return field[T]{
		key: key,
		read: func(r *reader, at *place, n *yaml.Node, into *T) {
			content := r.items(at, n)
			if len(content) == 0 {
				return
			}
			days := make([]civil.MonthDay, len(content))
			for i, item := range content {
				one.read(r, at.in(numbered(i)), item, &days[i])
			}
			*get(into) = days
		},
		write: func(w *writer, from *T) *value {
			days := *get(from)
			text := func(i int) string { return days[i].String() }
			return onOneLine(len(days), text, func(i int) *value { return bareValue(text(i)) })
		},
		check: func(c *checker, at *place, from *T) {
			days := *get(from)
			for i := range days {
				if days[i].IsZero() {
					c.report(problem("planfile.not_a_month_day", at.in(key).in(numbered(i)), "text", ""))
					return
				}
				one.check(c, at, &days[i])
			}
		},
	}
}
