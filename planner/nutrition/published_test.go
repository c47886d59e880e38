package nutrition_test

import (
	"math"
	"strings"
	"testing"

	"fourturn/planner/civil"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
)

func TestPublishedStrengths(t *testing.T) {
	for _, row := range published(t, "nutrition_strength.csv") {
		s, err := nutrition.AtStrength(nutrition.MustParseAnalysis(row["analysis"]), nutrition.PPM(number(t, row["ppm_N"])))
		if err != nil {
			t.Fatal(err)
		}
		const gramsPerSpoon = 4.73
		ounces := float64(s.For(100*quantity.Gallon) / quantity.Ounce)
		perGallon := s.For(quantity.Gallon).Grams()
		got, ok := map[string]float64{
			"g_per_L":               float64(s.Product),
			"oz_per_100_gal":        ounces,
			"wrong_oz_per_100_gal":  ounces,
			"g_per_gal":             perGallon,
			"tsp_per_gal_of_4.73_g": perGallon / gramsPerSpoon,
			"mL_per_L_of_4.73_g":    float64(s.Product) / gramsPerSpoon * float64(quantity.Teaspoon/quantity.Millilitre),
			"ppm_P":                 float64(s.Phosphorus()),
		}[row["unit"]]
		if !ok {
			t.Fatalf("no figure for %q", row["unit"])
		}
		want := number(t, row["value"])
		agrees := near(got, want, number(t, row["tolerance"]))
		if slip := row["status"] == "ERRATUM"; agrees == slip {
			t.Errorf("%s at %s ppm: %.4g %s, printed %v (%s, %s)", row["analysis"], row["ppm_N"], got, row["unit"], want, row["status"], row["source"])
		}
	}
}

func TestPublishedFactors(t *testing.T) {
	balanced := nutrition.MustParseAnalysis("20-20-20")
	_, p, k := balanced.Elements()
	journal := nutrition.AnalysisOfElements(16, 3.9, 10)
	ounce := nutrition.Solution{Analysis: nutrition.Analysis{N: 100}, Product: nutrition.Concentration(quantity.Ounce.Grams() / (100 * quantity.Gallon).Litres())}
	pound, err := nutrition.ParseRate("1 lb/yd3", nutrition.PrillSpoon)
	if err != nil {
		t.Fatal(err)
	}
	figures := map[string]float64{
		"P_of_P2O5": p / 20, "P2O5_of_P": 20 / p, "P_of_20-20-20": p,
		"K_of_K2O": k / 20, "K2O_of_K": 20 / k, "K_of_20-20-20": k,
		"P2O5_of_16N-3.9P-10K": journal.P2O5, "K2O_of_16N-3.9P-10K": journal.K2O,
		"ppm_per_oz_in_100_gal": float64(ounce.Nitrogen()), "g_per_L_per_lb_per_yd3": float64(pound),
	}
	for _, row := range published(t, "nutrition_factors.csv") {
		got, ok := figures[row["quantity"]]
		if !ok || !near(got, number(t, row["value"]), number(t, row["tolerance"])) {
			t.Errorf("%s is %v, printed %s (%s)", row["quantity"], got, row["value"], row["source"])
		}
	}
}

func TestPublishedInjectorsAndConductivities(t *testing.T) {
	for _, row := range published(t, "nutrition_injector.csv") {
		a := nutrition.MustParseAnalysis(row["analysis"])
		s, err := nutrition.AtStrength(a, nutrition.PPM(number(t, row["ppm_N"])))
		if err != nil {
			t.Fatal(err)
		}
		stock := s.Stock(nutrition.Injector{Ratio: number(t, row["ratio"])})
		slope, known := nutrition.KnownSlope(a)
		ec := s.EC(slope, 0)
		got, ok := map[string]float64{
			"oz_per_gal":     float64(stock.Of(quantity.Gallon) / quantity.Ounce),
			"mS_per_cm":      float64(ec.Value),
			"mS_per_cm_low":  float64(ec.Low),
			"mS_per_cm_high": float64(ec.High),
		}[row["unit"]]
		if !ok || !known {
			t.Fatalf("no figure for %q of %v", row["unit"], a)
		}
		if !near(got, number(t, row["value"]), number(t, row["tolerance"])) {
			t.Errorf("%s, %s ppm, 1:%s: %.4g %s, printed %s (%s)", row["analysis"], row["ppm_N"], row["ratio"], got, row["unit"], row["value"], row["source"])
		}
	}
}

func TestPublishedCharges(t *testing.T) {
	for _, row := range published(t, "nutrition_charge.csv") {
		rate, err := nutrition.ParseRate(row["rate"], nutrition.PrillSpoon)
		if err != nil {
			t.Fatal(err)
		}
		nitrogen := nutrition.MustParseAnalysis(row["analysis"]).In(rate.Of(quantity.Litre)).N.Grams()
		tolerance := number(t, row["tolerance"])
		if !near(float64(rate), number(t, row["g_per_L"]), tolerance) || !near(nitrogen, number(t, row["g_N_per_L"]), tolerance) {
			t.Errorf("%s of %s: %.4g g/L with %.4g g N, printed %s and %s (%s)", row["rate"], row["analysis"], float64(rate), nitrogen, row["g_per_L"], row["g_N_per_L"], row["source"])
		}
	}
}

func TestPublishedFeederClasses(t *testing.T) {
	pound, _ := nutrition.ParseRate("1 lb/yd3", nutrition.PrillSpoon)
	rules := nutrition.UsualFeedRules()
	limit, _ := nutrition.ParseRate("4 lb/gal", nutrition.PrillSpoon)
	for _, row := range published(t, "nutrition_feeder.csv") {
		low, high := number(t, row["low"]), number(t, row["high"])
		want := nutrition.Band{Low: low, High: high}
		if f := nutrition.Feeder(row["class"]); f.Known() {
			c := nutrition.ClassOf(f)
			bands := map[string]nutrition.Band{
				"g_per_L":    c.Charge,
				"lb_per_yd3": {Low: c.Charge.Low / float64(pound), High: c.Charge.High / float64(pound)},
				"ppm_N":      c.Strength,
			}
			got, ok := bands[row["quantity"]]
			if !ok || !near(got.Low, low, 0.015) || !near(got.High, high, 0.015) {
				t.Errorf("%s, %s: %v, printed %v (%s)", f, row["quantity"], got, want, row["source"])
			}
			continue
		}
		inside := true
		switch row["quantity"] {
		case "ppm_N":
			inside = nutrition.SeedlingStrength == want
		case "days_between":
			for _, f := range nutrition.Feeders {
				i := nutrition.ClassOf(f).Interval
				inside = inside && want.Holds(float64(i.Shortest)) && want.Holds(float64(i.Longest)) && i.Sound()
			}
		case "weeks_to_first_feed":
			inside = want.Holds(rules.StarterWeeks) && want.Holds(rules.StarterWeeks+nutrition.UsualGrace/7)
		case "weeks_to_first_feed_with_charge":
			inside = want.Holds(rules.ChargeWeeks) && want.Holds(rules.ChargeWeeks+nutrition.UsualGrace/7)
		case "leaching_share":
			inside = nutrition.LeachingBand == want
		case "leachate_mS_per_cm_charge_only":
			inside = nutrition.LeachateBand(true) == want
		case "leachate_mS_per_cm_with_feed":
			inside = nutrition.LeachateBand(false) == want
		case "basket_pour_L": // between the smallest and the largest basket at the ends of the band
			inside = nutrition.PourFor(4, nutrition.TakenUpBand.Low, 0.1).Wets.Litres() < low &&
				nutrition.PourFor(6, nutrition.TakenUpBand.High, 0.1).Wets.Litres() > high
		case "flush_pot_volumes":
			inside = nutrition.FlushVolumes == low
		case "stock_limit_lb_per_gal":
			inside = near(float64(nutrition.UsualSolubility), float64(limit), 1e-9)
		default:
			t.Fatalf("no figure for %q", row["quantity"])
		}
		if !inside {
			t.Errorf("%s is not within %v (%s)", row["quantity"], want, row["source"])
		}
	}
}

// A basket gets 5 to 6 g N in about 20 weeks from 2 qt of 300 ppm every two weeks.
func TestPublishedSupplies(t *testing.T) {
	for _, row := range published(t, "nutrition_supply.csv") {
		s, err := nutrition.AtStrength(nutrition.MustParseAnalysis("20-8-20"), nutrition.PPM(number(t, row["ppm_N"])))
		if err != nil {
			t.Fatal(err)
		}
		poured := quantity.LiquidQuart * quantity.Volume(number(t, row["liquid_quarts"])*number(t, row["feeds"]))
		n, tolerance := s.Brings(poured).N.Grams(), number(t, row["tolerance"])
		if n < number(t, row["g_N_low"])*(1-tolerance) || n > number(t, row["g_N_high"])*(1+tolerance) {
			t.Errorf("%s qt of %s ppm, %s times: %.3g g N (%s)", row["liquid_quarts"], row["ppm_N"], row["feeds"], n, row["source"])
		}
	}
}

// Published spoons lie within the error that is stated for spoons, or mark its ends.
func TestPublishedSpoons(t *testing.T) {
	for _, row := range published(t, "nutrition_spoons.csv") {
		grams := number(t, row["g_per_tsp"])
		if row["from_oz_per_pint"] != "" {
			pint := quantity.Ounce * quantity.Mass(number(t, row["from_oz_per_pint"]))
			if got := float64(pint) * float64(quantity.Teaspoon/quantity.Pint) * 1000; !near(got, grams, 0.002) {
				t.Errorf("%s: %.3g g a teaspoon, printed %v (%s)", row["material"], got, grams, row["source"])
			}
		}
		if strings.Contains(row["material"], "soluble") && math.Abs(grams/(float64(nutrition.SolubleSpoon)*1000/3)-1) > nutrition.SpoonError {
			t.Errorf("%s: %v g is further than the stated error from the usual spoon (%s)", row["material"], grams, row["source"])
		}
	}
}

func product(months float64, reference quantity.Temperature) nutrition.SlowRelease {
	return nutrition.SlowRelease{Analysis: nutrition.MustParseAnalysis("14-14-14"), Longevity: months, Reference: reference}
}

// steady is a track of a charge that lies at one temperature.
func steady(p nutrition.SlowRelease, c quantity.Temperature, k nutrition.Kinetics) nutrition.Track {
	thermal := nutrition.NewThermal(spring, []quantity.Temperature{c}, k)
	return nutrition.Follow(nutrition.Charge{Product: p, Date: spring, Mass: 0.02}, thermal, nil)
}

func TestPublishedReleases(t *testing.T) {
	usual := nutrition.UsualKinetics()
	factor := func(c, reference quantity.Temperature, k nutrition.Kinetics) float64 {
		return 1 / k.Speed(c, reference)
	}
	withQ10 := func(q10 float64) nutrition.Kinetics {
		k := usual
		k.ActivationEnergy = nutrition.ActivationFromQ10(q10)
		return k
	}
	for _, row := range published(t, "nutrition_release.csv") {
		x, reference := 0.0, quantity.Temperature(0)
		if row["x"] != "" {
			x = number(t, row["x"])
		}
		if row["reference_C"] != "" {
			reference = quantity.Temperature(number(t, row["reference_C"]))
		}
		c := quantity.Temperature(x)
		var got float64
		switch name, q10, _ := strings.Cut(row["quantity"], "_at_q10_"); name {
		case "q10_of_activation":
			k := usual
			k.ActivationEnergy = x
			got = k.Q10()
		case "life_factor":
			k := usual
			if q10 != "" {
				k = withQ10(number(t, q10))
			}
			got = factor(c, reference, k)
		case "days_of_105":
			got = product(105/30.436875, 21).LongevityAt(c, withQ10(number(t, q10))).Days
		case "released_after_days":
			got = steady(product(3.5, 25), reference, usual).Released(spring.AddDays(int(x)))
		case "released_at_rating":
			got = steady(product(3.5, reference), reference, usual).Released(spring.AddDays(107))
		case "released_at_rating_set_to_0.92":
			k := usual
			k.Rated = 0.92
			got = steady(product(6, 21), reference, k).Released(spring.AddDays(183))
		case "released_after_220_days":
			got = steady(product(3.5, 21), reference, usual).Released(spring.AddDays(220))
		case "released_in_4_weeks":
			checkColdRelease(t, row)
			continue
		case "lag_days":
			got = usual.Lag
		case "reference_C":
			got = float64(nutrition.UsualReference)
		case "months_at_reference":
			got = product(x, reference).LongevityAt(reference, usual).Days / 30.436875
		case "top_delivery":
			got = nutrition.TopDelivery
		default:
			t.Fatalf("no figure for %q", row["quantity"])
		}
		tolerance := number(t, row["tolerance"])
		inside := got >= number(t, row["low"])*(1-tolerance) && got <= number(t, row["high"])*(1+tolerance)
		if disagrees := row["status"] == "DISAGREES"; inside == disagrees {
			t.Errorf("%s of %s: %.4g, printed %s to %s (%s, %s)", row["quantity"], row["x"], got, row["low"], row["high"], row["status"], row["source"])
		}
	}
}

// The printed end points of 5 and 35 °C imply a Q10 below the model's: 1.39 counted
// straight, 1.57 by first order. What must hold is that release goes on in the cold
// and that warmth drives it.
func checkColdRelease(t *testing.T, row map[string]string) {
	t.Helper()
	cold, warm := number(t, row["low"]), number(t, row["high"])
	straight := math.Cbrt(warm / cold)
	firstOrder := math.Cbrt(math.Log(1-warm) / math.Log(1-cold))
	if !near(straight, 1.39, 0.005) || !near(firstOrder, 1.57, 0.005) {
		t.Errorf("implied Q10 %.3f and %.3f (%s)", straight, firstOrder, row["source"])
	}
	usual := nutrition.UsualKinetics()
	day28 := spring.AddDays(28)
	at5, at35 := steady(product(3.5, 21), 5, usual).Released(day28), steady(product(3.5, 21), 35, usual).Released(day28)
	if !(at5 > 0.02 && at35 > 2*at5) {
		t.Errorf("4 weeks release %.3f at 5 °C and %.3f at 35 °C", at5, at35)
	}
}

// Two charges of 3 to 4 months or one of 8 to 9 carry outdoor pots (garden.org).
func TestTwoShortChargesOrOneLongCarryASeason(t *testing.T) {
	usual := nutrition.UsualKinetics()
	first, _ := steady(product(3.5, 21), 21, usual).SpentOn()
	long, _ := steady(product(8.5, 21), 21, usual).SpentOn()
	if two, one := 2*int(first-spring), int(long-spring); two < 182 || two > 244 || one < 243 || one > 274 {
		t.Errorf("two short charges last %d days, one long %d", two, one)
	}
	if first == spring || long == civil.Date(0) {
		t.Error("a charge was spent at once")
	}
}
