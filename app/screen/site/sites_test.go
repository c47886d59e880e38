package site_test

import (
	"strings"
	"testing"

	"fourturn/app/screen/screentest"
	"fourturn/planner"
	"fourturn/planner/quantity"
)

func TestSitesAreAddedNamedAndRemoved(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	if err := s.AddSite(); err != nil || s.Name() != "Site 2" || d.UndoName() != "add Site 2" {
		t.Fatalf("%v, %q, %q", err, s.Name(), d.UndoName())
	}
	if err := s.Rename(" The hill "); err != nil || s.Name() != "The hill" {
		t.Errorf("%v, %q", err, s.Name())
	}
	if got := refused(t, s.Rename(" ")); got != "a name is needed" {
		t.Error(got)
	}
	if spots, pots := s.Losses(); spots != 1 || pots != 0 {
		t.Errorf("%d spots, %d pots", spots, pots)
	}
	if err := s.SetCoordinates("47.1, 11.4", ""); err != nil {
		t.Fatal(err)
	}
	d.Settle()
	if out := s.Outlook(); out == nil || !strings.HasPrefix(out.Place, "Innsbruck") {
		t.Errorf("a place on the map takes %+v", s.Near())
	}
	if err := s.Remove(); err != nil || s.Name() != "The yard" || len(d.Plan().Spots) != 3 {
		t.Errorf("%v, %q, %d spots", err, s.Name(), len(d.Plan().Spots))
	}
	spots, pots := s.Losses()
	if err := s.Remove(); err != nil || spots != 3 || pots != 10 || len(d.Plan().Sites)+len(d.Plan().Spots) != 0 || d.Plan().Pots[0].Spot != "" {
		t.Errorf("%v, %d spots and %d pots were lost", err, spots, pots)
	}
	d.Undo()
	d.Settle()
	if spot, ok := s.ChooseID(d.Plan().Spots[1].ID); !ok || !spot || s.ChosenSpot() != &d.Plan().Spots[1] {
		t.Error("a spot is not found by its id")
	}
	if _, ok := s.ChooseID("nowhere"); ok {
		t.Error("nowhere is found")
	}
}

func TestWhereASiteIs(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	for _, one := range []struct{ lat, lon, want string }{
		{"41.6, -93.6", "", "41.6° N 93.6° W"}, {"41,6", "93,6 w", "41.6° N 93.6° W"}, {"33.9° S", "151.2", "33.9° S 151.2° E"}, {"0", "-0", "0° N 0° E"},
	} {
		if err := s.SetCoordinates(one.lat, one.lon); err != nil {
			t.Errorf("%v: %v", one, err)
		}
		if lat, lon := s.Coordinates(); lat+" "+lon != one.want {
			t.Errorf("%v is shown as %s %s", one, lat, lon)
		}
	}
	for _, one := range [][2]string{{"91", "0"}, {"north", "0"}, {"-3 S", "1"}, {"NaN", "0"}, {"1", "181"}, {"1", ""}, {"1", "east"}} {
		refused(t, s.SetCoordinates(one[0], one[1]))
	}
	if err := s.SetCoordinates("41.9", "-93.2"); err != nil {
		t.Fatal(err)
	}
	d.Settle()
	near := s.Near()
	if len(near) != 5 || !near[0].Taken || !strings.Contains(near[0].Name, "km away") || !strings.Contains(near[1].Name, "m lower") {
		t.Errorf("near are %+v", near)
	}
	freezes := s.FreezeStations()
	if len(freezes) != 5 || freezes[0].Taken || !strings.Contains(freezes[0].Name, "last") {
		t.Fatalf("freeze stations are %+v", freezes)
	}
	before := s.Freezes()[0].Value
	if err := s.SetFreezeStation(freezes[2].ID); err != nil {
		t.Fatal(err)
	}
	d.Settle()
	if got := s.Freezes()[0].Value; got == before || !s.FreezeStations()[2].Taken {
		t.Errorf("the last freeze stays %s", got)
	}
	if err := s.SetCoordinates("", ""); err != nil {
		t.Error(err)
	}
	if lat, _ := s.Coordinates(); lat != "" {
		t.Errorf("latitude %q", lat)
	}
}

func TestColderHigherUp(t *testing.T) {
	for _, one := range []struct {
		units quantity.System
		usual string
	}{{quantity.Metric, "6.5"}, {quantity.USCustomary, "3.57"}} {
		plan := screentest.Example(t)
		plan.Units = one.units
		d, s := open(t, plan)
		if got, unit := s.Lapse(); got != one.usual || unit == "" {
			t.Errorf("usual is %s %s", got, unit)
		}
		if err := s.SetLapse("4,5"); err != nil {
			t.Error(err)
		}
		if got, _ := s.Lapse(); got != "4.5" {
			t.Errorf("4.5 is shown as %s", got)
		}
		for _, typed := range []string{"0", "-3", "50", "steep", "NaN"} {
			refused(t, s.SetLapse(typed))
		}
		if err := s.SetLapse(" "); err != nil || d.Plan().Sites[0].LapseRate != 0 {
			t.Error(err)
		}
	}
}

func TestMeansOfOnesOwn(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	for i, typed := range map[int]string{0: "-3", 6: "14 °C", 12: "30 °F", 18: "22"} {
		if err := s.SetMean(i, typed); err != nil {
			t.Errorf("%q: %v", typed, err)
		}
	}
	d.Settle()
	fields := s.Means()
	if len(fields) != 24 || fields[0].Value != "-3 °C" || fields[1].Value != "" || !strings.HasPrefix(fields[1].Help, "≈ ") || !s.HasMeans() {
		t.Errorf("fields %+v", fields[:3])
	}
	if out := s.Outlook(); out == nil || !out.Warmth || !s.Freezes()[0].Soft || !s.MonthRows()[0].Low.Soft {
		t.Error("what is estimated is not marked")
	}
	told := strings.Join(s.Told(), "\n")
	if !strings.Contains(told, "Temperatures are estimated") || strings.Contains(told, "⟦") {
		t.Error(told)
	}
	if got := refused(t, s.SetMean(6, "23")); got != "low above high" {
		t.Error(got)
	}
	refused(t, s.SetMean(3, "hot"))
	refused(t, s.SetMean(3, "99"))
	if err := s.ClearMeans(); err != nil || s.HasMeans() {
		t.Error(err)
	}
}

func TestSpotsAreKept(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	if err := s.AddSpot(); err != nil {
		t.Fatal(err)
	}
	kinds := s.Kinds()
	for i, kind := range kinds {
		if strings.HasPrefix(kind, "Under the eaves, against") {
			if err := s.SetSpotKind(i); err != nil {
				t.Error(err)
			}
		}
	}
	d.Settle()
	f, ok := s.Spot()
	if !ok || f.NightHelp != "usual: +2.5 °C" || f.Night != "" || len(f.Figures) != 6 || f.Figures[0].Value != "+2.5 °C" {
		t.Fatalf("spot %+v", f)
	}
	sheltered := f.Figures[1].Value
	for typed, want := range map[string]string{"-3": "-3 °C", "+ 1,5 °C": "+1.5 °C", "3.6 °F": "+2 °C", "2 K": "+2 °C"} {
		if err := s.SetSpotOffset(true, typed); err != nil {
			t.Errorf("%q: %v", typed, err)
		}
		if f, _ := s.Spot(); f.Night != want {
			t.Errorf("%q is shown as %q", typed, f.Night)
		}
	}
	if err := s.SetSpotOffset(true, "-3"); err != nil {
		t.Error(err)
	}
	if f, _ = s.Spot(); f.Figures[1].Value == sheltered {
		t.Error("a hollow changes no date")
	}
	for _, typed := range []string{"warm", "21", "NaN", "-25"} {
		refused(t, s.SetSpotOffset(false, typed))
	}
	if s.SetSpotOffset(true, "") != nil || s.SetSpotLight(2) != nil || s.SetSpotName("Loggia") != nil || s.SetPotWidth("60") != nil {
		t.Error("the spot was not changed")
	}
	refused(t, s.SetSpotName(""))
	refused(t, s.SetPotWidth("1 cm"))
	if f, _ = s.Spot(); f.Name != "Loggia" || f.Light != 2 || f.Night != "" || s.PotWidth() != "60 cm" {
		t.Errorf("spot %+v", f)
	}
	rows, chosen := s.Spots()
	if len(rows) != 4 || chosen != 3 || rows[3].Name != "Loggia" || rows[0].Pots != 4 || rows[0].Last == rows[1].Last {
		t.Errorf("rows %+v", rows)
	}
	if err := s.RemoveSpot(); err != nil || d.UndoName() != "remove Loggia" || len(d.Plan().Spots) != 3 {
		t.Errorf("%v, %q", err, d.UndoName())
	}
	_, s = open(t, screentest.Empty())
	if _, ok := s.Spot(); ok || s.RemoveSpot() != nil || s.AddSpot() != nil || s.SetSpotName("x") != nil {
		t.Error("a plan without a site has a spot")
	}
}

// All dates move with the risk, before it is the plan's and after.
func TestAllDatesMoveWithTheRisk(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	dates := func() (list []string) {
		for _, one := range s.Seasons() {
			list = append(list, one.Start.Value)
		}
		for _, f := range s.Freezes()[:3] {
			list = append(list, f.Value)
		}
		return list
	}
	cautious := dates()
	s.TryRisk(90)
	bold := dates()
	for i := range bold {
		if bold[i] == cautious[i] {
			t.Errorf("date %d stays %s", i, bold[i])
		}
	}
	if d.Dirty() || s.Risk() != 90 || !strings.HasPrefix(s.RiskWords(90), "Bold") {
		t.Errorf("trying a risk changed the plan, or is not shown: %d", s.Risk())
	}
	if err := s.TakeRisk(90); err != nil || d.Plan().Risk != 0.9 || d.UndoName() != "change the risk" {
		t.Errorf("%v, %q", err, d.UndoName())
	}
	d.Settle()
	for i, got := range dates() {
		if got != bold[i] {
			t.Errorf("date %d jumps to %s from %s", i, got, bold[i])
		}
	}
	d.Undo()
	d.Settle()
	for i, got := range dates() {
		if got != cautious[i] {
			t.Errorf("taken back, date %d is %s and was %s", i, got, cautious[i])
		}
	}
	for percent, want := range map[int]string{1: "Cautious", 30: "Rather cautious", 50: "Even", 70: "Rather bold", 99: "Bold"} {
		if !strings.HasPrefix(s.RiskWords(percent), want) {
			t.Errorf("%d %% is %q", percent, s.RiskWords(percent))
		}
	}
	if len(s.RiskMarks()) != 3 || s.RiskMarks()[1].Percent != 50 {
		t.Errorf("marks %v", s.RiskMarks())
	}
}

func TestAnyThresholdAndAnyHeat(t *testing.T) {
	_, s := open(t, screentest.Example(t))
	light := s.Freezes()
	if err := s.SetThreshold("-5 °C"); err != nil {
		t.Fatal(err)
	}
	hard := s.Freezes()
	if hard[0].Value == light[0].Value || !strings.Contains(hard[0].Label, "-5 °C") || s.Threshold() != "-5 °C" {
		t.Errorf("%+v", hard[0])
	}
	if err := s.SetThreshold("-50"); err != nil {
		t.Error(err)
	}
	if f := s.Freezes()[0]; f.Value != "no date" || f.Note == "" {
		t.Errorf("%+v", f)
	}
	refused(t, s.SetThreshold("cold"))
	refused(t, s.SetThreshold("-99"))
	if s.SetThreshold("") != nil || s.Threshold() != "0 °C" {
		t.Error(s.Threshold())
	}
	if s.SetRunDays("10") != nil || s.SetRunAbove("35") != nil {
		t.Error("not asked")
	}
	rare := s.Heat()[0].Value
	if days, above := s.Run(); days != "10" || above != "35 °C" {
		t.Error(days, above)
	}
	if s.SetRunDays("1") != nil || s.SetRunAbove("") != nil || s.Heat()[0].Value == rare {
		t.Errorf("odds %s", rare)
	}
	refused(t, s.SetRunDays("0"))
	refused(t, s.SetRunDays("many"))
	refused(t, s.SetRunAbove("hot"))
	if lines := s.ReadingAt(5); len(lines) != 3 || strings.Contains(strings.Join(lines, ""), "⟦") {
		t.Errorf("%v", lines)
	}
	if len(s.Credits()) < 6 || len(s.FreezeStations()) != 5 {
		t.Error("credits or freeze stations are missing")
	}
}

// Places without a frost, without a summer or in the south are told plainly.
func TestPlacesOfAnotherYear(t *testing.T) {
	for place, want := range map[string]string{
		"Kuala Lumpur": "practically never freezes", "Cambridge Bay": "Less than a month", "Hobart": "Winter: none here", "Des Moines": "",
	} {
		d, s := open(t, screentest.Example(t))
		if err := s.SetStation(s.Find(place, 1)[0].ID); err != nil {
			t.Fatal(err)
		}
		d.Settle()
		told := strings.Join(s.Told(), "\n")
		if strings.Contains(told, "⟦") || want == "" && told != "" || !strings.Contains(told, want) {
			t.Errorf("%s: %q", place, told)
		}
		for _, one := range s.Seasons() {
			if one.Start.Value == "" {
				t.Errorf("%s: nothing is said of %s", place, one.Name)
			}
		}
	}
	plan := screentest.Example(t)
	low := quantity.Temperature(9)
	plan.Sites[0].Means = []planner.MonthMeans{{Month: "jan", Tmin: &low}}
	_, s := open(t, plan)
	if fault := s.Fault(); !strings.Contains(fault, "three monthly means") {
		t.Errorf("the fault is %q", fault)
	}
}
