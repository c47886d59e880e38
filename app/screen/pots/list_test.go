package pots_test

import (
	"errors"
	"strings"
	"testing"

	"fourturn/app/screen/pots"
	"fourturn/app/screen/screentest"
	"fourturn/planner/vessel"
)

func TestAListFromASpreadsheet(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	s.Choose("urn")
	list := "Name\tShape\tSizes\tSpot\tHow many\n" +
		"Gate pot\tround, tapered\t45 x 32 x 40 cm\tNorth arch\t2\n" +
		"\n" +
		"Step trough\ttrough\t80 × 22 × 74 × 17 × 22\tbench\t\n" +
		"Cask\thalf_barrel\t58 x 50 x 40\t\t1\t\t\n" +
		"Cask\tHalf barrel\t58 x 60 x 50 x 40 cm\n" +
		"Tub\t#3 container\n" +
		"Old jug\tmeasured with water\t7.5 L\r\n"
	if err := s.AddList(list); err != nil {
		t.Fatal(err)
	}
	if got, want := d.UndoName(), "add 7 pots from a list"; got != want {
		t.Errorf("the undo is called %q, want %q", got, want)
	}
	plan := d.Plan()
	at := plan.PotIndex("urn") + 1
	var names []string
	for _, pot := range plan.Pots[at : at+7] {
		names = append(names, pot.Name+"|"+pot.ID+"|"+pot.Spot)
		if _, err := vessel.New(pot.Vessel); err != nil {
			t.Errorf("%s: %v", pot.Name, err)
		}
		if len(pot.Plantings) != 4 {
			t.Errorf("%s is planted %v", pot.Name, pot.Plantings)
		}
	}
	want := "Gate pot|gate-pot|arch Gate pot 2|gate-pot-2|arch Step trough|step-trough|bench Cask|cask|door Cask 2|cask-2|door Tub|tub|door Old jug|old-jug|door"
	if got := strings.Join(names, " "); got != want {
		t.Errorf("the list gave %s, want %s", got, want)
	}
	if s.Chosen().ID != "gate-pot" {
		t.Errorf("chosen is %s", s.Chosen().ID)
	}
	if v := plan.Pot("gate-pot").Vessel; !near(float64(v.TopDiameter), 0.45) || !near(float64(v.BottomDiameter), 0.32) || !near(float64(v.Height), 0.40) {
		t.Errorf("the gate pot is %+v", v)
	}
	if v := plan.Pot("cask").Vessel; v.MiddleDiameter != 0 || !near(float64(plan.Pot("cask-2").Vessel.MiddleDiameter), 0.60) {
		t.Error("the bulge of the casks is wrong")
	}
}

func TestAListWithSemicolonsCommasAndInches(t *testing.T) {
	d, s := open(t, screentest.Customary(t))
	if err := s.AddList(`Pot one;round;18" x 13" x 16";Cafe door, south wall;1`); err != nil {
		t.Fatal(err)
	}
	if err := s.AddList("Pot two,cylinder,18 x 16,bench"); err != nil {
		t.Fatal(err)
	}
	for _, id := range []string{"pot-one", "pot-two"} {
		if v := d.Plan().Pot(id).Vessel; !near(float64(v.TopDiameter), 0.4572) {
			t.Errorf("%s is %v wide", id, v.TopDiameter)
		}
	}
	if err := s.AddList("\"Pot, three\",\"round, straight\",18 in x 16 in,\"Cafe door, south wall\",1"); err != nil {
		t.Error(err)
	}
}

func TestAListSaysWhereItCannotBeRead(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	revision := d.Revision()
	for _, one := range []struct {
		list         string
		line, column int
		says         string
	}{
		{"", 1, 0, "there is nothing to add"},
		{"Name;Shape;Sizes", 1, 0, "there is nothing to add"},
		{"A;bowl;50 x 20\n;bowl;50 x 20", 2, 1, "a pot needs a name"},
		{"A;bowl;50 x 20\nB;sphere;50", 2, 2, "“sphere” is no shape"},
		{"A;;50 x 20", 1, 2, "is no shape"},
		{"A;urn or other turned shape;50", 1, 2, "not in a list"},
		{"A;bowl;50", 1, 3, "takes diameter at the top and height"},
		{"A;bowl;", 1, 3, "fill this in"},
		{"A;bowl;50 x 20 x 3", 1, 3, "takes diameter at the top and height"},
		{"A;bowl;wide x 20", 1, 3, "a number and a unit"},
		{"A;bowl;50 x -20", 1, 3, "height: "},
		{"A;bowl;80 m x 20 cm", 1, 3, "diameter at the top: 1 cm to 500 cm"},
		{"A;bowl;50 kg x 20 kg", 1, 3, "“kg” is no unit of length"},
		{"A;measured;lots", 1, 3, "a number and a unit"},
		{"A;bowl;50 x 20;moon", 1, 4, "no spot “moon”"},
		{"A;bowl;50 x 20;;0", 1, 5, "from 1 to 500"},
		{"A;bowl;50 x 20;;many", 1, 5, "from 1 to 500"},
		{"A;bowl;50 x 20;;1;x", 1, 0, "a row has"},
		{strings.Repeat("A;bowl;50 x 20;;500\n", 11), 11, 0, "at most 5,000"},
		{strings.Repeat("long", 60) + ";bowl;50 x 20", 1, 1, "at most 194 characters"},
	} {
		err := s.AddList(one.list)
		var fault *pots.ListError
		if !errors.As(err, &fault) {
			t.Errorf("%.40q: %v", one.list, err)
			continue
		}
		if fault.Line != one.line || fault.Column != one.column || !strings.Contains(fault.Text, one.says) || strings.Contains(fault.Text, "⟦") {
			t.Errorf("%.40q: line %d, column %d: %s", one.list, fault.Line, fault.Column, fault.Text)
		}
	}
	if d.Revision() != revision {
		t.Error("a list that cannot be read changed the plan")
	}
	if err := s.AddList("A;sphere;5"); err.Error() != "Line 1, column 2 (shape): “sphere” is no shape; such as round, tapered, trough and bowl" {
		t.Errorf("the words are %q", err)
	}
}

func TestAListForAnEmptyPlan(t *testing.T) {
	d, s := open(t, screentest.Empty())
	if err := s.AddList("A;bowl;50 x 20;;3"); err != nil || len(d.Plan().Pots) != 3 {
		t.Errorf("%v, %d pots", err, len(d.Plan().Pots))
	}
}

// Whatever is pasted, the list is either read into whole pots with names of their own
// or refused at a line that it has.
func FuzzReadList(f *testing.F) {
	for _, seed := range []string{
		"Name\tShape\nA\tbowl\t50 x 20 cm\tbench\t2", "A;round;45 x 32 x 40;;", "A,bowl,\"50 x 20\"", "\"", "\"\n\";;\n", "A;measured;5 qt", "A;#3 container",
		"A;pockets;5", "\ufeffA;bowl;50 x 20", "A;bowl;1e999 x 2", "\x00;\xff;\n", "A;bowl;½ m x 20 cm",
	} {
		f.Add(seed)
	}
	d := screentest.Waiting(f, screentest.Example(f), screentest.SummerDay)
	s := pots.New(d.Session, d.Words, d.NewID)
	f.Fuzz(func(t *testing.T, list string) {
		read, err := s.ReadList(list)
		if err != nil {
			var fault *pots.ListError
			if !errors.As(err, &fault) {
				t.Fatalf("the error is %v", err)
			}
			if fault.Line < 1 || fault.Line > strings.Count(list, "\n")+1 || fault.Column < 0 || fault.Column > 5 || strings.Contains(fault.Text, "⟦pots") {
				t.Fatalf("line %d, column %d: %s", fault.Line, fault.Column, fault.Text)
			}
			return
		}
		ids := map[string]bool{}
		for _, pot := range read {
			if _, err := vessel.New(pot.Vessel); err != nil || pot.Name == "" || ids[pot.ID] {
				t.Fatalf("%+v: %v", pot, err)
			}
			ids[pot.ID] = true
		}
		if err := s.AddList(list); err != nil {
			t.Fatalf("a list that was read cannot be added: %v", err)
		}
		d.Undo()
	})
}
