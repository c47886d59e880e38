package pots_test

import (
	"errors"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"fourturn/app/screen/pots"
	"fourturn/app/screen/screentest"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

func open(t testing.TB, plan *planner.Plan) (*screentest.Desk, *pots.Screen) {
	t.Helper()
	d := screentest.Open(t, plan, screentest.SummerDay)
	return d, pots.New(d.Session, d.Words, d.NewID)
}

// refused fails unless an error is for the field, in words, on one line.
func refused(t *testing.T, err error) string {
	t.Helper()
	var field *words.Refusal
	if !errors.As(err, &field) {
		t.Fatalf("the error is %v", err)
	}
	if field.Text == "" || strings.ContainsAny(field.Text, "⟦\n") || len([]rune(field.Text)) > 34 {
		t.Errorf("the refusal is %q", field.Text)
	}
	return field.Text
}

func value(t *testing.T, s *pots.Screen, field vessel.Field) string {
	t.Helper()
	return fieldOf(t, s, string(field)).Value
}

// fieldOf returns a field of the page by its key.
func fieldOf(t *testing.T, s *pots.Screen, key string) pots.Field {
	t.Helper()
	for _, g := range s.Groups() {
		for _, f := range g.Fields {
			if f.Key == key {
				return f
			}
		}
	}
	t.Fatalf("there is no field %s", key)
	return pots.Field{}
}

func TestMeasuresAreReadInThePersonsUnits(t *testing.T) {
	for _, one := range []struct {
		units quantity.System
		typed string
		want  quantity.Length
		shown string
	}{
		{quantity.Metric, "50 cm", 0.50, "50 cm"},
		{quantity.Metric, "50", 0.50, "50 cm"},
		{quantity.Metric, " 0.5 m ", 0.50, "50 cm"},
		{quantity.Metric, "20 in", 0.508, "50.8 cm"},
		{quantity.Metric, "1,234 mm", 1.234, "123.4 cm"},
		{quantity.USCustomary, "20", 0.508, "20 in"},
		{quantity.USCustomary, "1 ft 8 in", 0.508, "20 in"},
		{quantity.USCustomary, "50.8 cm", 0.508, "20 in"},
	} {
		plan := screentest.Example(t)
		plan.Units = one.units
		d, s := open(t, plan)
		if err := s.SetField(vessel.FieldTopDiameter, one.typed); err != nil {
			t.Errorf("%q: %v", one.typed, err)
			continue
		}
		if got := d.Plan().Pots[0].Vessel.TopDiameter; !near(float64(got), float64(one.want)) {
			t.Errorf("%q was read as %v", one.typed, got)
		}
		if got := value(t, s, vessel.FieldTopDiameter); got != one.shown {
			t.Errorf("%q is shown as %q, want %q", one.typed, got, one.shown)
		}
		if got, want := d.UndoName(), "change diameter at the top of Door pot, left"; got != want {
			t.Errorf("the undo is called %q, want %q", got, want)
		}
	}
}

func near(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }

// What the screen shows must be taken as typed, and change nothing.
func TestEveryShownMeasureCanBeTypedAgain(t *testing.T) {
	for _, plan := range []*planner.Plan{screentest.Example(t), screentest.Customary(t)} {
		_, s := open(t, plan)
		for _, pot := range plan.Pots {
			s.Choose(pot.ID)
			for _, g := range s.Groups() {
				if strings.Contains(g.Title+g.Summary, "⟦") || g.Title == "" {
					t.Errorf("%s: group %s is called %q: %q", pot.ID, g.Key, g.Title, g.Summary)
				}
				for _, f := range g.Fields {
					typedAgain(t, s, f)
				}
			}
		}
	}
}

// typedAgain takes what a field shows and wants it unchanged.
func typedAgain(t *testing.T, s *pots.Screen, f pots.Field) {
	t.Helper()
	if f.Label == "" || strings.Contains(f.Label+f.Help, "⟦") {
		t.Errorf("field %+v", f)
	}
	if f.Options != nil {
		if err := f.Choose(f.Chosen); err != nil {
			t.Errorf("%s: %v", f.Key, err)
		}
		return
	}
	if err := f.Take(f.Value); err != nil {
		t.Errorf("%s %q: %v", f.Key, f.Value, err)
	}
	if again := fieldOf(t, s, f.Key); again.Value != f.Value {
		t.Errorf("%s %q became %q", f.Key, f.Value, again.Value)
	}
}

func TestMeasuresThatCannotBeAreRefused(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	revision := d.Revision()
	for typed, want := range map[string]string{
		"":       "fill this in",
		"   ":    "fill this in",
		"wide":   "a number and a unit",
		"-5":     "1 cm to 500 cm",
		"0":      "fill this in",
		"80 m":   "1 cm to 500 cm",
		"45 kg":  "“kg” is no unit of length",
		"1e300":  "",
		"45 cm,": "",
	} {
		got := refused(t, s.SetField(vessel.FieldTopDiameter, typed))
		if want != "" && got != want {
			t.Errorf("%q is refused with %q, want %q", typed, got, want)
		}
	}
	refused(t, s.SetField(vessel.FieldWall, "40 cm"))
	refused(t, s.SetField(vessel.FieldRim, "60 cm"))
	if d.Revision() != revision {
		t.Error("a refused measure changed the plan")
	}
	_, s = open(t, screentest.Customary(t))
	if got := refused(t, s.SetField(vessel.FieldTopDiameter, "80 m")); got != "0.4 in to 196.9 in" {
		t.Errorf("80 m is refused with %q", got)
	}
}

func TestRimAndWallMayStayEmpty(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	for _, f := range []vessel.Field{vessel.FieldRim, vessel.FieldWall} {
		if err := s.SetField(f, "3 cm"); err != nil {
			t.Fatal(err)
		}
		if got := value(t, s, f); got != "3 cm" {
			t.Errorf("%s is %q", f, got)
		}
		if err := s.SetField(f, " "); err != nil {
			t.Fatal(err)
		}
	}
	spec := d.Plan().Pots[0].Vessel
	if spec.Rim != nil || spec.Wall != 0 {
		t.Errorf("rim %v, wall %v", spec.Rim, spec.Wall)
	}
	if value(t, s, vessel.FieldRim) == "" {
		t.Error("the usual rim is not shown")
	}
}

func TestTheProfileOfAnUrn(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	s.Choose("urn")
	if got, want := value(t, s, vessel.FieldRings), "0 × 14; 10 × 30; 25 × 38; 32 × 44 cm"; got != want {
		t.Errorf("the profile is %q, want %q", got, want)
	}
	if err := s.SetField(vessel.FieldRings, "0 x 14 ; 12 x 30 ; 1 ft * 44 cm"); err != nil {
		t.Fatal(err)
	}
	if rings := d.Plan().Pot("urn").Vessel.Rings; len(rings) != 3 || !near(float64(rings[2].Height), 0.3048) || !near(float64(rings[1].Diameter), 0.30) {
		t.Errorf("rings %v", rings)
	}
	for _, typed := range []string{"", "14", "0 x 14; 10", "0 x 14; 10 x wide", "0 x 14; 10 x 30; 5 x 30", "3 x 14; 10 x 30", "0 x 14", strings.Repeat("1 x 2;", 300)} {
		refused(t, s.SetField(vessel.FieldRings, typed))
	}
}

func TestEveryShapeCanBeChosenAndStaysWhole(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	shapes := s.Shapes()
	if len(shapes.Options) != len(vessel.Kinds) || shapes.Chosen != 0 {
		t.Fatalf("shapes %+v", shapes)
	}
	for from := range vessel.Kinds {
		for to := range vessel.Kinds {
			if err := s.SetShape(from); err != nil {
				t.Fatal(err)
			}
			if err := s.SetShape(to); err != nil {
				t.Fatalf("%s to %s: %v", vessel.Kinds[from], vessel.Kinds[to], err)
			}
			if s.Vessel() == nil {
				t.Errorf("%s to %s is no whole pot: %v", vessel.Kinds[from], vessel.Kinds[to], d.Plan().Pots[0].Vessel.Validate())
			}
		}
	}
	if got, want := d.UndoName(), "change the shape of Door pot, left"; got != want {
		t.Errorf("the undo is called %q, want %q", got, want)
	}
	for _, i := range []int{-1, 99} {
		if err := s.SetShape(i); err != nil {
			t.Error(err)
		}
	}
}

func TestACluster(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	if c := s.Cells(); len(c.Options) != 0 {
		t.Errorf("a round pot has cells %v", c.Options)
	}
	if err := s.SetShape(slices.Index(vessel.Kinds[:], vessel.Pockets)); err != nil {
		t.Fatal(err)
	}
	cells := s.Cells()
	for i := range cells.Options {
		if err := s.SetCell(i); err != nil {
			t.Fatal(err)
		}
		if got := s.Cells().Chosen; got != i || s.Vessel() == nil {
			t.Errorf("cell %q: chosen %d", cells.Options[i], got)
		}
	}
	if err := s.SetField(vessel.FieldCells, "12"); err != nil || d.Plan().Pots[0].Vessel.Cells != 12 {
		t.Errorf("12 pockets: %v", err)
	}
	for _, typed := range []string{"", "0", "-1", "2.5", "a dozen", "99999999999999999999"} {
		refused(t, s.SetField(vessel.FieldCells, typed))
	}
}

func TestAPotMeasuredWithWater(t *testing.T) {
	d, s := open(t, screentest.Customary(t))
	if err := s.SetShape(slices.Index(vessel.Kinds[:], vessel.Measured)); err != nil {
		t.Fatal(err)
	}
	if err := s.SetField(vessel.FieldWater, "3"); err != nil || !near(float64(d.Plan().Pots[0].Vessel.Water), float64(3*quantity.Gallon)) {
		t.Errorf("3 is read as %v: %v", d.Plan().Pots[0].Vessel.Water, err)
	}
	if got := value(t, s, vessel.FieldWater); got != "3 gal" {
		t.Errorf("shown as %q", got)
	}
	for _, typed := range []string{"", "-2 L", "0", "5 qt", "3 cm", "much"} {
		refused(t, s.SetField(vessel.FieldWater, typed))
	}
}

func TestChoicesOfThePot(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	if err := s.SetMaterial(0); err != nil || d.Plan().Pots[0].Vessel.Material != "" || d.UndoName() != "change the material of Door pot, left" {
		t.Errorf("material: %v, %q", err, d.UndoName())
	}
	if err := s.SetSpot(2); err != nil || d.Plan().Pots[0].Spot != "arch" || d.UndoName() != "move Door pot, left" {
		t.Errorf("spot: %v, %q", err, d.UndoName())
	}
	if err := s.SetMeasured(0); err != nil || d.Plan().Pots[0].Vessel.MeasuredOn != vessel.Inside || d.UndoName() != "change how Door pot, left is measured" {
		t.Errorf("measured: %v, %q", err, d.UndoName())
	}
	if err := s.SetName(" Pot by the gate "); err != nil || s.Name() != "Pot by the gate" || d.UndoName() != "rename Door pot, left" {
		t.Errorf("name: %v, %q, %q", err, s.Name(), d.UndoName())
	}
	if got := refused(t, s.SetName("  ")); got != "A pot needs a name" {
		t.Errorf("no name is refused with %q", got)
	}
	revision := d.Revision()
	for what, err := range map[string]error{
		"material": s.SetMaterial(99), "spot": s.SetSpot(-1), "measured": s.SetMeasured(2), "same name": s.SetName("Pot by the gate"),
		"same spot": s.SetSpot(2), "same material": s.SetMaterial(0), "same surface": s.SetMeasured(0),
	} {
		if err != nil {
			t.Errorf("%s: %v", what, err)
		}
	}
	if d.Revision() != revision {
		t.Error("a choice of nothing changed the plan")
	}
}

func TestTradeSizesStandInUntilSomebodyMeasures(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	sizes := s.Nominals()
	if sizes.Chosen != 0 || len(sizes.Options) != len(vessel.Nominals())+1 || s.Published() != "" {
		t.Fatalf("sizes %+v, published %q", sizes, s.Published())
	}
	for i, n := range vessel.Nominals() {
		if !strings.HasSuffix(sizes.Options[i+1], ", nominal") {
			t.Errorf("%q is not marked as nominal", sizes.Options[i+1])
		}
		if err := s.SetNominal(i + 1); err != nil {
			t.Fatal(err)
		}
		if got := s.Nominals().Chosen; !strings.HasPrefix(vessel.Nominals()[got-1].Key, "vessel.nominal.") || !sameDimensions(vessel.Nominals()[got-1].Spec, n.Spec) {
			t.Errorf("%s is shown as option %d", n.Key, got)
		}
		if p := s.Published(); !strings.Contains(p, n.Source.Cite[:10]) && !strings.Contains(p, "Published") || strings.Contains(p, "⟦") {
			t.Errorf("%s: published %q", n.Key, p)
		}
		if s.Vessel() == nil {
			t.Errorf("%s is no whole pot", n.Key)
		}
		if d.Plan().Pots[0].Vessel.Material != vessel.Terracotta {
			t.Errorf("%s changed the material", n.Key)
		}
	}
	i := slices.IndexFunc(vessel.Nominals(), func(n vessel.Nominal) bool { return n.Key == "vessel.nominal.class_3" })
	if err := s.SetNominal(i + 1); err != nil {
		t.Fatal(err)
	}
	if got, want := d.UndoName(), "make Door pot, left a #3 container"; got != want {
		t.Errorf("the undo is called %q, want %q", got, want)
	}
	if got := s.Published(); !strings.HasPrefix(got, "Published for this size: 10.3 L to 12.2 L, published (ANSI Z60.1-2004") {
		t.Errorf("published is %q", got)
	}
	if err := s.SetField(vessel.FieldHeight, "27 cm"); err != nil || s.Nominals().Chosen != 0 || s.Published() != "" {
		t.Errorf("measured, the pot is still nominal: %v", err)
	}
}

func sameDimensions(a, b vessel.Spec) bool {
	return a.Kind == b.Kind && a.TopDiameter == b.TopDiameter && a.BottomDiameter == b.BottomDiameter && a.Height == b.Height
}

func TestAddDuplicateAndRemove(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	s.Choose("trough")
	if err := s.Add(); err != nil {
		t.Fatal(err)
	}
	if got := d.Plan().PotIndex("pot"); got != 3 || s.Chosen().ID != "pot" || s.Chosen().Spot != "door" || len(s.Chosen().Plantings) != 4 {
		t.Errorf("the new pot stands at %d: %+v", got, s.Chosen())
	}
	if d.UndoName() != "add New pot" {
		t.Errorf("the undo is called %q", d.UndoName())
	}
	s.Choose("trough")
	if err := s.Duplicate(2); err != nil {
		t.Fatal(err)
	}
	if err := s.Duplicate(1); err != nil {
		t.Fatal(err)
	}
	names := map[string]bool{}
	for _, pot := range d.Plan().Pots {
		if names[pot.Name] {
			t.Errorf("two pots are called %q", pot.Name)
		}
		names[pot.Name] = true
	}
	if !names["Long trough under the window 2"] || !names["Long trough under the window 3"] || d.UndoName() != "add 1 like Long trough under the window 2" {
		t.Errorf("names %v, undo %q", names, d.UndoName())
	}
	for _, n := range []int{0, -1, 501} {
		refused(t, s.Duplicate(n))
	}
	for len(d.Plan().Pots) > 0 {
		s.Choose(d.Plan().Pots[len(d.Plan().Pots)-1].ID)
		name := s.Name()
		if err := s.Remove(); err != nil || d.UndoName() != "remove "+name {
			t.Fatalf("remove: %v, %q", err, d.UndoName())
		}
	}
	if s.Chosen() != nil {
		t.Error("a pot is chosen where there is none")
	}
	for range 16 {
		d.Undo()
	}
	if s.Chosen() == nil {
		t.Error("undone, no pot is chosen")
	}
}

func TestRecipesOfASeason(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	rows := s.SeasonRows()
	if len(rows) != 4 || !slices.Equal(rows[0].Recipes.Options, []string{"nothing planted", "First warmth", "Cool corner"}) || rows[0].Recipes.Chosen != 1 {
		t.Fatalf("rows %+v", rows)
	}
	for _, r := range rows {
		if r.Planting == "" || r.Plants == "" || r.Start.Value == "" || r.Spread == "" || len(r.Figures) == 0 {
			t.Errorf("the row of %s is %+v", r.Season, r)
		}
	}
	if err := s.SetRecipe(planner.Spring, 2); err != nil || d.UndoName() != "change Spring in Door pot, left" {
		t.Errorf("%v, %q", err, d.UndoName())
	}
	d.Settle()
	if r := s.SeasonRows()[0]; r.Recipes.Chosen != 2 || r.Planting != "Cool corner" {
		t.Errorf("the row is %+v", r)
	}
	if err := s.SetRecipe(planner.Winter, 0); err != nil {
		t.Fatal(err)
	}
	d.Settle()
	if r := s.SeasonRows()[3]; r.Recipes.Chosen != 0 || r.Planting != "" || r.Start.Value != "" {
		t.Errorf("a season that is bare: %+v", r)
	}
	revision := d.Revision()
	for _, i := range []int{-1, 3, 2} {
		if err := s.SetRecipe(planner.Spring, i); err != nil || d.Revision() != revision {
			t.Errorf("recipe %d: %v", i, err)
		}
	}
	d.Edit(func(p *planner.Plan) {
		*p, _ = p.WithPot("door-left", func(pot *planner.Pot) {
			if pot.Plantings[0].Season != planner.Spring {
				t.Errorf("the plantings are out of order: %v", pot.Plantings)
			}
			pot.Plantings[0].Plants = []planner.Part{{Plant: "pansy", Count: 7}}
		})
	})
	if r := s.SeasonRows()[0]; r.Recipes.Options[r.Recipes.Chosen] != "planted by hand" || !strings.Contains(r.Plants, "7 ×") {
		t.Errorf("planted by hand: %+v", r)
	}
}

func TestFiguresHaveTheirUnits(t *testing.T) {
	for _, plan := range []*planner.Plan{screentest.Example(t), screentest.Customary(t)} {
		_, s := open(t, plan)
		seen := map[string]string{}
		for _, f := range s.Figures() {
			seen[f.Label] = f.Value
			if f.Figure.IsZero() {
				t.Errorf("%s has no working", f.Label)
			}
		}
		for _, label := range []string{"Volume to the brim", "Volume to the fill line", "Loose mix to fill it", "Slow release", "In level spoons", "Weight, watered"} {
			if !strings.Contains(seen[label], " ") {
				t.Errorf("%s is %q", label, seen[label])
			}
		}
		if !strings.HasSuffix(seen["In level spoons"], " tbsp") {
			t.Errorf("spoons are %q", seen["In level spoons"])
		}
	}
}

func TestTheBenchFindsPotsWhateverTheirAccents(t *testing.T) {
	plan := screentest.Example(t)
	plan.Pots[3].Name, plan.Pots[4].Client = "Übertopf Größe Süd", "Café Łódź"
	_, s := open(t, plan)
	for typed, want := range map[string]int{
		"": 10, "ubertopf": 1, "ÜBERTOPF  süd": 1, "sud grosse": 1, "cafe lodz": 1, "Workshop": 3, "arch bowl": 1, "none such": 0,
	} {
		s.SetFilter(typed)
		if got := s.Shown(); got != want {
			t.Errorf("%q finds %d pots, want %d", typed, got, want)
		}
	}
	s.SetFilter("basket")
	s.Choose("basket")
	if s.Place() != 0 || !s.Tile(0).Chosen {
		t.Errorf("the chosen pot stands at %d", s.Place())
	}
	s.Choose("urn")
	if s.Place() != -1 {
		t.Errorf("a pot that is not shown stands at %d", s.Place())
	}
}

func TestTilesSayWhatStandsThere(t *testing.T) {
	for _, today := range []civil.Date{screentest.SummerDay, screentest.WinterDay} {
		d := screentest.Open(t, screentest.Example(t), today)
		s := pots.New(d.Session, d.Words, d.NewID)
		for i := range s.Shown() {
			tile := s.Tile(i)
			if tile.ID == "" || tile.Label == "" || tile.Vessel == nil || tile.Standing == "" || strings.Contains(tile.Detail+tile.Standing, "⟦") {
				t.Errorf("%v: tile %+v", today, tile)
			}
		}
	}
	d, s := open(t, screentest.Example(t))
	d.Edit(func(p *planner.Plan) {
		*p, _ = p.WithPot("door-left", func(pot *planner.Pot) { pot.Vessel.Height = 0 })
	})
	if tile := s.Tile(0); tile.Vessel != nil || tile.Detail != "round, tapered, size missing" || !tile.Marked {
		t.Errorf("a pot without a height: %+v", tile)
	}
	if f := fieldOf(t, s, "height"); f.Error != "fill this in" {
		t.Errorf("the field of the height says %q", f.Error)
	}
	if len(s.Figures()) != 0 || len(s.Findings()) == 0 {
		t.Errorf("figures %v, findings %v", s.Figures(), s.Findings())
	}
}

func TestAnEmptyBench(t *testing.T) {
	_, s := open(t, screentest.Empty())
	if s.Chosen() != nil || s.Shown() != 0 || s.Place() != -1 || s.Name() != "" || s.Vessel() != nil || s.Published() != "" {
		t.Error("an empty bench holds something")
	}
	if s.Groups() != nil || s.Shape() != nil || s.Balance() != nil || s.Figures() != nil || s.Findings() != nil || s.SeasonRows() != nil {
		t.Error("an empty bench shows something")
	}
	for what, err := range map[string]error{
		"name": s.SetName("x"), "shape": s.SetShape(1), "material": s.SetMaterial(1), "spot": s.SetSpot(0), "measured": s.SetMeasured(1),
		"field": s.SetField(vessel.FieldHeight, "3"), "nominal": s.SetNominal(1), "remove": s.Remove(), "duplicate": s.Duplicate(1),
		"recipe": s.SetRecipe(planner.Spring, 0), "cell": s.SetCell(0),
	} {
		if err != nil {
			t.Errorf("%s: %v", what, err)
		}
	}
	if c := s.Spots(); c.Chosen != -1 || len(c.Options) != 0 {
		t.Errorf("spots %+v", c)
	}
	if err := s.Add(); err != nil || s.Chosen() == nil || s.Vessel() == nil {
		t.Errorf("the first pot: %v", err)
	}
}

func TestTheBenchBeforeItsOutlook(t *testing.T) {
	d := screentest.Waiting(t, screentest.Example(t), screentest.SummerDay)
	s := pots.New(d.Session, d.Words, d.NewID)
	if !s.Working() || s.Figures() != nil || s.Findings() != nil || len(s.SeasonRows()) != 4 || len(s.Groups()) == 0 {
		t.Error("the bench says what is not worked out")
	}
	if tile := s.Tile(0); tile.Vessel == nil || tile.Standing != "" || tile.Marked {
		t.Errorf("tile %+v", tile)
	}
	d.Settle()
	if s.Working() || len(s.Figures()) == 0 || s.Tile(0).Standing == "" {
		t.Error("the outlook is there and not shown")
	}
}

func TestATileCostsTheSameOnALargeBench(t *testing.T) {
	_, few := open(t, screentest.Many(t, 10))
	_, many := open(t, screentest.Many(t, 300))
	few.Tile(0)
	many.Tile(0)
	small := testing.AllocsPerRun(20, func() { few.Tile(5) })
	large := testing.AllocsPerRun(20, func() { many.Tile(295) })
	if large > small*1.5+5 {
		t.Errorf("a tile takes %.0f allocations of 300 pots, %.0f of 10", large, small)
	}
}

// The time of a screenful of tiles of 1,000 pots over that of 10 pots.
func BenchmarkTiles(b *testing.B) {
	_, few := open(b, screentest.Many(b, 10))
	_, many := open(b, screentest.Many(b, 1000))
	screenful := func(s *pots.Screen) {
		for i := range 10 {
			s.Tile(s.Shown() - 1 - i)
		}
	}
	screenful(few)
	screenful(many)
	runtime.GC() // of what opening 1,000 pots left behind
	start := time.Now()
	for range b.N {
		screenful(few)
	}
	small := time.Since(start)
	b.ResetTimer()
	for range b.N {
		screenful(many)
	}
	b.ReportMetric(float64(b.Elapsed())/float64(small), "of_10_pots")
}
