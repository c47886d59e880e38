package plants_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"fourturn/app/screen/plants"
	"fourturn/app/screen/screentest"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/working"
	catalogue "fourturn/plants"
)

func builtin(tb testing.TB) *catalogue.Book {
	tb.Helper()
	book, err := catalogue.Builtin()
	if err != nil {
		tb.Fatal(err)
	}
	return book
}

func open(tb testing.TB, plan *planner.Plan, today civil.Date) (*screentest.Desk, *plants.Screen) {
	tb.Helper()
	d := screentest.Open(tb, plan, today)
	return d, plants.New(d.Session, d.Words)
}

func ids(s *plants.Screen) (list []string) {
	for i := range s.Rows() {
		list = append(list, s.Row(i).ID)
	}
	return list
}

func TestOneIsFoundByEveryKindOfName(t *testing.T) {
	_, s := open(t, screentest.Example(t), screentest.SummerDay)
	for typed, want := range map[string]string{
		"pansy": "pansy", "PÀNSY": "pansy", "viola wittrockiana": "pansy", "tricolor hortensis": "pansy",
		"winter pan": "pansy", "hedera": "english-ivy", "pansi": "pansy",
	} {
		s.Search(typed)
		if got := ids(s); len(got) == 0 || !slices.Contains(got[:min(len(got), 3)], want) {
			t.Errorf("%q finds %q", typed, got)
		}
	}
	s.Search("qqqq")
	if s.Rows() != 0 || s.About() != fmt.Sprintf("0 of %d plants", len(builtin(t).Plants())) {
		t.Errorf("%d rows, %q", s.Rows(), s.About())
	}
	s.Clear()
	if s.Rows() != len(builtin(t).Plants()) || s.Filtered() {
		t.Errorf("cleared, %d rows are left", s.Rows())
	}
}

// Each option of each filter leaves those plants of which it is true, seen by the
// book's own data.
func TestFiltersAskWhatTheySay(t *testing.T) {
	_, s := open(t, screentest.Example(t), screentest.SummerDay)
	book := builtin(t)
	pets := [...]catalogue.Creature{catalogue.Dogs, catalogue.Cats}
	asks := map[plants.Filter]func(p *catalogue.Plant, option int) bool{
		plants.BySeason: func(p *catalogue.Plant, o int) bool { return slices.Contains(p.Seasons, catalogue.Seasons[o-1]) },
		plants.ByRole:   func(p *catalogue.Plant, o int) bool { return p.Role == catalogue.Roles[o-1] },
		plants.ByLight:  func(p *catalogue.Plant, o int) bool { return slices.Contains(p.Light, catalogue.Lights[o-1]) },
		plants.ByWater:  func(p *catalogue.Plant, o int) bool { return p.Water == catalogue.Levels[o-1] },
		plants.ByColour: func(p *catalogue.Plant, o int) bool {
			return slices.Contains(p.Colours, catalogue.Colours[o-1]) || slices.Contains(p.Foliage.Colours, catalogue.Colours[o-1])
		},
		plants.ByHeight: func(p *catalogue.Plant, o int) bool {
			return [...]bool{p.Height.Low <= 0.3, p.Height.Low <= 0.6, p.Height.High >= 0.6}[o-1]
		},
		plants.ByListing: func(p *catalogue.Plant, o int) bool {
			all, none, harmful := true, true, false
			for _, c := range pets {
				l := p.Toxicity.For(c)
				all = all && l == catalogue.ListedNonToxic
				none = none && !l.Harmful() && l != catalogue.Conflicting
				harmful = harmful || l.Harmful()
			}
			return [...]bool{all, none, harmful}[o-1]
		},
	}
	for _, f := range plants.Filters {
		choice := s.Filter(f)
		if choice.Chosen != 0 || len(choice.Options) < 2 || slices.ContainsFunc(choice.Options, unknown) || unknown(s.Label(f)) {
			t.Errorf("%q: %+v", s.Label(f), choice)
		}
		ask := asks[f]
		for option := 1; ask != nil && option < len(choice.Options); option++ {
			s.SetFilter(f, option)
			var want []string
			for _, p := range book.Plants() {
				if ask(p, option) {
					want = append(want, p.ID)
				}
			}
			got := ids(s)
			slices.Sort(got)
			slices.Sort(want)
			if !slices.Equal(got, want) {
				t.Errorf("%s %s: %d plants, want %d", s.Label(f), choice.Options[option], len(got), len(want))
			}
		}
		s.SetFilter(f, 0)
		s.SetFilter(f, 99)
		s.SetFilter(f, -1)
		if s.Filtered() {
			t.Fatalf("%s is not cleared", s.Label(f))
		}
	}
}

func unknown(text string) bool { return text == "" || strings.ContainsAny(text, "⟦⟧") }

func TestOrders(t *testing.T) {
	_, s := open(t, screentest.Example(t), screentest.SummerDay)
	book := builtin(t)
	for i, by := range catalogue.Orders {
		s.SetOrder(i + 1)
		if want := catalogue.Sorted(book.Plants(), by, false); s.Row(0).ID != want[0].ID || s.Orders().Chosen != i+1 {
			t.Errorf("by %s the first is %s, want %s", by, s.Row(0).ID, want[0].ID)
		}
	}
	s.Sort(plants.HeightColumn, true)
	if c, descending := s.Sorted(); c != plants.HeightColumn || !descending {
		t.Errorf("sorted by %v, %v", c, descending)
	}
	if want := catalogue.Sorted(book.Plants(), catalogue.ByHeight, true)[0].ID; s.Row(0).ID != want {
		t.Errorf("the tallest is %s, want %s", s.Row(0).ID, want)
	}
	s.Sort(plants.ListedColumn, false) // has no order
	if c, _ := s.Sorted(); c != plants.HeightColumn {
		t.Errorf("sorted by %v", c)
	}
	// The best answer comes first while no order was asked for.
	s.SetOrder(0)
	s.Search("ivy")
	if c, _ := s.Sorted(); c != -1 || s.Row(0).Name != "Ivy geranium" {
		t.Errorf("the first ivy is %+v", s.Row(0))
	}
}

func TestEveryPlantIsToldInWordsWithWhereItIsFrom(t *testing.T) {
	for _, plan := range []*planner.Plan{screentest.Example(t), screentest.Customary(t)} {
		plan.Household = planner.Household{Cats: true, Dogs: true, Children: true}
		d, s := open(t, plan, screentest.SummerDay)
		for _, p := range builtin(t).Plants() {
			if !s.Choose(p.ID) {
				t.Fatal(p.ID)
			}
			told, _ := s.Told()
			said := append([]string{told.Name, told.Botanical}, told.Conflicts...)
			said = append(said, s.Handling()...)
			facts := s.Facts()
			if lives, ok := s.Lives(); ok {
				facts = append(facts, lives)
			}
			for _, l := range s.Listings() {
				l.Label = l.Value
				facts = append(facts, l.Fact)
			}
			for _, n := range s.Notices() {
				said = append(said, n.Title, n.Text)
			}
			for _, f := range facts {
				trace := f.Figure.Working()
				said = append(said, f.Label, f.Value)
				for _, line := range d.Words.Trace(trace, plan.Units) {
					said = append(said, line.Text)
				}
				if trace.Source.Status == "" || d.Words.Source(trace.Source) == "" {
					t.Errorf("%s: %s has no source", p.ID, f.Label)
				}
				if f.Soft != trace.Soft() && trace.Name != "plant_book.lives" {
					t.Errorf("%s: %s is drawn soft %v, its working %v", p.ID, f.Label, f.Soft, trace.Soft())
				}
			}
			for _, text := range said {
				if unknown(text) {
					t.Errorf("%s: %q", p.ID, text)
				}
			}
		}
	}
}

func TestNoWordCallsAPlantSafe(t *testing.T) {
	plan := screentest.Example(t)
	plan.Household = planner.Household{Cats: true, Dogs: true, Children: true}
	_, s := open(t, plan, screentest.SummerDay)
	for _, p := range builtin(t).Plants() {
		s.Choose(p.ID)
		for i, c := range catalogue.Creatures {
			l := s.Listings()[i]
			if strings.Contains(l.Value, "safe") || p.Toxicity.For(c).Harmful() != (l.Harmful && p.Toxicity.For(c) != catalogue.Conflicting) {
				t.Errorf("%s: %+v", p.ID, l)
			}
			if p.Toxicity.For(c) == catalogue.NotListed && !strings.HasPrefix(l.Value, "not listed") {
				t.Errorf("%s is not listed, but called %q", p.ID, l.Value)
			}
		}
	}
	s.Choose("english-ivy")
	if got := s.Listings()[1].Value; got != "listed toxic to cats" {
		t.Errorf("ivy is %q", got)
	}
}

func TestCautionsGoByTheHousehold(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay) // dogs live there
	s.Choose("english-ivy")
	notices := s.Notices()
	if len(notices) != 2 || notices[0].Severity != finding.Caution || !strings.Contains(notices[0].Text, "dogs") {
		t.Fatalf("notices %+v", notices)
	}
	if text := notices[1].Text; !strings.Contains(text, "North America") || !strings.Contains(text, "Australia") {
		t.Errorf("the regions are %q", text)
	}
	d.Edit(func(p *planner.Plan) { p.Household = planner.Household{} })
	if notices := s.Notices(); len(notices) != 1 {
		t.Errorf("nobody lives there, but %+v", notices)
	}
}

func TestAPlantGoesIntoAPlanting(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	before := d.Plan().Pot("door-left")
	s.Choose("viola")
	if err := s.AddTo("door-left", planner.Spring); err != nil {
		t.Fatal(err)
	}
	if got, want := d.UndoName(), "add Viola to Spring in Door pot, left"; got != want {
		t.Errorf("the undo is called %q, want %q", got, want)
	}
	// The recipe has shares of 20, 50 and 30 %; a fourth plant gets a quarter.
	want := []planner.Part{
		{Plant: "snapdragon", Role: planner.Thriller, Share: 0.15},
		{Plant: "pansy", Role: planner.Filler, Share: 0.375},
		{Plant: "sweet-alyssum", Role: planner.Spiller, Share: 0.225},
		{Plant: "viola"},
	}
	got := planting(t, d, "door-left", planner.Spring)
	if !slices.Equal(got.Plants, want) || got.Recipe == "" {
		t.Errorf("planted %+v", got)
	}
	if recipe := d.Plan().Recipe(got.Recipe); len(recipe.Parts) != 3 || recipe.Parts[0].Share != 0.2 {
		t.Errorf("the recipe has changed to %+v", recipe)
	}
	if before.Plantings[0].Plants != nil {
		t.Error("the plan before has changed")
	}
	d.Settle()
	refuse(t, d, s, "door-left", planner.Spring, "Viola is in Door pot, left in Spring already.")
	refuse(t, d, s, "no-such-pot", planner.Spring, "There is no such pot. Make one in the room of pots first.")
	refuse(t, d, s, "door-left", "monsoon", "There is no such pot. Make one in the room of pots first.")
}

func TestAPlantGoesIntoABarePot(t *testing.T) {
	plan := screentest.Example(t)
	plan.Pots[0].Plantings = nil
	d, s := open(t, plan, screentest.SummerDay)
	refuse(t, d, s, "door-left", planner.Summer, "Choose a plant first.")
	s.Choose("angelonia")
	done, err := s.Add()
	if err != nil || done != "Angelonia added to Door pot, left, Summer." {
		t.Fatalf("%q, %v", done, err)
	}
	if got := planting(t, d, "door-left", planner.Summer); !slices.Equal(got.Plants, []planner.Part{{Plant: "angelonia"}}) {
		t.Errorf("planted %+v", got)
	}
	s.ChooseSeason(3)
	if done, err := s.Add(); err != nil || !strings.HasSuffix(done, "It is usually sold for another season.") {
		t.Errorf("%q, %v", done, err)
	}
}

func TestLiliesAreRefusedWhereCatsLive(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	d.Edit(func(p *planner.Plan) { p.Household.Cats = true })
	for _, id := range []string{"pot-lily", "daylily"} {
		s.Choose(id)
		refuse(t, d, s, "door-left", planner.Summer, "kidney failure in cats")
		if n := s.Notices(); len(n) == 0 || n[0].Severity != finding.Error {
			t.Errorf("%s: %+v", id, n)
		}
	}
	d.Edit(func(p *planner.Plan) { p.Household.Cats = false })
	if err := s.AddTo("door-left", planner.Summer); err != nil {
		t.Errorf("without cats: %v", err)
	}
}

func planting(t *testing.T, d *screentest.Desk, pot string, season planner.Season) planner.Planting {
	t.Helper()
	for _, p := range d.Plan().Pot(pot).Plantings {
		if p.Season == season {
			return p
		}
	}
	t.Fatal("no planting")
	return planner.Planting{}
}

func refuse(t *testing.T, d *screentest.Desk, s *plants.Screen, pot string, season planner.Season, why string) {
	t.Helper()
	revision := d.Revision()
	var refusal *words.Refusal
	if err := s.AddTo(pot, season); !errors.As(err, &refusal) || !strings.Contains(refusal.Text, why) || d.Revision() != revision {
		t.Errorf("%v, want %q", err, why)
	}
}

func TestWhatLivesHereNow(t *testing.T) {
	for _, one := range []struct {
		today   civil.Date
		in, out string
	}{
		{screentest.SummerDay, "angelonia", "pansy"}, // it is too warm for pansies
		{screentest.WinterDay, "", "angelonia"},
	} {
		_, s := open(t, screentest.Example(t), one.today)
		s.SetFilter(plants.ByPlace, 1)
		got := ids(s)
		if one.in != "" && !slices.Contains(got, one.in) || slices.Contains(got, one.out) {
			t.Errorf("%v: %d plants, with %s %v, with %s %v", one.today, len(got), one.in, slices.Contains(got, one.in), one.out, slices.Contains(got, one.out))
		}
		// What is told of a plant agrees with the filter.
		for _, p := range builtin(t).Plants() {
			s.Choose(p.ID)
			lives, known := s.Lives()
			if !known && slices.Contains(got, p.ID) {
				t.Errorf("%s lives here, but nothing is told", p.ID)
			}
			if slices.Contains(got, p.ID) && lives.Value == "on no day" {
				t.Errorf("%s lives here, but on no day", p.ID)
			}
		}
	}
	d, s := open(t, screentest.Empty(), screentest.SummerDay)
	s.SetFilter(plants.ByPlace, 1)
	s.Choose("pansy")
	if _, known := s.Lives(); known || s.Rows() != 0 || s.Pot() != nil || len(s.Pots().Options) != 0 {
		t.Error("something lives without a climate")
	}
	if _, err := s.Add(); err == nil || d.Revision() != 0 && d.UndoName() != "" {
		t.Error("something was planted without a pot")
	}
}

// A tender plant goes out on the first day from which no freeze is to be feared at the
// plan's risk and the nights are as warm as it asks for, and comes in before either
// fails, here read off the climate day by day.
func TestATenderPlantWaitsForTheLastFreeze(t *testing.T) {
	today := civil.MustParse("2028-02-29")
	d, s := open(t, screentest.Example(t), today)
	all, _ := d.Outlook()
	site := all.Sites[0]
	p, _ := builtin(t).Plant("angelonia")
	night, _ := p.PlantingOutNight.Get()
	heat, _ := p.HeatLimit.Get()
	suits := func(d civil.Date) bool {
		i := d.MonthDay().YearDay() - 1
		return site.Low[i] >= float64(night) && site.High[i] <= float64(heat) && site.Freeze[i] <= 0.10
	}
	first := today
	for !suits(first) {
		first++
	}
	last := first
	for suits(last + 1) {
		last++
	}
	if freeze := site.Figures[0].Value.Date; first < freeze || last > today.AddDays(300) {
		t.Fatalf("from %v to %v, with a last freeze on %v", first, last, freeze)
	}
	s.Choose(p.ID)
	lives, ok := s.Lives()
	if want := d.Words.ShortDate(first) + " to " + d.Words.ShortDate(last); !ok || lives.Value != want {
		t.Errorf("it lives %q, want %q", lives.Value, want)
	}
	trace := lives.Figure.Working()
	if trace.Result.Text != lives.Value || trace.Source.Status != working.Judgement || len(trace.Inputs) != 7 {
		t.Errorf("the working is %+v", trace)
	}
	// Seen from the middle of them, the days are the same.
	_, s = open(t, screentest.Example(t), first.AddDays(20))
	s.Choose(p.ID)
	if again, _ := s.Lives(); again.Value != lives.Value {
		t.Errorf("seen from within it lives %q, else %q", again.Value, lives.Value)
	}
}

func TestPlantsSideBySide(t *testing.T) {
	_, s := open(t, screentest.Example(t), screentest.SummerDay)
	if err := s.ToggleCompared(); err != nil {
		t.Error(err)
	}
	for _, id := range []string{"pansy", "english-ivy", "spruce-tips", "pot-lily"} {
		s.Choose(id)
		if err := s.ToggleCompared(); err != nil {
			t.Fatal(err)
		}
	}
	s.Choose("viola")
	var refusal *words.Refusal
	if err := s.ToggleCompared(); !errors.As(err, &refusal) || unknown(refusal.Text) {
		t.Errorf("a fifth: %v", err)
	}
	c := s.Comparison()
	if want := []string{"Pansy", "English ivy"}; !slices.Equal(c.Plants[:2], want) || len(c.Plants) != 4 {
		t.Errorf("compared %q", c.Plants)
	}
	for _, row := range c.Rows {
		if unknown(row.Label) || len(row.Values) != 4 || row.Values[0].Soft != strings.HasPrefix(row.Values[0].Text, "≈ ") {
			t.Errorf("row %+v", row)
		}
	}
	if ivy := c.Rows[1].Values[1]; ivy.Text != "toxic" || !ivy.Harmful {
		t.Errorf("ivy for cats: %+v", ivy)
	}
	s.Choose("pansy")
	if err := s.ToggleCompared(); err != nil {
		t.Error(err)
	}
	if chosen, count := s.Compared(); chosen || count != 3 {
		t.Errorf("%v, %d", chosen, count)
	}
}

func TestPotsOfTheSameNameAreToldApart(t *testing.T) {
	plan := screentest.Example(t)
	plan.Pots[1].Name = plan.Pots[0].Name
	_, s := open(t, plan, screentest.SummerDay)
	s.ChoosePot(1)
	c := s.Pots()
	if c.Chosen != 1 || c.Options[0] == c.Options[1] || s.Pot().ID != plan.Pots[1].ID {
		t.Errorf("%+v", c)
	}
}

// ownPlant is one plant of a person's own book, but for its id.
const ownPlant = `    names: [Garden aster]
    botanical: [Callistephus chinensis]
    family: Asteraceae
    kind: warm_annual
    seasons: [summer]
    role: filler
    light: [sun]
    water: medium
    feeder: medium
    height: 20-60 cm
    spread: 30 cm
    spacing: 22 cm
    frost_class: tender
    lowest_in_pot: 0 C
    planting_out_night: 8 C
    heat_limit: 32 C
    temperature_class: cold_intermediate
    base_temperature: 6 C
    optimum_temperature: 24 C
    toxicity: {dogs: not_listed, cats: not_listed, people: not_listed}
`

// BenchmarkAsking asks ten thousand plants by a letter and by what lives now, as one
// key press does, and reports it as a share of a frame at 60 a second.
func BenchmarkAsking(b *testing.B) {
	var text strings.Builder
	text.WriteString("plants:\n")
	for i := range 10_000 {
		fmt.Fprintf(&text, "  - id: aster-%d\n%s", i, ownPlant)
	}
	_, book, err := catalogue.ReadOwn("own.yaml", []byte(text.String()), builtin(b))
	if err != nil {
		b.Fatal(err)
	}
	d := screentest.Open(b, screentest.Example(b), screentest.SummerDay)
	s := plants.WithBook(d.Session, d.Words, book)
	s.SetFilter(plants.ByPlace, 1)
	s.SetOrder(1)
	for b.Loop() {
		s.Search("a")
		s.Search("as")
	}
	const frame = time.Second / 60
	b.ReportMetric(float64(b.Elapsed())/float64(2*b.N)/float64(frame), "frames/key")
}
