package planner

import (
	"slices"
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// siteClimate is the climate of a spot with its four seasons at the plan's risk.
type siteClimate struct {
	seasons climate.Seasons
	from    civil.Date
	tmean   []quantity.Temperature // of each day from from on
	summed  []float64              // of tmean up to, and without, each day
}

// daysAround is how far the daily temperatures reach beyond the days planned for: a
// stand may have begun, and a charge may last, that much longer.
const daysAround = 400

// mean returns the mean temperature of the days from a to b, b not included.
func (c *siteClimate) mean(a, b civil.Date) float64 {
	i, k := c.index(a), c.index(b)
	if k <= i {
		return float64(c.tmean[i])
	}
	return (c.summed[k] - c.summed[i]) / float64(k-i)
}

// on returns the mean temperature of a day.
func (c *siteClimate) on(d civil.Date) quantity.Temperature { return c.tmean[c.index(d)] }

func (c *siteClimate) index(d civil.Date) int { return min(max(0, int(d-c.from)), len(c.tmean)-1) }

// sites works out the climate of every site.
func (w *workOut) sites() {
	w.years = map[yearKey]seasonDays{}
	w.climates = map[string]*siteClimate{}
	w.Sites = make([]SiteOutlook, len(w.Plan.Sites))
	for i := range w.Plan.Sites {
		site := &w.Plan.Sites[i]
		w.Sites[i] = SiteOutlook{Site: site}
		c, err := climateOfSite(site)
		if err != nil {
			w.find("plan.no_station", finding.Warning, finding.Where{"sites", site.ID})
			continue
		}
		w.describe(&w.Sites[i], c)
	}
}

// climateOfSite builds the climate of a site from its station, its height and the
// frost dates that the person typed.
func climateOfSite(site *Site) (*climate.Climate, error) {
	in := climate.Input{Elevation: site.Elevation}
	if station, ok := climate.StationByID(site.Station); ok {
		in.Station = &station
	}
	if frost := site.Frost; frost != (FrostDates{}) {
		in.Frost = &climate.FreezeDates{Last: evenLevel(frost.Last), First: evenLevel(frost.First)}
	}
	return climate.New(in)
}

// evenLevel is a typed date as the even (50 %) level, or none.
func evenLevel(day civil.MonthDay) []climate.FreezeLevel {
	if day.IsZero() {
		return nil
	}
	return []climate.FreezeLevel{{Odds: float64(climate.Even), Day: day}}
}

// describe fills a site's outlook with plain figures for a picture of the year.
func (w *workOut) describe(out *SiteOutlook, c *climate.Climate) {
	out.Known, out.climate = true, c
	out.Latitude, out.Elevation = c.Place().Latitude, c.Place().Elevation
	out.Source = c.Temperatures()
	if station, ok := c.Station(); ok {
		out.Place, out.Period = station.Name+", "+station.Country, station.Period
	}
	daily, odds := c.Daily(), c.Freeze(freezing)
	out.Estimated = odds.Estimated()
	out.Low, out.High = daily.Tmin[:], daily.Tmax[:]
	out.Freeze = stillOrAlready(odds, &daily.Tmean, c.Southern())
	out.Daylight = make([]float64, climate.DaysPerYear)
	for i := range out.Daylight {
		out.Daylight[i] = c.DayLength(climate.MonthDayAt(i).In(w.Today.Year())).Hours
	}
	for _, date := range []climate.FreezeDate{c.LastFreeze(freezing, w.risk()), c.FirstFreeze(freezing, w.risk())} {
		if date.Known() {
			day := working.Date(date.Day.In(w.Today.Year()))
			out.Figures = append(out.Figures, NewFigure(day, func() working.Trace {
				trace := date.Working()
				trace.Result = day
				return trace
			}))
		}
	}
	free := odds.FreeDays(w.risk())
	out.Figures = append(out.Figures, NewFigure(working.Number(float64(free.Days), working.Day), free.Working))
	w.describeSeasons(out, c.Seasons(w.risk()))
}

// stillOrAlready returns, for each day of a year, the odds that a freeze still comes, in
// the half that warms up, and that one has come already, in the half that cools down.
// The halves meet on the coldest day and where the cold season begins anew: on 1 August
// in the north (NOAA), half a year later in the south.
func stillOrAlready(odds *climate.FreezeOdds, tmean *climate.Year, south bool) []float64 {
	anew := civil.MonthDay{Month: time.August, Day: 1}
	if south {
		anew.Month = time.February
	}
	coldest := 0
	for i, t := range tmean {
		if t < tmean[coldest] {
			coldest = i
		}
	}
	warming := (climate.MonthDayIndex(anew) - coldest + climate.DaysPerYear) % climate.DaysPerYear
	list := make([]float64, climate.DaysPerYear)
	for n := range climate.DaysPerYear {
		i := (coldest + n) % climate.DaysPerYear
		if n < warming {
			list[i] = odds.SpringRisk(climate.MonthDayAt(i))
		} else {
			list[i] = odds.AutumnRisk(climate.MonthDayAt(i))
		}
	}
	return list
}

// freezing is the threshold of a freeze, reached or passed (NOAA: 32 °F).
const freezing quantity.Temperature = 0

func (w *workOut) risk() climate.Risk {
	if w.Plan.Risk == 0 {
		return DefaultRisk
	}
	return climate.Risk(w.Plan.Risk)
}

// describeSeasons lists the four seasons as they come in the year from today.
func (w *workOut) describeSeasons(out *SiteOutlook, seasons climate.Seasons) {
	for i, s := range seasons.List {
		season := SeasonOutlook{Season: Seasons[i], Exists: s.Exists, Reason: "climate.reason_" + string(s.Why)}
		if s.Exists && !s.AllYear {
			start := s.Start.In(w.Today.Year())
			if start < w.Today {
				start = s.Start.In(w.Today.Year() + 1)
			}
			season.Earliest, season.Latest = spreadAround(s, start)
			season.Start = seasonFigure(seasons, s.Name, start)
		}
		out.Seasons = append(out.Seasons, season)
	}
}

func seasonFigure(seasons climate.Seasons, name climate.SeasonName, day civil.Date) Figure {
	return NewFigure(working.Date(day), func() working.Trace {
		trace := seasons.Working(name)
		trace.Result = working.Date(day)
		return trace
	})
}

// spreadAround returns the earliest and the latest of a season's starts at the named
// risks, in the year of a day.
func spreadAround(s climate.Season, day civil.Date) (earliest, latest civil.Date) {
	earliest, latest = day, day
	for _, m := range []civil.MonthDay{s.Spread.Cautious, s.Spread.Even, s.Spread.Bold} {
		if m.IsZero() {
			continue
		}
		d := m.In(day.Year())
		switch {
		case d-day > halfYear:
			d = m.In(day.Year() - 1)
		case day-d > halfYear:
			d = m.In(day.Year() + 1)
		}
		earliest, latest = min(earliest, d), max(latest, d)
	}
	return earliest, latest
}

// spotClimate returns the climate of a spot, worked out once.
func (w *workOut) spotClimate(spot *Spot, site *SiteOutlook) *siteClimate {
	if c, ok := w.climates[spot.ID]; ok {
		return c
	}
	c := site.climate.At(placeOf(spot))
	sc := &siteClimate{seasons: c.Seasons(w.risk()), from: w.First.AddDays(-daysAround)}
	year, total := c.Daily().Tmean, 0.0
	for d := sc.from; d <= w.Last.AddDays(daysAround); d++ {
		t := year.On(d)
		sc.tmean, sc.summed = append(sc.tmean, quantity.Temperature(t)), append(sc.summed, total)
		total += t
	}
	w.climates[spot.ID] = sc
	return sc
}

// placeOf returns the offsets of a spot: the person's own, else those usual for its
// kind of place; open ground where the kind is not known.
func placeOf(spot *Spot) climate.Spot {
	place, ok := climate.SpotByKey(spot.Shelter)
	if !ok {
		place = climate.Open
	}
	return place.With(spot.NightOffset, spot.DayOffset)
}

// seasonDaysOf returns the change-out days of a spot in one calendar year.
func (w *workOut) seasonDaysOf(spot *Spot, site *SiteOutlook, year int) seasonDays {
	sc := w.spotClimate(spot, site)
	days := seasonDays{}
	for i, s := range sc.seasons.List {
		if !s.Exists {
			continue
		}
		if s.AllYear { // any day will do: the year's first, until somebody pins another
			s.Start, s.Spread = civil.MonthDay{Month: time.January, Day: 1}, climate.Spread{}
		}
		day := seasonDay{exists: true, best: s.Start.In(year), reason: "climate.reason_" + string(s.Why)}
		day.earliest, day.latest = spreadAround(s, day.best)
		name := s.Name
		day.trace = func(d civil.Date) working.Trace { return seasonFigure(sc.seasons, name, d).Working() }
		days[Seasons[i]] = day
	}
	return days
}

// climateOf returns the climate at a pot, or nil where there is none.
func (w *workOut) climateOf(out *PotOutlook) *siteClimate {
	if out.Spot == nil || out.Site == nil || !out.Site.Known {
		return nil
	}
	return w.spotClimate(out.Spot, out.Site)
}

// meanTemperature returns the mean temperature of the air over a stand, or that of
// growth where the climate is not known.
func (w *workOut) meanTemperature(out *PotOutlook, s *Stand) float64 {
	sc := w.climateOf(out)
	if sc == nil || s.To <= s.From {
		return growthFloor
	}
	return sc.mean(s.From, s.To)
}

// siteOf returns the site with an id, or nil.
func (o *Outlook) siteOf(id string) *SiteOutlook {
	i := slices.IndexFunc(o.Sites, func(s SiteOutlook) bool { return s.Site.ID == id })
	if i < 0 {
		return nil
	}
	return &o.Sites[i]
}
