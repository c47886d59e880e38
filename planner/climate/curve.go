package climate

import (
	"math"
	"sync"

	"gonum.org/v1/gonum/mat"
)

// Smooth returns the daily curve behind twelve monthly means: of all curves
// through the year, round its end and back, whose mean over each month of a
// common year is the month's, the one with the least bending (least sum of
// squared second differences). It is the discrete, periodic form of the
// mean-preserving spline; see the package's doc for the source.
//
// The solution is linear in the means, so that it is one multiplication by a
// matrix that depends on the calendar alone.
func Smooth(means [12]float64) *Year {
	w := smoother()
	y := new(Year)
	for i := range y {
		for m, v := range means {
			y[i] += w[i][m] * v
		}
	}
	return y
}

// smoother returns the weight of each month's mean in each day's value.
//
// With A the 12 × 365 matrix of monthly averaging and G the pseudo-inverse of
// D₂ᵀD₂, the minimiser under A·x = m is x = c·1 + G·Aᵀ·μ, where μ and c solve
// A·G·Aᵀ·μ + c·A·1 = m and 1ᵀ·Aᵀ·μ = 0.
var smoother = sync.OnceValue(func() *[DaysPerYear][12]float64 {
	response := monthResponses()
	system := mat.NewDense(13, 13, nil)
	for m := range 12 {
		for k := range 12 {
			system.Set(m, k, response[k].MonthMean(monthOf(m)))
		}
		system.Set(m, 12, 1)
		system.Set(12, m, 1)
	}
	var inverse mat.Dense
	if err := inverse.Inverse(system); err != nil {
		panic("climate: the smoothing system is singular: " + err.Error())
	}
	weights := new([DaysPerYear][12]float64)
	for i := range weights {
		for m := range 12 {
			sum := inverse.At(12, m)
			for k := range 12 {
				sum += response[k][i] * inverse.At(k, m)
			}
			weights[i][m] = sum
		}
	}
	return weights
})

// monthResponses returns G·Aᵀ: the curve that answers to each month's mean.
func monthResponses() [12]Year {
	green := bendingGreen()
	var response [12]Year
	for m := range 12 {
		for i := range DaysPerYear {
			sum := 0.0
			for d := range monthDays[m] {
				sum += green[wrap(i-firstOfMonth[m]-d)]
			}
			response[m][i] = sum / float64(monthDays[m])
		}
	}
	return response
}

// bendingGreen returns the first column of the pseudo-inverse of the periodic
// D₂ᵀD₂, a circulant matrix with eigenvalues (2 − 2·cos(2πk/n))².
func bendingGreen() *Year {
	const n = DaysPerYear
	var cosines Year
	for i := range cosines {
		cosines[i] = math.Cos(2 * math.Pi * float64(i) / n)
	}
	green := new(Year)
	for j := range green {
		for k := 1; k < n; k++ {
			bend := 2 - 2*cosines[k]
			green[j] += cosines[k*j%n] / (bend * bend)
		}
		green[j] /= n
	}
	return green
}
