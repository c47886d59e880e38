package plants_test

import (
	"errors"
	"slices"
	"testing"

	"fourturn/planner/working"
	"fourturn/plants"
)

const table = `names,botanical,family,kind,seasons,role,light,water,feeder,height (cm),spread (in),spacing,frost_class,lowest_in_pot,planting_out_night,heat_limit (F),temperature_class,sold.quart,toxicity.dogs,toxicity.cats,toxicity.people,drawing.habit,drawing.leaf.form,notes
"Düsseldorf daisy; Rhine daisy",Bellis rhenana,Asteraceae,cool_annual,spring|autumn,filler,sun;part,medium,light,10-20,8,18 cm,hardy,-9 C,1 C,77,cold_tolerant,4,not_listed,not_listed,not_listed,rosette,spoon,"cheap; cheerful"
,,,,,,,,,,,,,,,,,,,,,,,
`

func TestImportCSV(t *testing.T) {
	o, book, err := plants.ImportCSV("table.csv", []byte(table), builtin(t))
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(o.Plants(), []string{"dusseldorf-daisy"}) {
		t.Fatalf("imported %v", o.Plants())
	}
	p, _ := book.Plant("dusseldorf-daisy")
	if len(p.Names) != 2 || p.Spread.Centimetres() < 20.3 || p.Spread.Centimetres() > 20.4 || p.Height.High.Centimetres() != 20 ||
		p.Notes != "cheap; cheerful" || p.Drawing.Habit != plants.Rosette || len(p.Light) != 2 {
		t.Errorf("imported as %+v", p)
	}
	if heat, _ := p.HeatLimit.Get(); heat != 25 { // 77 °F
		t.Errorf("heat limit %v", heat)
	}
	if w, ok := p.WeeksToFull("quart"); !ok || w != 4 {
		t.Errorf("weeks from a quart pot: %v", w)
	}
	if p.Provenance(plants.FieldWater).Status != working.Entered {
		t.Errorf("imported values are %v", p.Provenance(plants.FieldWater))
	}
	own(t, string(o.Format()))
}

func TestImportOverridesAndJoins(t *testing.T) {
	o, _, err := plants.ImportCSV("t.csv", []byte("id;heat_limit;water\npansy;29 C;high\n"), builtin(t))
	if err != nil {
		t.Fatal(err)
	}
	before, _ := own(t, "plants:\n  - {id: pansy, heat_limit: 28 C, spread: 30 cm}\n  - {id: zinnia, water: low}\n")
	book, err := before.Join(o).On(builtin(t))
	if err != nil {
		t.Fatal(err)
	}
	p, _ := book.Plant("pansy")
	if heat, _ := p.HeatLimit.Get(); heat != 29 || p.Water != plants.High || p.Spread.Centimetres() != 30 {
		t.Errorf("joined to %v, %v, %v", heat, p.Water, p.Spread)
	}
	if z, _ := book.Plant("zinnia"); z.Water != plants.Low {
		t.Error("what the import does not name is lost")
	}
}

func TestImportFaultsNameTheirCell(t *testing.T) {
	for _, c := range []struct{ code, text string }{
		{"unknown_column", "id,¶wetness\npansy,high\n"},
		{"key_twice", "id,water,¶water\npansy,high,low\n"},
		{"unknown_word", "id,water\npansy,high\nzinnia,¶wet\n"},
		{"measure_no_unit", "id,spread\npansy,¶25\n"},
		{"too_many_cells", "id,water\npansy,high,¶low\n"},
		{"plant_twice", "id,water\npansy,high\n¶pansy,low\n"},
		{"not_an_id", "id,water\n¶Pansy,high\n"},
		{"missing", "id,water\n¶new-plant,high\n"},
		{"not_utf8", "id,water\npansy,¶\xff\n"},
		{"csv", "id,water\npansy,hi¶\"gh\n"},
	} {
		text, line, column := unmark(t, c.text)
		_, _, err := plants.ImportCSV("t.csv", []byte(text), builtin(t))
		var faults plants.Faults
		if !errors.As(err, &faults) || !slices.ContainsFunc(faults, func(f plants.Fault) bool {
			return f.Code == "plants.fault."+c.code && f.File == "t.csv" && f.Line == line && f.Column == column
		}) {
			t.Errorf("%s: want it at %d:%d, got %v", c.code, line, column, err)
		}
	}
}

func TestColumnsAreUnderstood(t *testing.T) {
	for _, column := range plants.Columns() {
		_, _, err := plants.ImportCSV("t.csv", []byte("id,"+column+"\n"), builtin(t))
		if column == "id" {
			continue
		}
		if err != nil {
			t.Errorf("%s: %v", column, err)
		}
	}
}

func FuzzImportCSV(f *testing.F) {
	f.Add([]byte(table))
	f.Add([]byte("id;heat_limit\npansy;29 C\n"))
	f.Add([]byte("id\tnames\nx\ty"))
	f.Add([]byte("id,drawing.leaf.form,drawing.habit\npansy,ovate,mound"))
	base, err := plants.Builtin()
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		o, _, err := plants.ImportCSV("t.csv", data, base)
		if err != nil {
			return
		}
		if _, _, err := plants.ReadOwn("own.yaml", o.Format(), base); err != nil {
			t.Fatalf("%q imports as what cannot be read: %v", data, err)
		}
	})
}
