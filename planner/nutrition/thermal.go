package nutrition

import (
	"sort"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// Thermal is a run of daily mix temperatures added up as days at 21 °C, so that the
// age of any charge at the place is one subtraction. It is immutable and may serve
// every pot that stands there. Days outside the run take the temperature of the
// nearest day in it.
//
// A daily mean is less than the truth where days swing widely: the speed at the
// mean is below the mean of the speeds, by about 2 % for a swing of ±5 K.
type Thermal struct {
	first    civil.Date
	sum      []float64 // sum[i]: days at 21 °C before day i
	kinetics Kinetics
}

// NewThermal adds up daily mean mix temperatures from a first day on. It panics on
// an empty run.
func NewThermal(first civil.Date, means []quantity.Temperature, k Kinetics) *Thermal {
	if len(means) == 0 {
		panic("nutrition: no mix temperatures")
	}
	k.check()
	t := &Thermal{first: first, sum: make([]float64, len(means)+1), kinetics: k}
	for i, mean := range means {
		t.sum[i+1] = t.sum[i] + k.Speed(mean, UsualReference)
	}
	return t
}

// ThermalOf is [NewThermal] for temperatures given by day, the last day included.
func ThermalOf(first, last civil.Date, mean func(civil.Date) quantity.Temperature, k Kinetics) *Thermal {
	means := make([]quantity.Temperature, 0, max(0, int(last-first)+1))
	for d := first; d <= last; d++ {
		means = append(means, mean(d))
	}
	return NewThermal(first, means, k)
}

// Kinetics returns the settings that the run was added up with.
func (t *Thermal) Kinetics() Kinetics { return t.kinetics }

// before returns the days at 21 °C from the first day of the run to the morning of d.
func (t *Thermal) before(d civil.Date) float64 {
	n := len(t.sum) - 1
	switch i := int(d - t.first); {
	case i < 0:
		return float64(i) * t.sum[1]
	case i > n:
		return t.sum[n] + float64(i-n)*(t.sum[n]-t.sum[n-1])
	default:
		return t.sum[i]
	}
}

// Age returns the days at a reference temperature from the morning of from to the
// morning of to.
func (t *Thermal) Age(from, to civil.Date, reference quantity.Temperature) float64 {
	days := t.before(to) - t.before(from)
	if reference == UsualReference {
		return days
	}
	return days * t.kinetics.Speed(UsualReference, reference)
}

// reach returns the first morning on which an age since from is reached; found is
// false when that is more than 20 years away.
func (t *Thermal) reach(from civil.Date, age float64, reference quantity.Temperature) (day civil.Date, found bool) {
	const horizon = 20 * 366
	n := sort.Search(horizon, func(i int) bool { return t.Age(from, from.AddDays(i), reference) >= age })
	return from.AddDays(n), n < horizon
}
