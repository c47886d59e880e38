package pots_test

import (
	"strings"
	"testing"

	"fourturn/app/screen/pots"
	"fourturn/app/screen/screentest"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/vessel"
)

func groupOf(t *testing.T, s *pots.Screen, key string) pots.Group {
	t.Helper()
	for _, g := range s.Groups() {
		if g.Key == key {
			return g
		}
	}
	t.Fatalf("there is no group %s", key)
	return pots.Group{}
}

// take types into a field of the chosen pot and settles.
func take(t *testing.T, d *screentest.Desk, s *pots.Screen, key, typed string) {
	t.Helper()
	if err := fieldOf(t, s, key).Take(typed); err != nil {
		t.Fatalf("%s %q: %v", key, typed, err)
	}
	d.Settle()
}

func choose(t *testing.T, d *screentest.Desk, s *pots.Screen, key string, i int) {
	t.Helper()
	if err := fieldOf(t, s, key).Choose(i); err != nil {
		t.Fatalf("%s %d: %v", key, i, err)
	}
	d.Settle()
}

func saysOf(g pots.Group, severity finding.Severity, part string) bool {
	for _, r := range g.Remarks {
		if r.Severity == severity && strings.Contains(r.Text, part) {
			return true
		}
	}
	return false
}

func TestWhatIsInsideThePot(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	spec := func() vessel.Spec { return d.Plan().Pots[0].Vessel }
	volume := s.Vessel().FillVolume()
	take(t, d, s, "drainage_layer", "4 cm")
	g := groupOf(t, s, "inside")
	if !saysOf(g, finding.Note, "drainage layer takes") || len(g.Notes) != 1 || !strings.Contains(g.Notes[0], "e0318716") {
		t.Errorf("a drainage layer: %+v", g.Remarks)
	}
	if s.Vessel().FillVolume() >= volume || !strings.Contains(g.Summary, "drainage layer of 4 cm") {
		t.Errorf("the layer takes no room, or is not summed up: %q", g.Summary)
	}
	choose(t, d, s, "no_holes", 1)
	if g = groupOf(t, s, "inside"); !spec().NoHoles || !saysOf(g, finding.Warning, "no drainage holes") {
		t.Errorf("no holes: %+v", g.Remarks)
	}
	if worst, marked := g.Worst(); !marked || worst != finding.Warning {
		t.Errorf("the fold is marked %v, %v", worst, marked)
	}
	choose(t, d, s, "reservoir", 1)
	if g = groupOf(t, s, "inside"); !spec().Reservoir || spec().FalseBottom == 0 || saysOf(g, finding.Warning, "no drainage holes") {
		t.Errorf("a reservoir: %+v", g.Remarks)
	}
	take(t, d, s, "reservoir_water", "1.5 L")
	if got := float64(s.Vessel().ReservoirVolume()); !near(got, 1.5) {
		t.Errorf("the reservoir holds %v L", got)
	}
	refused(t, fieldOf(t, s, "reservoir_water").Take("500 L"))
	refused(t, fieldOf(t, s, "false_bottom").Take("39 cm"))
	take(t, d, s, "reservoir_water", "")
	choose(t, d, s, "reservoir", 0)
	take(t, d, s, "false_bottom", "")
	take(t, d, s, "drainage_layer", "")
	choose(t, d, s, "no_holes", 0)
	if got := s.Vessel().FillVolume(); got != volume {
		t.Errorf("all taken out again, the pot takes %v, before %v", got, volume)
	}
}

// Every shape of pot takes a liner at once that goes in and can be measured.
func TestEveryPotTakesALiner(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	for i, kind := range vessel.Kinds {
		if err := s.SetShape(i); err != nil {
			t.Fatal(err)
		}
		before := s.Vessel().FillVolume()
		choose(t, d, s, "liner", 1)
		if s.Vessel() == nil || s.Vessel().FillVolume() >= before && kind != vessel.Measured { // that of 10 L has the outside of a larger one
			t.Fatalf("%s with a liner: %v", kind, d.Plan().Pots[0].Vessel.Validate())
		}
		for _, f := range groupOf(t, s, "liner").Fields {
			typedAgain(t, s, f)
		}
		for k := range fieldOf(t, s, "liner.kind").Options {
			choose(t, d, s, "liner.kind", k)
		}
		choose(t, d, s, "liner", 0)
		if got := s.Vessel().FillVolume(); got != before {
			t.Errorf("%s without its liner takes %v, before %v", kind, got, before)
		}
	}
}

func TestALinerThatDoesNotGoInIsSaid(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	choose(t, d, s, "liner", 1)
	take(t, d, s, "liner.height", "20 cm")
	if got := d.Plan().Pots[0].Vessel.Liner.Height; !near(float64(got), 0.20) {
		t.Errorf("the liner is %v high", got)
	}
	take(t, d, s, "liner.top_diameter", "90 cm")
	if f := fieldOf(t, s, "liner"); f.Error == "" || s.Vessel() != nil {
		t.Errorf("a liner wider than its pot: %+v", f)
	}
	if worst, marked := func() (finding.Severity, bool) { g := groupOf(t, s, "liner"); return g.Worst() }(); !marked || worst != finding.Error {
		t.Errorf("the fold is marked %v, %v", worst, marked)
	}
}

func TestTypingShowsThePotBeforeItIsTaken(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	revision := d.Revision()
	f := fieldOf(t, s, "height")
	taller := f.Try("60 cm")
	if taller == nil || taller.Vessel.FillVolume() <= s.Shape().Vessel.FillVolume() || taller.Text == s.Shape().Text {
		t.Errorf("60 cm would give %+v", taller)
	}
	if f.Try("6x") != nil || f.Try("900 m") != nil || d.Revision() != revision {
		t.Error("what cannot be is tried, or the plan was changed")
	}
}

func TestTheMixOfAPot(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	pot := func() planner.Pot { return d.Plan().Pots[0] }
	take(t, d, s, "refresh_share", "50 %")
	take(t, d, s, "mix_since", "2026-04-20")
	take(t, d, s, "retire_after", "6")
	if p := pot(); p.RefreshShare != 0.5 || p.MixSince != civil.MustParse("2026-04-20") || p.RetireAfter != 6 || d.UndoName() != "change the mix of Door pot, left" {
		t.Errorf("%+v, %q", p, d.UndoName())
	}
	if got := groupOf(t, s, "mix").Summary; !strings.Contains(got, "50%") || !strings.Contains(got, "seasons old") {
		t.Errorf("summed up as %q", got)
	}
	refused(t, fieldOf(t, s, "refresh_share").Take("150 %"))
	refused(t, fieldOf(t, s, "refresh_share").Take("half"))
	refused(t, fieldOf(t, s, "mix_since").Take("last spring"))
	refused(t, fieldOf(t, s, "mix_since").Take("2027-06-09"))
	refused(t, fieldOf(t, s, "retire_after").Take("2.5"))
	refused(t, fieldOf(t, s, "retire_after").Take("0"))
	rows := s.Balance()
	if len(rows) < 5 || s.Through() == "" {
		t.Fatalf("%d rows, %q", len(rows), s.Through())
	}
	now := 0
	for _, r := range rows {
		if r.Now {
			now++
		}
		if r.When == "" || r.Season == "" || r.Fresh == "" || r.Reason == "" || strings.Contains(r.Reason, "⟦") || r.Figure.IsZero() {
			t.Errorf("row %+v", r)
		}
	}
	if now != 1 {
		t.Errorf("%d rows stand now", now)
	}
	choose(t, d, s, "refresh", 1)
	if pot().Refresh != planner.TopUp {
		t.Errorf("policy %q", pot().Refresh)
	}
	choose(t, d, s, "refresh", 2)
	take(t, d, s, "mix_since", "")
	take(t, d, s, "retire_after", "")
	if p := pot(); p.Refresh != planner.AllFresh || !p.MixSince.IsZero() || p.RetireAfter != 0 {
		t.Errorf("%+v", p)
	}
}

func TestDiseaseIsEnteredAndTakenBack(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	take(t, d, s, "disease", "grey mould")
	log := d.Plan().Log
	if len(log) != 1 || log[0].Kind != planner.Diseased || log[0].Text != "grey mould" || log[0].Pots[0] != "door-left" {
		t.Fatalf("log %+v", log)
	}
	if g := groupOf(t, s, "mix"); !saysOf(g, finding.Warning, "diseased") {
		t.Errorf("said %+v", g.Remarks)
	}
	take(t, d, s, "disease", "black root rot")
	if log := d.Plan().Log; len(log) != 1 || log[0].Text != "black root rot" {
		t.Errorf("log %+v", log)
	}
	d.Edit(func(p *planner.Plan) {
		p.Log[0].Pots = []string{"door-left", "door-right"}
	})
	take(t, d, s, "disease", "")
	if log := d.Plan().Log; len(log) != 1 || len(log[0].Pots) != 1 || log[0].Pots[0] != "door-right" {
		t.Errorf("what is said of the other pot is gone: %+v", log)
	}
}

func TestTheWeightOfAPot(t *testing.T) {
	d, s := open(t, screentest.Customary(t))
	g := groupOf(t, s, "weight")
	if len(g.Figures) != 5 || !strings.Contains(g.Summary, "lb watered") || !strings.Contains(g.Notes[0], "engineer") || !strings.Contains(g.Notes[0], "local codes") {
		t.Errorf("weight %+v", g)
	}
	if !saysOf(g, finding.Caution, "lift") {
		t.Errorf("a heavy pot: %+v", g.Remarks)
	}
	for _, f := range g.Figures {
		if trace := f.Figure.Working(); trace.Result != f.Figure.Value {
			t.Errorf("%s ends in %v, not in %v", f.Label, trace.Result, f.Figure.Value)
		}
	}
	take(t, d, s, "plant_mass", "8")
	if got := float64(d.Plan().Pots[0].PlantMass); got < 3.62 || got > 3.63 {
		t.Errorf("8 lb are %v kg", got)
	}
	refused(t, fieldOf(t, s, "plant_mass").Take("900000 kg"))
	refused(t, fieldOf(t, s, "plant_mass").Take("light"))
	take(t, d, s, "plant_mass", "")
}

func TestWhoseThePotIs(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	take(t, d, s, "client", " Mill Lane ")
	take(t, d, s, "notes", "Leaks.\nMend in spring.\n")
	if p := d.Plan().Pots[0]; p.Client != "Mill Lane" || p.Notes != "Leaks.\nMend in spring." || d.UndoName() != "change the notes on Door pot, left" {
		t.Errorf("%q, %q, %q", p.Client, p.Notes, d.UndoName())
	}
	refused(t, fieldOf(t, s, "client").Take(strings.Repeat("x", 500)))
	if got := groupOf(t, s, "place").Summary; got != "Door pot, left · Cafe door, south wall · Mill Lane" {
		t.Errorf("summed up as %q", got)
	}
}

func TestFrostTenderPotsAreMarkedAtTheirMaterial(t *testing.T) {
	_, s := open(t, screentest.Example(t))
	if g := groupOf(t, s, "size"); !saysOf(g, finding.Caution, "crack") {
		t.Errorf("terracotta: %+v", g.Remarks)
	}
}
