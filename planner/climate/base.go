package climate

import (
	"math"

	"fourturn/planner/working"
)

// The limits of a monthly mean that a person may type: the coldest and the
// hottest air ever measured on land lie within them.
const (
	coldestMean = -80.0
	hottestMean = 60.0
)

// base puts the input together at the place of measurement.
func (in Input) base(site Place, l lapse) (*base, error) {
	if in.Frost != nil {
		if err := in.Frost.check(site.Southern()); err != nil {
			return nil, err
		}
	}
	b := &base{station: in.Station, record: in.Record}
	switch {
	case in.Record != nil:
		if err := b.fromRecord(in.Record, site); err != nil {
			return nil, err
		}
	case in.Digest != nil:
		if err := b.fromDigest(in.Digest, site); err != nil {
			return nil, err
		}
	case in.Means != nil:
		means, source, err := in.typedMeans(site)
		if err != nil {
			return nil, err
		}
		b.fromMeans(means, source)
	case in.Station != nil:
		b.fromMeans(in.Station.Means, in.Station.source())
	case in.Frost != nil:
		b.fromFrost(*in.Frost, site)
	default:
		return nil, &Error{Code: "climate.no_data"}
	}
	b.extreme = in.extremeAt(b, site)
	in.addFreezes(b, site, l)
	return b, nil
}

// check refuses means that no place on land has, and months whose mean minimum
// is above the mean maximum.
func (m Means) check() error {
	for i := range m.Tmin {
		args := map[string]float64{"month": float64(i + 1), "tmin": m.Tmin[i], "tmax": m.Tmax[i]}
		for _, v := range []float64{m.Tmin[i], m.Tmax[i]} {
			if math.IsNaN(v) || v < coldestMean || v > hottestMean {
				return &Error{"climate.mean_out_of_range", args}
			}
		}
		if m.Tmin[i] > m.Tmax[i] {
			return &Error{"climate.tmin_above_tmax", args}
		}
	}
	return nil
}

func (b *base) fromMeans(m Means, source working.Source) {
	b.tmin, b.tmax, b.temperatures = Smooth(m.Tmin), Smooth(m.Tmax), source
}

// The odds of a freeze in a year that dates imply: NOAA gives none below 10 %;
// whoever types a frost date knows frost as an ordinary thing.
const (
	publishedAnnual = rareBelow
	typedAnnual     = 0.90
)

// addFreezes chooses what the odds of freeze rest on: typed dates, the record, a
// nearby freeze station, the station's own dates, or the calibration.
func (in Input) addFreezes(b *base, site Place, l lapse) {
	sides := newLimbs(b.tmin, site.Southern())
	switch {
	case in.Frost != nil:
		// The dates are the site's, the curve the station's.
		shift := l.shift()
		if in.ownTemperatures() {
			shift = 0
		}
		b.addDates(sides, []FreezeDates{in.Frost.at(shift)}, typedAnnual, site, working.Source{Status: working.Entered})
	case in.Record != nil: // it brought its own
	case in.Digest != nil:
		b.addDigestFreezes(in.Digest, sides, site)
	case in.Means == nil && in.Nearby != nil && in.Nearby.Note == FreezeDated:
		there := lapse{rate: l.rate, station: l.station, own: in.Nearby.Place.Elevation}
		dates := in.Nearby.Freezes.dates()
		b.addDates(sides, []FreezeDates{dates.at(there.shift())}, publishedAnnual, site, SourceFreezeUS.source(freezePeriodUS))
	case in.Means == nil && in.Station != nil && len(in.Station.Freezes) > 0:
		var tables []FreezeDates
		for _, t := range in.Station.Freezes {
			tables = append(tables, t.dates())
		}
		b.addDates(sides, tables, publishedAnnual, site, in.Station.FreezeSource.source(in.Station.FreezePeriod))
	default:
		spring, autumn := estimatedSides(site, b.extreme.drop)
		b.freezeSource = estimatedFreezes
		b.freeze = &marginOdds{limbs: sides, spring: spring, autumn: autumn, source: estimatedFreezes, extreme: b.extreme, floor: noFloor}
	}
}

// at returns the dates with their threshold brought from a place that is warmer
// by shift to the place of the curve.
func (f FreezeDates) at(shift float64) FreezeDates {
	f.Threshold -= shift
	return f
}

// freezePeriodUS is the period of NOAA's freeze file.
const freezePeriodUS = "1981-2010"

// estimatedFreezes is the source of odds that rest on means alone.
var estimatedFreezes = working.Source{
	Status: working.Estimated,
	Cite:   "calibration on monthly means of NOAA freeze dates 1981-2010 at 245 US stations and of 12 daily series",
}

// addDates makes the odds of dates, of which the coldest threshold carries the
// implied odds of a year.
func (b *base) addDates(l *limbs, tables []FreezeDates, annual float64, site Place, source working.Source) {
	floor := annualFloor{threshold: math.Inf(1), odds: annual}
	for _, t := range tables {
		floor.threshold = min(floor.threshold, t.Threshold)
	}
	odds := datedOdds(l, tables, floor, b.extreme, site)
	odds.source = source
	b.freeze, b.freezeSource = odds, source
}

// source returns the provenance of a station's means.
func (s *Station) source() working.Source { return s.Source.source(s.Period) }

// source returns the provenance of figures from a data source and a period.
func (d DataSource) source(period string) working.Source {
	cites := map[DataSource]working.Source{
		SourceCLIMAT:     {Status: working.Derived, Cite: "DWD Climate Data Center, Monthly CLIMAT reports from stations worldwide"},
		SourceMetOffice:  {Status: working.Derived, Cite: "Met Office, Historic station data"},
		SourceNOAA9120:   {Status: working.Published, Cite: "NOAA NCEI, U.S. Climate Normals 1991-2020"},
		SourceNOAA8110:   {Status: working.Published, Cite: "NOAA NCEI, U.S. Climate Normals 1981-2010 (Arguez et al. 2012, BAMS 93:1687)"},
		SourceFreezeUS:   {Status: working.Published, Cite: "NOAA NCEI, U.S. Climate Normals 1981-2010, freeze probabilities"},
		SourceGHCN:       {Status: working.Derived, Cite: "NOAA NCEI, GHCN-Daily"},
		SourceMetEireann: {Status: working.Derived, Cite: "Met Éireann, daily data"},
	}
	s, ok := cites[d]
	if !ok {
		panic("climate: unknown data source " + string(d))
	}
	if period != "" {
		s.Cite += ", " + period
	}
	return s
}
