package planner_test

import (
	"math"
	"testing"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/mix"
	"fourturn/planner/working"
)

// balances works a plan out and returns the mix balance of its first pot.
func balances(t *testing.T, plan planner.Plan) []planner.Stand {
	t.Helper()
	return planner.WorkOut(&plan, reference(t), today).Pots[0].Stands
}

// What goes in less what comes out is what is there, at each change-out and from one
// to the next.
func TestTheMixOfTheYearBalances(t *testing.T) {
	plan := yard()
	for _, policy := range []planner.RefreshPolicy{"", planner.TopUp, planner.AllFresh} {
		plan.Pots[0].Refresh = policy
		stands := balances(t, plan)
		for i, s := range stands {
			b := s.Balance
			if got := b.Before.Volume - b.Shrunk - b.BallsOut - b.OldOut + b.BallsIn + b.Fresh; math.Abs(float64(got-b.After.Volume)) > 1e-9 {
				t.Errorf("%q stand %d: %v L, the balance says %v", policy, i, b.After.Volume, got)
			}
			if i > 0 && stands[i-1].Balance.After.Volume != b.Before.Volume {
				t.Errorf("%q stand %d begins with %v L, the one before left %v", policy, i, b.Before.Volume, stands[i-1].Balance.After.Volume)
			}
			if math.Abs(s.Mix.Number()-float64(b.Loose())) > 1e-12 {
				t.Errorf("%q stand %d: mix %v, balance %v", policy, i, s.Mix.Number(), b.Loose())
			}
		}
	}
}

func TestAPotHasAShareOfItsOwn(t *testing.T) {
	plan := yard()
	plan.Mix.Refresh = 0.2
	own := plan.Pots[0]
	own.RefreshShare = 0.5
	other := plan
	other.Pots = []planner.Pot{own}
	share := func(p planner.Plan) float64 {
		b := balances(t, p)[1].Balance
		return float64(b.OldOut / (b.Before.Volume - b.BallsOut))
	}
	if got := share(plan); math.Abs(got-0.2) > 1e-9 {
		t.Errorf("the plan's share is 20 %%, %v is taken out", got)
	}
	if got := share(other); math.Abs(got-0.5) > 1e-9 {
		t.Errorf("the pot's share is 50 %%, %v is taken out", got)
	}
}

// The age counts quarters of a year, from the day of the last filling.
func TestMixAgesByTheDay(t *testing.T) {
	plan := yard()
	plan.Pots[0].Refresh, plan.Pots[0].RetireAfter = planner.TopUp, 100
	stands := balances(t, plan)
	plan.Pots[0].MixSince = stands[1].From // filled anew on a change-out day
	stands = balances(t, plan)
	if b := stands[1].Balance; b.Reason != mix.ByPolicy || b.After.Age != 0 {
		t.Errorf("on the day of the filling: %s, age %v", b.Reason, b.After.Age)
	}
	kept := stands[2].Balance
	old := kept.After.Volume - kept.BallsIn - kept.Fresh
	want := float64(stands[2].From-stands[1].From) / 365.25 * 4 * float64(old/kept.After.Volume)
	if math.Abs(kept.After.Age-want) > 1e-9 {
		t.Errorf("age %v after one planting, want %v", kept.After.Age, want)
	}
	plan.Pots[0].MixSince = stands[1].From.AddDays(10) // between two change-outs
	between := balances(t, plan)[2].Balance
	want = float64(stands[2].From-stands[1].From-10) / 365.25 * 4 * float64(old/kept.After.Volume)
	if math.Abs(between.After.Age-want) > 1e-9 {
		t.Errorf("age %v after a filling in between, want %v", between.After.Age, want)
	}
}

func TestMixIsRetiredAfterTheSetSeasons(t *testing.T) {
	plan := yard()
	plan.Mix.RetireAfter = 3
	plan.Pots[0].MixSince = civil.MustParse("2026-01-01") // five seasons and more
	if b := balances(t, plan)[0].Balance; b.Reason != mix.ByAge || b.After.Age != 0 {
		t.Errorf("by the plan: %s, age %v", b.Reason, b.After.Age)
	}
	plan.Pots[0].RetireAfter = 40
	if b := balances(t, plan)[0].Balance; b.Reason != mix.ByShare {
		t.Errorf("by the pot: %s", b.Reason)
	}
}

func TestTheWeightHasItsParts(t *testing.T) {
	plan := yard()
	pot := &plan.Pots[1]
	pot.Vessel.Material, pot.Vessel.Wall = "terracotta", 0.015
	pot.Vessel.FalseBottom, pot.Vessel.Reservoir, pot.Vessel.DrainageLayer = 0.05, true, 0.03
	weigh := func() planner.PotOutlook { return planner.WorkOut(&plan, reference(t), today).Pots[1] }
	p := weigh()
	substrate := mix.Substrates[0]
	want := p.Empty.Number() + p.Tops.Number() + p.Fill.Number()*(substrate.DryDensity+substrate.ContainerCapacity) +
		p.Reservoir.Number() + p.Layer.Number()*mix.GravelDensity
	if got := p.Wet.Number(); math.Abs(got-want) > 1e-9*want {
		t.Errorf("watered %v kg, its parts weigh %v", got, want)
	}
	if p.Load.Number() < 100 || p.Reservoir.Number() <= 0 || p.Layer.Number() <= 0 {
		t.Errorf("load %v, reservoir %v, layer %v", p.Load.Number(), p.Reservoir.Number(), p.Layer.Number())
	}
	for name, f := range map[string]planner.Figure{"empty": p.Empty, "tops": p.Tops, "dry": p.Dry, "wet": p.Wet, "load": p.Load, "reservoir": p.Reservoir, "layer": p.Layer} {
		if trace := f.Working(); trace.Result != f.Value || trace.Name == "" {
			t.Errorf("the working of %s ends in %v, the figure is %v", name, trace.Result, f.Value)
		}
	}
	pot.PlantMass = 4
	if got := weigh().Tops; got.Number() != 4 || got.Working().Source.Status != working.Entered {
		t.Errorf("plants of 4 kg weigh %v", got.Number())
	}
	plan.Mix.Substrate = "sphagnum_peat"
	if heavier := weigh().Wet.Number(); heavier <= p.Wet.Number() {
		t.Errorf("with wet peat %v kg, with potting mix %v", heavier, p.Wet.Number())
	}
	if hanging := weigh(); hanging.Load.IsZero() {
		t.Error("a standing pot bears on nothing")
	}
}
