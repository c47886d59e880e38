package rotation_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/rotation"
)

// anyClimate draws a year and a half of some climate, warm, cold or odd.
func anyClimate(t *rapid.T) *rotation.Climate {
	const days = 560
	mean := rapid.Float64Range(-5, 28).Draw(t, "annual mean")
	swing := rapid.Float64Range(0, 18).Draw(t, "swing")
	daily := rapid.Float64Range(2, 16).Draw(t, "day and night")
	warmest := rapid.Float64Range(0, 365).Draw(t, "warmest day")
	n := rotation.Normals{From: civil.MustParse("2027-01-01"), Tmin: make([]float64, days), Tmax: make([]float64, days), TminSD: make([]float64, days)}
	for i := range days {
		m := mean + swing*math.Cos(2*math.Pi*(float64(i)-warmest)/365.25)
		n.Tmin[i], n.Tmax[i] = m-daily/2, m+daily/2
		n.TminSD[i] = 4
	}
	climate, err := rotation.NewClimate(n, nil)
	if err != nil {
		t.Fatal(err)
	}
	return climate
}

func anyPlant(t *rapid.T) rotation.Plant {
	lowest := rapid.Float64Range(-30, 5).Draw(t, "lowest")
	base := rapid.Float64Range(-1, 12).Draw(t, "base")
	return rotation.Plant{
		ID:           "plant",
		Lowest:       quantity.Temperature(lowest),
		PlantOut:     quantity.Temperature(lowest + rapid.Float64Range(0, 20).Draw(t, "plant out")),
		HeatLimit:    quantity.Temperature(rapid.Float64Range(15, 40).Draw(t, "heat limit")),
		Base:         quantity.Temperature(base),
		Optimum:      quantity.Temperature(base + rapid.Float64Range(5, 25).Draw(t, "optimum")),
		Hardened:     rapid.Bool().Draw(t, "hardened"),
		Overwinters:  rapid.Bool().Draw(t, "overwinters"),
		RootLimit:    quantity.Temperature(rapid.Float64Range(-25, 0).Draw(t, "root limit")),
		DisplayWeeks: rapid.SampledFrom([]float64{0, 3, 12}).Draw(t, "display weeks"),
		Sizes:        []rotation.Size{{WeeksToFull: rapid.Float64Range(0, 10).Draw(t, "weeks"), Fullness: rapid.Float64Range(0.1, 1).Draw(t, "fullness")}},
	}
}

// days draws two or three days of the climate in order.
func anyDays(t *rapid.T, count int) []civil.Date {
	first := civil.MustParse("2027-01-01")
	list := make([]civil.Date, count)
	for i := range list {
		list[i] = first.AddDays(rapid.IntRange(0, 180).Draw(t, "day"))
		first = list[i]
	}
	return list
}

const slack = 1e-12

func TestDisplayIsAShare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := rotation.NewOutlook(anyClimate(t), rotation.DefaultParams())
		plant := anyPlant(t)
		p := single(&plant)
		days := anyDays(t, 2)
		for i, v := range o.Curve(&p, days[0], days[1]) {
			if !(v >= 0 && v <= 1) {
				t.Fatalf("display %v on %v", v, days[0].AddDays(i))
			}
		}
	})
}

func TestHardierNeverLivesLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := rotation.NewOutlook(anyClimate(t), rotation.DefaultParams())
		tender := anyPlant(t)
		hardy := tender
		hardy.Lowest -= quantity.Temperature(rapid.Float64Range(0, 10).Draw(t, "hardier"))
		hardy.RootLimit -= quantity.Temperature(rapid.Float64Range(0, 10).Draw(t, "hardier roots"))
		days := anyDays(t, 2)
		if a, b := o.Alive(&tender, days[0], days[1]), o.Alive(&hardy, days[0], days[1]); b < a-slack {
			t.Fatalf("the tender one lives with %v, the hardier with %v", a, b)
		}
		p, q := single(&tender), single(&hardy)
		if a, b := o.Value(&p, days[0], days[1]), o.Value(&q, days[0], days[1]); b < a-slack {
			t.Fatalf("the tender one shows %v, the hardier %v", a, b)
		}
	})
}

func TestLaterStartIsNeverFullerOnItsFirstDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := rotation.NewOutlook(anyClimate(t), rotation.DefaultParams())
		plant := anyPlant(t)
		part := rotation.Part{Plant: &plant, Share: 1}
		days := anyDays(t, 2)
		early, late := o.Fullness(part, days[0], days[1]), o.Fullness(part, days[1], days[1])
		if late > early+slack {
			t.Fatalf("planted on %v it is %v full on %v, planted that day %v", days[0], early, days[1], late)
		}
		// Where nothing but growth changes it, neither does it look better.
		if plant.DisplayWeeks == 0 && o.Alive(&plant, days[0], days[1]) == 1 {
			plant.HeatLimit, plant.Overwinters, plant.RootLimit = 99, true, -99
			o = rotation.NewOutlook(o.Climate(), o.Params())
			p := single(&plant)
			if a, b := o.Value(&p, days[0], days[1]), o.Value(&p, days[1], days[1]); b > a+slack {
				t.Fatalf("planted on %v it shows %v on %v, planted that day %v", days[0], a, days[1], b)
			}
		}
	})
}

func TestWarmerLimitNeverFadesEarlier(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := rotation.NewOutlook(anyClimate(t), rotation.DefaultParams())
		cool := anyPlant(t)
		warm := cool
		warm.HeatLimit += quantity.Temperature(rapid.Float64Range(0, 10).Draw(t, "warmer"))
		days := anyDays(t, 2)
		p, q := single(&cool), single(&warm)
		if a, b := o.Value(&p, days[0], days[1]), o.Value(&q, days[0], days[1]); b < a-slack {
			t.Fatalf("with the cooler limit it shows %v, with the warmer %v", a, b)
		}
	})
}

func TestWarmerGrowsNoSlower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plant := anyPlant(t)
		part := rotation.Part{Plant: &plant, Share: 1}
		days := anyDays(t, 2)
		at := func(mean float64) float64 {
			n := rotation.Normals{From: civil.MustParse("2027-01-01")}
			for range 560 {
				n.Tmin, n.Tmax, n.TminSD = append(n.Tmin, mean-5), append(n.Tmax, mean+5), append(n.TminSD, 3)
			}
			climate, err := rotation.NewClimate(n, nil)
			if err != nil {
				t.Fatal(err)
			}
			return rotation.NewOutlook(climate, rotation.DefaultParams()).Fullness(part, days[0], days[1])
		}
		mean := rapid.Float64Range(-10, 35).Draw(t, "mean")
		if a, b := at(mean), at(mean+rapid.Float64Range(0, 5).Draw(t, "warmer")); b < a-slack {
			t.Fatalf("%v full when cool, %v when warm", a, b)
		}
	})
}

// At the reference temperature a plant is full after its weeks to full, no sooner.
func TestWeeksToFullHoldAtTheReference(t *testing.T) {
	n := rotation.Normals{From: civil.MustParse("2027-12-01")}
	for range 200 {
		n.Tmin, n.Tmax, n.TminSD = append(n.Tmin, 15), append(n.Tmax, 25), append(n.TminSD, 3)
	}
	climate, err := rotation.NewClimate(n, nil)
	if err != nil {
		t.Fatal(err)
	}
	o := rotation.NewOutlook(climate, rotation.DefaultParams())
	part := rotation.Part{Share: 1, Plant: &rotation.Plant{Base: 4, Optimum: 25, Sizes: []rotation.Size{{WeeksToFull: 6}}}}
	start := civil.MustParse("2028-01-31")
	if got := o.Fullness(part, start, start.AddDays(41)); got >= 1-1e-9 {
		t.Errorf("full after 41 days: %v", got)
	}
	if got := o.Fullness(part, start, start.AddDays(42)); math.Abs(got-1) > 1e-9 {
		t.Errorf("after six weeks %v full", got)
	}
}
