package plants

import (
	"slices"
	"strings"

	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// broken is a law that a plant breaks.
type broken struct {
	field Field
	code  string
	args  []finding.Arg
}

// brokenLaws returns what is inconsistent or outside physical ranges in a plant.
func brokenLaws(p *Plant) []broken {
	return slices.Concat(
		lawsOfNames(p), lawsOfKind(p), lawsOfSize(p), lawsOfRanges(p),
		lawsOfOrder(p), lawsOfFrost(p), lawsOfZone(p), lawsOfResponse(p), lawsOfListing(p), lawsOfConflicts(p),
	)
}

// lawsOfNames: families end in -aceae (International Code of Nomenclature, art. 18.1);
// a botanical name begins with a capital.
func lawsOfNames(p *Plant) []broken {
	var out []broken
	if p.Family != "" && !strings.HasSuffix(p.Family, "aceae") {
		out = append(out, broken{FieldFamily, "family_name", []finding.Arg{word("text", p.Family)}})
	}
	for _, name := range p.Botanical {
		genus := genusOf(name)
		if genus == "" || genus[0] < 'A' || genus[0] > 'Z' {
			out = append(out, broken{FieldBotanical, "botanical_name", []finding.Arg{word("text", name)}})
		}
	}
	return out
}

// lawsOfKind: what grows has a feeder class, frost class and temperatures; what
// is cut has none. Bulbs are planted by the calendar of cold, not by nights.
func lawsOfKind(p *Plant) []broken {
	var out []broken
	for _, f := range []Field{
		FieldFeeder, FieldFrostClass, FieldLowestInPot, FieldPlantingOutNight, FieldHeatLimit, FieldTemperatureClass,
	} {
		has := p.Has(f)
		switch {
		case p.Kind == CutStems && has:
			out = append(out, broken{f, "cut_stems_do_not_grow", nil})
		case p.Kind.Growing() && !has && (f != FieldPlantingOutNight || p.Kind != Bulb):
			out = append(out, broken{f, "missing", []finding.Arg{word("key", string(f))}})
		}
	}
	return out
}

// Plausible sizes in a pot, and of the spacing against the spread: published bed
// spacings times 0.5 to 1 (common practice) leave 0.33 to 1.2 of the full spread.
const (
	leastLength    = 0.01
	greatestHeight = 6.0
	greatestSpread = 4.0
	leastCrowding  = 0.33
	mostCrowding   = 1.2
)

func lawsOfSize(p *Plant) []broken {
	var out []broken
	if p.Height.Low > p.Height.High {
		out = append(out, broken{FieldHeight, "range_upside_down", nil})
	}
	for _, c := range []struct {
		f    Field
		v    quantity.Length
		most float64
	}{
		{FieldHeight, p.Height.Low, greatestHeight},
		{FieldHeight, p.Height.High, greatestHeight},
		{FieldSpread, p.Spread, greatestSpread},
		{FieldSpacing, p.Spacing, greatestSpread},
	} {
		if v := float64(c.v); v != 0 && (v < leastLength || v > c.most) {
			out = append(out, outside(c.f, v, leastLength, c.most, working.Metre))
		}
	}
	if ratio := float64(p.Spacing / p.Spread); p.Kind.Growing() && p.Spread > 0 && p.Spacing > 0 &&
		(ratio < leastCrowding || ratio > mostCrowding) {
		out = append(out, broken{FieldSpacing, "spacing_against_spread", []finding.Arg{
			number("spacing", float64(p.Spacing), working.Metre), number("spread", float64(p.Spread), working.Metre),
		}})
	}
	return out
}

func outside(f Field, v, low, high float64, unit working.Unit) broken {
	return broken{f, "outside_range", []finding.Arg{number("value", v, unit), number("low", low, unit), number("high", high, unit)}}
}

// lawsOfRanges keeps values within what is physically possible for plants in pots.
func lawsOfRanges(p *Plant) []broken {
	var out []broken
	for _, c := range []struct {
		f         Field
		v         Maybe[quantity.Temperature]
		low, high float64 // °C
	}{
		{FieldLowestInPot, p.LowestInPot, -50, 15},
		{FieldPlantingOutNight, p.PlantingOutNight, -10, 25},
		{FieldHeatLimit, p.HeatLimit, 10, 50},
		{FieldRootZoneLimit, p.RootZoneLimit, -40, 15},
		{FieldBaseTemperature, p.BaseTemperature, -5, 18},
		{FieldOptimumTemperature, p.OptimumTemperature, 8, 40},
	} {
		if t, ok := c.v.Get(); ok && (float64(t) < c.low || float64(t) > c.high) {
			out = append(out, outside(c.f, float64(t), c.low, c.high, working.Celsius))
		}
	}
	for _, c := range []struct {
		f    Field
		v    Maybe[Weeks]
		most float64
	}{{FieldShows, p.Shows, 60}, {FieldChill, p.Chill, 30}} {
		if w, ok := c.v.Get(); ok && (w.Low < 0 || w.High > c.most || w.Low > w.High) {
			out = append(out, outside(c.f, w.High, 0, c.most, working.Week))
		}
	}
	for _, s := range p.Sold {
		if w, ok := s.WeeksToFull.Get(); ok && (w < 0 || w > 80) {
			out = append(out, outside(FieldSold, w, 0, 80, working.Week))
		}
	}
	if z, ok := p.Zone.Get(); ok && (z < 1 || z > 13) {
		out = append(out, outside(FieldZone, float64(z), 1, 13, working.None))
	}
	return out
}

// lawsOfOrder: the lowest temperature is below that of planting out, which is
// below the heat limit; development starts below where it is fastest.
func lawsOfOrder(p *Plant) []broken {
	var out []broken
	for _, c := range []struct {
		f         Field
		low, high Maybe[quantity.Temperature]
		other     Field
	}{
		{FieldLowestInPot, p.LowestInPot, p.PlantingOutNight, FieldPlantingOutNight},
		{FieldPlantingOutNight, p.PlantingOutNight, p.HeatLimit, FieldHeatLimit},
		{FieldLowestInPot, p.LowestInPot, p.HeatLimit, FieldHeatLimit},
		{FieldBaseTemperature, p.BaseTemperature, p.OptimumTemperature, FieldOptimumTemperature},
	} {
		low, ok1 := c.low.Get()
		high, ok2 := c.high.Get()
		if ok1 && ok2 && !(low < high) {
			out = append(out, broken{c.f, "not_below", []finding.Arg{
				number("value", float64(low), working.Celsius), word("other", c.other.Key()),
				number("limit", float64(high), working.Celsius),
			}})
		}
	}
	return out
}

// lawsOfFrost: the lowest temperature agrees with the frost class.
func lawsOfFrost(p *Plant) []broken {
	t, ok := p.LowestInPot.Get()
	if !ok || p.FrostClass == "" {
		return nil
	}
	low, high := p.FrostClass.Lowest()
	if t < low || t > high {
		return []broken{{FieldLowestInPot, "frost_class", []finding.Arg{
			number("value", float64(t), working.Celsius), word("class", p.FrostClass.Key()),
			number("low", float64(low), working.Celsius), number("high", float64(high), working.Celsius),
		}}}
	}
	return nil
}

// roundingSlack allows for values printed to whole degrees Fahrenheit.
const roundingSlack quantity.Temperature = 0.6

// lawsOfZone: a hardy plant that overwinters stands no more cold in a pot than two
// zones above its own (the two-zone rule).
func lawsOfZone(p *Plant) []broken {
	zone, ok1 := p.Zone.Get()
	lowest, ok2 := p.LowestInPot.Get()
	if !ok1 || !ok2 || !p.Kind.Lasting() || p.FrostClass != Hardy || zone < 1 || zone > 13 {
		return nil
	}
	if limit := InPot(zone); lowest < limit-roundingSlack {
		return []broken{{FieldLowestInPot, "zone_in_pot", []finding.Arg{
			number("value", float64(lowest), working.Celsius), number("zone", float64(zone), working.None),
			number("limit", float64(limit), working.Celsius),
		}}}
	}
	return nil
}

// lawsOfResponse: the base temperature agrees with the class.
func lawsOfResponse(p *Plant) []broken {
	base, ok := p.BaseTemperature.Get()
	if !ok || p.TemperatureClass == "" {
		return nil
	}
	low, high := p.TemperatureClass.Bases()
	if base < low || base > high {
		return []broken{{FieldBaseTemperature, "temperature_class", []finding.Arg{
			number("value", float64(base), working.Celsius), word("class", p.TemperatureClass.Key()),
		}}}
	}
	return nil
}

// lawsOfListing: each creature has a listing, lilies are dangerous to cats, and
// what is listed as toxic to people is not called edible; where it is mildly so a
// note must say which part.
func lawsOfListing(p *Plant) []broken {
	var out []broken
	if p.Toxicity.Dogs == "" || p.Toxicity.Cats == "" || p.Toxicity.People == "" {
		out = append(out, broken{FieldToxicity, "missing", []finding.Arg{word("key", string(FieldToxicity))}})
	}
	listed := p.Toxicity.People
	if len(p.Edible) > 0 && (listed == ListedToxic || listed == ListedDangerous || listed == ListedMild && p.Toxicity.Note == "") {
		out = append(out, broken{FieldEdible, "edible_but_listed", []finding.Arg{word("listing", listed.Key())}})
	}
	if p.lily() && p.Toxicity.Cats != ListedDangerous {
		out = append(out, broken{FieldToxicity, "lily_not_dangerous", nil})
	}
	return out
}

// lawsOfConflicts: a conflict has at least two versions.
func lawsOfConflicts(p *Plant) []broken {
	for _, c := range p.Conflicts {
		if len(c.Versions) < 2 {
			return []broken{{FieldConflicts, "conflict_of_one", nil}}
		}
	}
	return nil
}
