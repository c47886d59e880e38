package mix_test

import (
	"strings"
	"testing"

	"fourturn/app/screen/mix"
	"fourturn/app/screen/screentest"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// field returns a field of a group by its key.
func field(t *testing.T, g mix.Group, key string) mix.Field {
	t.Helper()
	for _, f := range g.Fields {
		if f.Key == key {
			if strings.Contains(f.Label+f.Help, "⟦") || f.Label == "" {
				t.Errorf("field %+v", f)
			}
			return f
		}
	}
	t.Fatalf("%s has no field %s", g.Key, key)
	return mix.Field{}
}

func take(t *testing.T, g mix.Group, key, typed string) {
	t.Helper()
	if err := field(t, g, key).Take(typed); err != nil {
		t.Errorf("%s %q: %v", key, typed, err)
	}
}

func refuse(t *testing.T, g mix.Group, key string, typed ...string) {
	t.Helper()
	for _, text := range typed {
		err := field(t, g, key).Take(text)
		if err == nil || err.Error() == "" || strings.Contains(err.Error(), "⟦") {
			t.Errorf("%s %q: refused with %v", key, text, err)
		}
	}
}

func TestHowPotsAreFilled(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	take(t, s.Settings(), "settling", "12 %")
	take(t, s.Settings(), "refresh", "25")
	take(t, s.Settings(), "retire_after", "4")
	take(t, s.Settings(), "pail", "12")
	take(t, s.Settings(), "scoop", "60 mL")
	if err := field(t, s.Settings(), "substrate").Choose(2); err != nil {
		t.Error(err)
	}
	m := d.Plan().Mix
	if m.Settling != 0.12 || m.Refresh != 0.25 || m.RetireAfter != 4 || m.Pail != 12 || m.Scoop != 60*quantity.Millilitre || m.Substrate != "pine_bark" {
		t.Errorf("settings %+v", m)
	}
	if got := s.Settings().Summary; !strings.Contains(got, "12%") || !strings.Contains(got, "25%") || d.UndoName() != "change how pots are filled" {
		t.Errorf("summed up as %q, undone as %q", got, d.UndoName())
	}
	refuse(t, s.Settings(), "settling", "30 %", "5 %", "much")
	refuse(t, s.Settings(), "refresh", "120 %", "0")
	refuse(t, s.Settings(), "retire_after", "2.5", "0", "101")
	refuse(t, s.Settings(), "pail", "5 cm", "9000 L", "2 qt")
	d.Settle()
	pails := 0
	for _, r := range s.Rows() {
		if strings.Contains(r.Pails.Value, "pail") {
			pails++
		}
		if r.Pails.Figure.IsZero() || strings.Contains(r.Pails.Value+r.Spoons.Value, "⟦") {
			t.Errorf("measured as %q and %q", r.Pails.Value, r.Spoons.Value)
		}
	}
	if pails == 0 {
		t.Error("the person's own pail is not used")
	}
	for _, key := range []string{"settling", "refresh", "retire_after", "pail", "scoop"} {
		take(t, s.Settings(), key, "")
	}
	if m := d.Plan().Mix; m != (planner.MixSettings{Substrate: "pine_bark"}) {
		t.Errorf("settings %+v", m)
	}
}

func productOf(t *testing.T, s *mix.Screen, i int) mix.Group {
	t.Helper()
	groups := s.Products()
	if i >= len(groups) {
		t.Fatalf("there are %d products", len(groups))
	}
	return groups[i]
}

func TestWhatIsSoldAndInTheShed(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	product := func() planner.Product { return d.Plan().Products[0] }
	take(t, productOf(t, s, 0), "in_shed", "25 L")
	take(t, productOf(t, s, 0), "pack/2", "100")
	take(t, productOf(t, s, 0), "price/2", "22.50")
	take(t, productOf(t, s, 0), "pack/0", "")
	take(t, productOf(t, s, 0), "bulk_price", "60")
	take(t, productOf(t, s, 0), "bulk_per", "1 cu yd")
	take(t, productOf(t, s, 0), "bulk_step", "0.5 cu yd")
	take(t, productOf(t, s, 0), "bulk_minimum", "500 L")
	take(t, productOf(t, s, 0), "bulk_delivery", "35")
	p := product()
	if p.InShed != 25 || len(p.Packs) != 2 || p.Packs[1] != (planner.Pack{Volume: 100, Price: 22.5}) || p.Packs[0].Volume != 75 {
		t.Errorf("product %+v", p)
	}
	if p.Bulk != (planner.Bulk{Price: 60, Per: quantity.CubicYard, Step: quantity.CubicYard / 2, Minimum: 500, Delivery: 35}) {
		t.Errorf("bulk %+v", p.Bulk)
	}
	take(t, productOf(t, s, 0), "bulk_per", field(t, productOf(t, s, 0), "bulk_per").Value) // as it stands
	if product().Bulk.Per != quantity.CubicYard {
		t.Errorf("a value that was left as it stands became %v", product().Bulk.Per)
	}
	refuse(t, productOf(t, s, 0), "price/0", "-2", "cheap")
	refuse(t, productOf(t, s, 0), "pack/0", "0", "big")
	refuse(t, productOf(t, s, 0), "name", " ", strings.Repeat("x", 300))
	if got := productOf(t, s, 0).Summary; !strings.Contains(got, "bulk") || !strings.Contains(got, "25 L in the shed") {
		t.Errorf("summed up as %q", got)
	}
	if err := s.AddMix(); err != nil || len(s.Products()) != 2 || d.UndoName() != "add New mix" {
		t.Errorf("%v, %q", err, d.UndoName())
	}
	take(t, productOf(t, s, 1), "name", "Cheap stuff")
	if err := productOf(t, s, 1).Remove(); err != nil || len(s.Products()) != 1 || d.UndoName() != "remove Cheap stuff" {
		t.Errorf("%v, %q", err, d.UndoName())
	}
}

func TestABlendOfOnesOwn(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	for _, err := range []error{s.AddIngredient(), s.AddIngredient(), s.AddBlend()} {
		if err != nil {
			t.Fatal(err)
		}
	}
	take(t, productOf(t, s, 1), "expansion", "2")
	take(t, productOf(t, s, 1), "pack/0", "85 L")
	take(t, productOf(t, s, 1), "price/0", "19")
	blend := func() mix.Group { return s.Blends()[0] }
	if err := field(t, s.Settings(), "blend").Choose(1); err != nil || d.Plan().Mix.Blend != "blend" {
		t.Fatal(err, d.Plan().Mix.Blend)
	}
	d.Settle()
	if p := s.Purchases(); len(p) != 1 || p[0].Trouble != "The blend has no parts yet." {
		t.Errorf("purchases %+v", p)
	}
	take(t, blend(), "part/ingredient", "3")
	take(t, blend(), "part/mix", "1")
	take(t, blend(), "shrinkage", "0 %")
	if b := d.Plan().Blends[0]; len(b.Parts) != 2 || b.Shrinkage == nil || *b.Shrinkage != 0 || blend().Summary == "" {
		t.Errorf("blend %+v", b)
	}
	d.Settle()
	p := s.Purchases()
	if len(p) != 2 || p[0].Trouble != "" || p[0].Cost.Figure.IsZero() || p[1].Title != "potting mix" || s.TotalCost() == "" {
		t.Errorf("purchases %+v, together %q", p, s.TotalCost())
	}
	take(t, blend(), "part/mix", "")
	take(t, blend(), "shrinkage", "")
	if b := d.Plan().Blends[0]; len(b.Parts) != 1 || b.Shrinkage != nil {
		t.Errorf("blend %+v", b)
	}
	refuse(t, blend(), "part/mix", "-1", "a bit")
	refuse(t, blend(), "shrinkage", "90 %")
	if err := blend().Remove(); err != nil || len(s.Blends()) != 0 || d.Plan().Mix.Blend != "" {
		t.Errorf("%v, filled with %q", err, d.Plan().Mix.Blend)
	}
}

func TestTheNextSeasonIsOfferedFirst(t *testing.T) {
	// Change-outs that have slipped by a few weeks are still bought for: this is past them.
	_, s := open(t, screentest.Example(t), civil.MustParse("2027-07-08"))
	if names, _ := s.Seasons(); names != nil {
		t.Errorf("seasons %v for the next change-out", names)
	}
	s.ChooseSpan(1)
	names, chosen := s.Seasons()
	if len(names) != 4 || names[chosen] != "Autumn" {
		t.Errorf("on 8 July the season is %d of %v", chosen, names)
	}
	for _, r := range s.Rows() {
		if r.Season != "Autumn" {
			t.Errorf("%s is bought for", r.Season)
		}
	}
	s.ChooseSeason(0)
	s.ChooseSeason(-1)
	s.ChooseSeason(9)
	if _, chosen := s.Seasons(); chosen != 0 || len(s.Rows()) == 0 || s.Rows()[0].Season != "Spring" {
		t.Errorf("chosen %d", chosen)
	}
}
