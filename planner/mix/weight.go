package mix

import (
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Substrate is a mix by its physical properties.
type Substrate struct {
	Key               string
	DryDensity        float64 // kg/L, oven dry
	ContainerCapacity float64 // share of the volume that is water after draining
	Source            working.Source
}

// Name returns the key of the substrate's name.
func (s Substrate) Name() string { return "mix.substrate." + s.Key }

const measuredSubstrates = "International Journal of Agronomy 2012:978528, table 1 (NCSU porometer)"

// Substrates lists mixes with published properties. The first is taken where a
// person says nothing: it is the middle of the published ranges.
var Substrates = [...]Substrate{
	{"potting_mix", 0.125, 0.65, working.Source{
		Status: working.Derived,
		Cite:   "middle of 0.09-0.16 g/cm³ (Univ. of Arkansas, Greenhouse Management Online, unit 7) and of 60-70 % (greenhousegrower.com, Predicting Plant Water Uptake)",
	}},
	{"sphagnum_peat", 0.11, 0.87, working.Source{Status: working.Published, Cite: measuredSubstrates}},
	{"pine_bark", 0.18, 0.48, working.Source{Status: working.Published, Cite: measuredSubstrates}},
	{"wood_chip_fine", 0.22, 0.57, working.Source{Status: working.Published, Cite: measuredSubstrates}},
	{"wood_chip_coarse", 0.19, 0.42, working.Source{Status: working.Published, Cite: measuredSubstrates}},
}

// Limits and densities of the weight.
const (
	// LiftLimit is the load constant of the NIOSH lifting equation: the most for an
	// ideal lift, 51 lb (NIOSH 94-110, rev. 9/2021). It protects 90 % of men and 75 %
	// of women (CCOHS).
	LiftLimit quantity.Mass = 23
	// CodeLoad is the uniform live load of decks and balconies in US house codes, in
	// kg/m²: 40 psf (IRC 2009 and later; American Wood Council). People and snow
	// count against it too.
	CodeLoad = 195.3
	// GravelDensity is that of loose dry gravel, kg/L (hpdconsult.com, densities).
	GravelDensity = 1.52
	waterDensity  = 1.0 // kg/L
	// PSF is a pound to the square foot in kg/m², exactly 0.45359237 / 0.3048².
	PSF = 0.45359237 / (0.3048 * 0.3048)
)

// WeightInput is everything that stands on the floor with a pot.
type WeightInput struct {
	Pot       quantity.Mass   // empty
	Mix       quantity.Volume // firm
	Substrate Substrate       // the zero Substrate means the first of [Substrates]
	Plants    quantity.Mass   // with their root balls as far as not counted in Mix
	Reservoir quantity.Volume // water
	Gravel    quantity.Volume // of a drainage layer
	Footprint quantity.Area   // on which the pot stands; 0 where it hangs
}

// Weight is what a pot weighs.
type Weight struct {
	Dry       quantity.Mass // with oven-dry mix and an empty reservoir: the least it can be
	Drained   quantity.Mass // watered and drained, reservoir full: what is carried and borne
	FloorLoad float64       // kg/m² when drained, over the footprint; 0 where it hangs
	in        WeightInput
	pot, tops func() working.Trace // where the weights of pot and plants are from; nil for not known
}

// From returns the weight with the workings of the empty pot and of the plants, to be
// shown beneath its own.
func (w Weight) From(pot, tops func() working.Trace) Weight {
	w.pot, w.tops = pot, tops
	return w
}

// Plants returns the weight of the plants above the mix.
func (w Weight) Plants() quantity.Mass { return w.in.Plants }

// SubstrateOf returns a substrate by its key, the usual one for "", and false for a key
// that is not known.
func SubstrateOf(key string) (Substrate, bool) {
	for _, s := range Substrates {
		if s.Key == key {
			return s, true
		}
	}
	return Substrates[0], key == ""
}

// TopsPerArea is the fresh weight of a full display above the mix, kg to a square metre
// of opening. No published figure was found for mixed displays: it is a judgement, to be
// replaced where somebody weighed.
const TopsPerArea = 5.0

// Tops are the plants above the mix.
type Tops struct {
	Opening quantity.Area
	Entered quantity.Mass // what the person says; 0 means by [TopsPerArea]
}

// Mass returns what the plants weigh.
func (t Tops) Mass() quantity.Mass {
	if t.Entered > 0 {
		return t.Entered
	}
	return quantity.Mass(float64(t.Opening) * TopsPerArea)
}

// Working returns the trace of the weight of the plants.
func (t Tops) Working() working.Trace {
	trace := working.Trace{Name: "mix.plant_mass", Formula: "m", Result: kilograms(t.Mass()), Source: entered}
	if t.Entered > 0 {
		return trace
	}
	trace.Formula = "m = A × w"
	trace.Source = working.Source{Status: working.Judgement}
	trace.Inputs = []working.Input{
		{Symbol: "A", Name: "mix.opening", Value: working.Number(float64(t.Opening), working.SquareMetre), Source: definition},
		{Symbol: "w", Name: "mix.tops_per_area", Value: working.Number(TopsPerArea, working.KilogramPerM2), Source: working.Source{Status: working.Judgement}},
	}
	trace.Notes = []string{"mix.note_tops"}
	return trace
}

// Weigh returns the weight of a pot. It panics on negative amounts.
func Weigh(in WeightInput) Weight {
	if !(in.Pot >= 0 && in.Mix >= 0 && in.Plants >= 0 && in.Reservoir >= 0 && in.Gravel >= 0 && in.Footprint >= 0) {
		panic("mix: negative amount in a weight")
	}
	if in.Substrate == (Substrate{}) {
		in.Substrate = Substrates[0]
	}
	gravel := float64(in.Gravel) * GravelDensity
	w := Weight{in: in}
	w.Dry = in.Pot + in.Plants + quantity.Mass(float64(in.Mix)*in.Substrate.DryDensity+gravel)
	water := float64(in.Mix)*in.Substrate.ContainerCapacity + float64(in.Reservoir)
	w.Drained = w.Dry + quantity.Mass(water*waterDensity)
	if in.Footprint > 0 {
		w.FloorLoad = float64(w.Drained) / float64(in.Footprint)
	}
	return w
}

// Findings returns the cautions on lifting and on the floor.
func (w Weight) Findings(where finding.Where) []finding.Finding {
	var found []finding.Finding
	if w.Drained > LiftLimit {
		code := "mix.lift_wet"
		if w.Dry > LiftLimit {
			code = "mix.lift"
		}
		found = append(found, finding.Finding{Code: code, Severity: finding.Caution, Where: where, Args: []finding.Arg{
			{Name: "weight", Value: kilograms(w.Drained)},
			{Name: "dry", Value: kilograms(w.Dry)},
			{Name: "limit", Value: kilograms(LiftLimit)},
		}})
	}
	if w.FloorLoad > CodeLoad {
		found = append(found, finding.Finding{Code: "mix.floor_load", Severity: finding.Caution, Where: where, Args: []finding.Arg{
			{Name: "load", Value: working.Number(w.FloorLoad, working.KilogramPerM2)},
			{Name: "code_load", Value: working.Number(CodeLoad, working.KilogramPerM2)},
		}})
	}
	return found
}

func kilograms(m quantity.Mass) working.Value { return working.Number(float64(m), working.Kilogram) }

// Working returns the trace of the weight when watered and drained.
func (w Weight) Working() working.Trace {
	in := w.in
	density := func(x float64) working.Value { return working.Number(x*1000, working.GramPerLitre) }
	trace := working.Trace{
		Name: "mix.weight", Formula: "m = m_pot + m_plants + V × (ρ + C × ρ_w) + G × ρ_g + W × ρ_w",
		Inputs: []working.Input{
			{Symbol: "m_pot", Name: "mix.pot_mass", Value: kilograms(in.Pot), Source: definition},
			{Symbol: "m_plants", Name: "mix.plant_mass", Value: kilograms(in.Plants), Source: entered},
			{Symbol: "V", Name: "mix.firm_volume", Value: litres(in.Mix), Source: definition},
			{Symbol: "ρ", Name: "mix.dry_density", Value: density(in.Substrate.DryDensity), Source: in.Substrate.Source},
			{Symbol: "C", Name: "mix.container_capacity", Value: working.Number(in.Substrate.ContainerCapacity, working.Share), Source: in.Substrate.Source},
			{Symbol: "ρ_w", Name: "mix.water_density", Value: density(waterDensity), Source: definition},
		},
		Result: kilograms(w.Drained),
		Source: definition,
		Notes:  []string{"mix.note_weight"},
	}
	trace.Inputs[0] = under(trace.Inputs[0], w.pot)
	trace.Inputs[1] = under(trace.Inputs[1], w.tops)
	if in.Gravel > 0 {
		trace.Inputs = append(trace.Inputs,
			working.Input{Symbol: "G", Name: "mix.gravel", Value: litres(in.Gravel), Source: definition},
			working.Input{Symbol: "ρ_g", Name: "mix.gravel_density", Value: density(GravelDensity), Source: working.Source{Status: working.Published, Cite: "hpdconsult.com, densities: loose dry gravel 1520 kg/m³"}})
	}
	if in.Reservoir > 0 {
		trace.Inputs = append(trace.Inputs, working.Input{Symbol: "W", Name: "mix.reservoir", Value: litres(in.Reservoir), Source: definition})
	}
	return trace
}

// under puts the working of an input beneath it, with its source.
func under(in working.Input, from func() working.Trace) working.Input {
	if from != nil {
		trace := from()
		in.From, in.Source = &trace, trace.Source
	}
	return in
}

// FloorWorking returns the trace of the load on the floor.
func (w Weight) FloorWorking() working.Trace {
	own := w.Working()
	return working.Trace{
		Name: "mix.floor_load", Formula: "q = m / A",
		Inputs: []working.Input{
			{Symbol: "m", Name: "mix.weight", Value: own.Result, Source: own.Source, From: &own},
			{Symbol: "A", Name: "mix.footprint", Value: working.Number(float64(w.in.Footprint), working.SquareMetre), Source: definition},
			{Symbol: "q_code", Name: "mix.code_load", Value: working.Number(CodeLoad, working.KilogramPerM2), Source: working.Source{Status: working.Published, Cite: "IRC 2009 and later, 40 psf for decks and balconies (American Wood Council FAQ; evstudio.com)"}},
		},
		Result: working.Number(w.FloorLoad, working.KilogramPerM2),
		Source: definition,
		Notes:  []string{"mix.note_floor"},
	}
}
