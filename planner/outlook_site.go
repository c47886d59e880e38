package planner

import (
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/working"
)

// Climate returns the climate that everything said of the site comes from, for further
// questions; nil where it is not known.
func (s *SiteOutlook) Climate() *climate.Climate { return s.climate }

// ClimateAt returns the climate of a spot at the site; nil where it is not known.
func (s *SiteOutlook) ClimateAt(spot *Spot) *climate.Climate {
	if s.climate == nil {
		return nil
	}
	return s.climate.At(placeOf(spot))
}

// AtRisk returns the outlook with its dates at another risk, for a person who tries one.
func (s *SiteOutlook) AtRisk(risk float64) *SiteOutlook {
	other := *s
	if s.climate != nil {
		other.atRisk(climate.Risk(risk))
	}
	return &other
}

// describe fills a site's outlook with plain figures for a picture of the year.
func (s *SiteOutlook) describe(c *climate.Climate, today civil.Date, risk climate.Risk) {
	s.Known, s.climate, s.today = true, c, today
	s.Latitude, s.Elevation = c.Place().Latitude, c.Place().Elevation
	s.Source = c.Temperatures()
	if station, ok := c.Station(); ok {
		s.Place, s.Period = station.Name+", "+station.Country, station.Period
	}
	daily, odds := c.Daily(), c.Freeze(freezing)
	s.Estimated = odds.Estimated()
	s.Warmth = s.Source.Status == working.Estimated
	s.Low, s.High = daily.Tmin[:], daily.Tmax[:]
	s.Freeze = stillOrAlready(odds, &daily.Tmean, c.Southern())
	s.Daylight = make([]float64, climate.DaysPerYear)
	for i := range s.Daylight {
		s.Daylight[i] = c.DayLength(climate.MonthDayAt(i).In(today.Year())).Hours
	}
	s.Told = toldOf(c, odds)
	s.describeExtremes()
	s.describeMonths()
	s.atRisk(risk)
}

// toldOf lists what is to be said of a place's freezes where they are not the ordinary
// ones of a cold season between two warm ones.
func toldOf(c *climate.Climate, odds *climate.FreezeOdds) []string {
	var told []string
	if kind := odds.Kind(); kind != climate.Freezes {
		told = append(told, kind.Key())
	}
	if note := c.FreezeNote(); note != climate.FreezeDated {
		told = append(told, note.Key())
	}
	return told
}

func (s *SiteOutlook) describeExtremes() {
	c := s.climate
	extreme, hot := c.ExtremeMin(), c.HotDays(hotDay)
	s.Extremes = []Figure{
		NewFigure(working.Number(float64(extreme.Mean), working.Celsius), extreme.Working),
		NewFigure(working.Text(c.HardinessZone().String()), c.HardinessWorking),
		NewFigure(working.Number(hot.Days, working.Day), hot.Working),
		NewFigure(working.Number(float64(c.HeatZone()), working.None), c.HeatWorking),
	}
}

// hotDay is the limit of the heat-zone map, 86 °F.
const hotDay = 30

func (s *SiteOutlook) describeMonths() {
	c := s.climate
	rain, known := c.Rain()
	for m := time.January; m <= time.December; m++ {
		middle := civil.New(s.today.Year(), m, 15)
		low, high, light := c.MonthLow(m), c.MonthHigh(m), c.DayLength(middle)
		radiation, et := c.RadiationOn(middle), c.ReferenceET(middle)
		s.Months = append(s.Months, MonthOutlook{
			Month:       m,
			Low:         NewFigure(working.Number(float64(low.Mean), working.Celsius), low.Working),
			High:        NewFigure(working.Number(float64(high.Mean), working.Celsius), high.Working),
			Daylight:    NewFigure(working.Number(light.Hours, working.Hour), light.Working),
			Radiation:   NewFigure(working.Number(radiation.Megajoules, working.MegajoulePerM2Day), radiation.Working),
			Evaporation: NewFigure(working.Number(et.Millimetres, working.MillimetrePerDay), et.Working),
			Rain:        rain[m-1], RainKnown: known,
		})
	}
}

// atRisk fills in the dates that move with the risk.
func (s *SiteOutlook) atRisk(risk climate.Risk) {
	s.Figures, s.Seasons = nil, nil
	for _, date := range []climate.FreezeDate{s.climate.LastFreeze(freezing, risk), s.climate.FirstFreeze(freezing, risk)} {
		if date.Known() {
			s.Figures = append(s.Figures, DateFigure(date, s.today))
		}
	}
	free := s.climate.Freeze(freezing).FreeDays(1 - risk) // the length that fails with the odds that one accepts
	s.Figures = append(s.Figures, NewFigure(working.Number(float64(free.Days), working.Day), free.Working))
	s.describeSeasons(s.climate.Seasons(risk))
}

// DateFigure is a date of freeze in the year of a day, with its working.
func DateFigure(date climate.FreezeDate, today civil.Date) Figure {
	day := working.Date(date.Day.In(today.Year()))
	return NewFigure(day, func() working.Trace {
		trace := date.Working()
		trace.Result = day
		return trace
	})
}

// describeSeasons lists the four seasons as they come in the year from today.
func (s *SiteOutlook) describeSeasons(seasons climate.Seasons) {
	for i, one := range seasons.List {
		season := SeasonOutlook{
			Season: Seasons[i], Exists: one.Exists, AllYear: one.AllYear, Reason: "climate.reason_" + string(one.Why),
		}
		if one.Exists && !one.AllYear {
			start := one.Start.In(s.today.Year())
			if start < s.today {
				start = one.Start.In(s.today.Year() + 1)
			}
			season.Earliest, season.Latest = spreadAround(one, start)
			season.Start = seasonFigure(seasons, one.Name, start)
		}
		s.Seasons = append(s.Seasons, season)
	}
}
