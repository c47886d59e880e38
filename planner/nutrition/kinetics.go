package nutrition

import (
	"math"

	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Kinetics are the settings of the release model.
type Kinetics struct {
	ActivationEnergy float64 // kJ/mol, of the steady phase
	Lag              float64 // days at the reference temperature before release begins
	Steady           float64 // share released at a steady rate; the rest decays
	Rated            float64 // share released when the rated longevity is over
	Spent            float64 // share released at which a charge counts as spent
}

// ActivationBand is the activation energy of steady release in kJ/mol, of two coated
// N-P-K fertilisers from 20 to 40 °C (Du, Zhou & Shaviv, J. Polym. Environ., 2006,
// doi 10.1007/s10924-006-0025-4).
var ActivationBand = Band{37, 46}

// LagBand is the days before N and K come out (Du, Zhou & Shaviv, 2006).
var LagBand = Band{2, 10}

// SpentBand is the range within which a person may set when a charge is spent.
// Ratings are given for 75 % (a maker's restatement of the European test rule) or
// for 90 to 95 % of the nitrogen (a grower magazine).
var SpentBand = Band{0.75, 0.95}

// UsualKinetics returns the default settings: the middle of the published
// activation energies; a lag of 5 days, within the published 2 to 10; half at a
// steady rate, a judgement; 80 % out at the end of the rating, within the
// conventions of 75 to 95 %, and spent then.
func UsualKinetics() Kinetics {
	return Kinetics{ActivationEnergy: ActivationBand.Middle(), Lag: 5, Steady: 0.5, Rated: 0.8, Spent: 0.8}
}

// check panics on settings that describe no release.
func (k Kinetics) check() {
	if !(k.ActivationEnergy >= 0) || !(k.Lag >= 0) || !(k.Steady > 0 && k.Steady < 1) ||
		!(k.Rated > k.Steady && k.Rated < 1) || !(k.Spent > 0 && k.Spent < 1) {
		panic("nutrition: unsound settings of the release model")
	}
}

const (
	gasConstant = 8.314462618 // J/(mol K), exact since 2019 (CODATA)
	zeroCelsius = 273.15      // K, by definition
)

// Speed returns how fast a charge releases at a temperature, as a multiple of its
// speed at the reference: exp(Ea/R × (1/Tref − 1/T)), by Arrhenius. It is never 0.
func (k Kinetics) Speed(t, reference quantity.Temperature) float64 {
	inverse := 1/(float64(reference)+zeroCelsius) - 1/(float64(t)+zeroCelsius)
	return math.Exp(k.ActivationEnergy * 1000 / gasConstant * inverse)
}

// Q10 returns the speed at 30 °C over that at 20 °C: the factor that people quote
// for ten kelvin.
func (k Kinetics) Q10() float64 { return k.Speed(30, 20) }

// ActivationFromQ10 returns the activation energy in kJ/mol of a Q10 from 20 to 30 °C.
func ActivationFromQ10(q10 float64) float64 {
	return math.Log(q10) * gasConstant / 1000 / (1/(20+zeroCelsius) - 1/(30+zeroCelsius))
}

// LongevityAt returns how long a product lasts at a steady temperature until it is spent.
func (p SlowRelease) LongevityAt(t quantity.Temperature, k Kinetics) Longevity {
	p = p.filled()
	return Longevity{product: p, kinetics: k, mean: t, Days: p.curve(k).ageAt(k.Spent) / k.Speed(t, p.Reference)}
}

// Longevity is how long a product lasts at a steady temperature.
type Longevity struct {
	Days     float64
	product  SlowRelease
	kinetics Kinetics
	mean     quantity.Temperature
}

// Working returns the trace of the longevity, with the Q10.
func (l Longevity) Working() working.Trace {
	return working.Trace{
		Name:    "nutrition.longevity",
		Formula: "L = L_ref × exp(Ea/R × (1/T − 1/T_ref)), Q10 = exp(Ea/R × (1/293.15 − 1/303.15))",
		Inputs: append([]working.Input{
			{Symbol: "T", Name: "nutrition.mix_temperature", Value: working.Number(float64(l.mean), working.Celsius), Source: working.Source{Status: working.Entered}},
		}, kineticsInputs(l.product, l.kinetics)...),
		Result: working.Number(l.Days, working.Day),
		Source: activationSource,
	}
}

var activationSource = working.Source{
	Status: working.Published,
	Cite:   "Du, Zhou & Shaviv, J. Polym. Environ. (2006); curve: Shaviv, Raban & Zaidel, Environ. Sci. Technol. 37:2251 (2003)",
}

// kineticsInputs are the inputs that every trace of a release shares.
func kineticsInputs(p SlowRelease, k Kinetics) []working.Input {
	return []working.Input{
		{Symbol: "L_ref", Name: "nutrition.rated_longevity", Value: working.Number(p.Longevity, working.Month), Source: working.Source{Status: working.Entered}},
		{Symbol: "T_ref", Name: "nutrition.reference_temperature", Value: working.Number(float64(p.Reference), working.Celsius), Source: working.Source{Status: working.Published, Cite: "grower press: ratings are given for 21 to 25 °C"}},
		{Symbol: "Ea", Name: "nutrition.activation_energy", Value: working.Number(k.ActivationEnergy, working.KilojoulePerMole), Source: activationSource},
		{Symbol: "Q10", Name: "nutrition.q10", Value: working.Number(k.Q10(), working.None), Source: working.Source{Status: working.Derived}},
		{Symbol: "lag", Name: "nutrition.lag", Value: working.Number(k.Lag, working.Day), Source: working.Source{Status: working.Judgement, Cite: "within the 2 to 10 days of Du, Zhou & Shaviv (2006)"}},
		{Symbol: "steady", Name: "nutrition.steady_share", Value: working.Number(k.Steady, working.Share), Source: working.Source{Status: working.Judgement}},
		{Symbol: "rated", Name: "nutrition.rated_share", Value: working.Number(k.Rated, working.Share), Source: working.Source{Status: working.Judgement, Cite: "conventions of 75 to 95 % were read"}},
	}
}
