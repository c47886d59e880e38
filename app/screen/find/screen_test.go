package find_test

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"fourturn/app/screen/find"
	"fourturn/app/screen/screentest"
	"fourturn/app/words"
	"fourturn/planner"
)

var around = find.Around{
	Rooms:   []find.Named{{Name: "due", Label: "Due", Keys: "Ctrl+1"}, {Name: "plants", Label: "Plant book"}},
	Actions: []find.Named{{Name: "save", Label: "Save", Keys: "Ctrl+S"}, {Name: "units_us", Label: "US customary units"}},
}

func open(tb testing.TB, plan *planner.Plan) *find.Screen {
	tb.Helper()
	d := screentest.Open(tb, plan, screentest.SummerDay)
	return find.New(d.Session, d.Words, screentest.Book(tb), around)
}

func example(t *testing.T) *find.Screen {
	plan := screentest.Example(t)
	plan.Pots[3].Client = "Café Größe"
	plan.Pots[4].Client = "Café Größe"
	return open(t, plan)
}

func TestTheBestAnswerComesFirst(t *testing.T) {
	s := example(t)
	for _, one := range []struct{ typed, kind, title, room, id string }{
		{"door pot, r", "pot", "Door pot, right", "pots", "door-right"},
		{"BARREL", "pot", "Half barrel", "pots", ""},
		{"cafe grosse", "client", "Café Größe", "pots", ""},
		{"angelon", "plant", "Angelonia", "plants", "angelonia"},
		{"angustifolia angelonia", "plant", "Angelonia", "plants", "angelonia"},
		{"turning", "recipe", "Turning year", "pots", ""},
		{"20-20-20", "product", "20-20-20 soluble", "mix", "even"},
		{"north arch", "spot", "North arch", "site", "arch"},
		{"the yard", "site", "The yard", "site", "yard"},
		{"plant b", "room", "Plant book", "plants", ""},
		{"due", "room", "Due", "due", ""},
		{"sav", "action", "Save", "", ""},
	} {
		s.Search(one.typed)
		if len(s.Hits()) == 0 {
			t.Errorf("%q finds nothing", one.typed)
			continue
		}
		hit := s.Hits()[0]
		if string(hit.Kind) != one.kind || hit.Title != one.title || hit.Room != one.room || one.id != "" && hit.ID != one.id {
			t.Errorf("%q finds %v in %q at %q first, not %s %s", one.typed, hit, hit.Room, hit.ID, one.kind, one.title)
		}
	}
}

func TestWordsBesideTheNameAnswerToo(t *testing.T) {
	s := example(t)
	s.Search("grosse") // pots of the client stand behind the client
	if len(s.Hits()) < 3 || s.Hits()[0].Kind != find.Client || s.Hits()[1].Kind != find.Pot {
		t.Errorf("the client's name finds %v", s.Hits())
	}
	s.Search("coleus recipe")
	if len(s.Hits()) == 0 || s.Hits()[0].Title != "Leaf and shade" {
		t.Errorf("a plant in a recipe finds %v", s.Hits())
	}
}

func TestNothingTypedOffersRoomsAndActions(t *testing.T) {
	s := example(t)
	s.Search("door")
	s.Search("  ")
	if len(s.Hits()) != 4 || s.Hits()[0].Keys != "Ctrl+1" || s.Hits()[2].Action != "save" {
		t.Errorf("nothing typed offers %v", s.Hits())
	}
	s.Search("qqqq")
	if len(s.Hits()) != 0 || s.More() != 0 {
		t.Errorf("nonsense finds %v", s.Hits())
	}
}

func TestManyHitsAreCounted(t *testing.T) {
	s := open(t, screentest.Many(t, 500))
	s.Search("o")
	if len(s.Hits()) != 60 || s.More() < 400 {
		t.Errorf("%d shown, %d more", len(s.Hits()), s.More())
	}
	s.Search("door pot 481")
	if len(s.Hits()) != 1 {
		t.Errorf("one pot of 500 is found as %v", s.Hits())
	}
}

func TestEveryHitHasWords(t *testing.T) {
	s := example(t)
	for letter := 'a'; letter <= 'z'; letter++ {
		s.Search(string(letter))
		for _, hit := range s.Hits() {
			if hit.Title == "" || hit.About == "" || strings.Contains(hit.About, "⟦") {
				t.Errorf("%+v lacks words", hit)
			}
		}
	}
}

// Typing another letter never finds what the shorter text did not.
func TestMoreLettersNarrow(t *testing.T) {
	s := example(t)
	rapid.Check(t, func(t *rapid.T) {
		typed := rapid.StringOfN(rapid.RuneFrom([]rune("abcdeilnoprstu ")), 1, 8, -1).Draw(t, "typed")
		s.Search(typed)
		if words.Fold(typed) == "" {
			return
		}
		before := len(s.Hits()) + s.More()
		s.Search(typed + rapid.StringOfN(rapid.RuneFrom([]rune("aeost")), 1, 1, -1).Draw(t, "more"))
		if after := len(s.Hits()) + s.More(); after > before && !strings.HasSuffix(typed, " ") {
			t.Errorf("%q found %d, one letter more %d", typed, before, after)
		}
	})
}

// BenchmarkSearch types a word among 10,000 pots and compares each letter with the
// time of one picture at 60 Hz.
func BenchmarkSearch(b *testing.B) {
	s := open(b, screentest.Many(b, 10_000))
	const frame = time.Second / 60
	for b.Loop() {
		for _, typed := range []string{"t", "tr", "tro", "trou"} {
			s.Search(typed)
		}
	}
	b.ReportMetric(b.Elapsed().Seconds()/float64(4*b.N)/frame.Seconds(), "frames/letter")
}
