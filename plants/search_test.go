package plants_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"fourturn/plants"
)

func firstHit(t *testing.T, query string) string {
	t.Helper()
	hits := plants.NewIndex(builtin(t).Plants()).Find(query)
	if len(hits) == 0 {
		return ""
	}
	return hits[0].Plant.ID
}

func TestFindsTheRightPlantFirst(t *testing.T) {
	for query, want := range map[string]string{
		"pansy":                    "pansy",
		"PANSY ":                   "pansy",
		"pans":                     "pansy",
		"viola":                    "viola",
		"viola x wittrockiana":     "pansy",
		"viola wittrockiana":       "pansy",
		"Viola × wittrockiana":     "pansy",
		"johnny jump up":           "viola",
		"busy lizzie":              "impatiens",
		"lizzie":                   "impatiens",
		"vinca rosea":              "annual-vinca", // former name
		"Rosmarinus":               "rosemary",
		"box":                      "dwarf-boxwood",
		"aubergine":                "dwarf-aubergine",
		"eggplant":                 "dwarf-aubergine",
		"geranium ivy":             "ivy-geranium",
		"petúnia":                  "petunia",
		"joseph's coat":            "josephs-coat",
		"coriander":                "coriander",
		"cilantro":                 "coriander",
		"petunya":                  "petunia", // a letter off
		"begnoia":                  "rex-begonia",
		"lavendar":                 "english-lavender",
		"Asteraceae daisy english": "english-daisy",
	} {
		if got := firstHit(t, query); got != want {
			t.Errorf("%q finds %q, want %q", query, got, want)
		}
	}
	for _, query := range []string{"qqqq", "pansy tulip", "xyz pansy"} {
		if got := firstHit(t, query); got != "" {
			t.Errorf("%q finds %q", query, got)
		}
	}
}

func TestEmptyQueryFindsAll(t *testing.T) {
	all := builtin(t).Plants()
	for _, query := range []string{"", "  ", "×", "'"} {
		hits := plants.NewIndex(all).Find(query)
		if len(hits) != len(all) || hits[0].Plant != all[0] {
			t.Errorf("%q finds %d plants", query, len(hits))
		}
	}
}

func ExampleIndex_Find() {
	book, _ := plants.Builtin()
	for _, hit := range plants.NewIndex(book.Plants()).Find("marigold") {
		fmt.Println(hit.Plant.Name())
	}
	// Output:
	// French marigold
	// Calendula
}

// Laws: every name finds its plant; typing on only narrows what names answer;
// case and accents do not matter.
func TestLawSearch(t *testing.T) {
	all := builtin(t).Plants()
	ix := plants.NewIndex(all)
	has := func(hits []plants.Hit, p *plants.Plant) bool {
		return slices.ContainsFunc(hits, func(h plants.Hit) bool { return h.Plant == p })
	}
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SampledFrom(all).Draw(t, "plant")
		name := rapid.SampledFrom(slices.Concat(p.Names, p.Botanical, p.Synonyms)).Draw(t, "name")
		if hits := ix.Find(name); !has(hits, p) {
			t.Fatalf("%q does not find %s", name, p.ID)
		}
		letters := []rune(name)
		head := string(letters[:rapid.IntRange(1, len(letters)).Draw(t, "typed")])
		if hits := ix.Find(head); !has(hits, p) {
			t.Fatalf("%q does not find %s", head, p.ID)
		}
		loud, quiet := ix.Find(strings.ToUpper(head)), ix.Find(strings.ToLower(head))
		if !slices.Equal(loud, quiet) {
			t.Fatalf("%q: case matters", head)
		}
		for i := 1; i < len(quiet); i++ {
			if quiet[i].Rank < quiet[i-1].Rank {
				t.Fatalf("%q: hits are not in order", head)
			}
		}
	})
}

func FuzzFind(f *testing.F) {
	f.Add("pansy")
	f.Add("É́ × '")
	book, err := plants.Builtin()
	if err != nil {
		f.Fatal(err)
	}
	ix := plants.NewIndex(book.Plants())
	f.Fuzz(func(t *testing.T, query string) {
		if hits := ix.Find(query); len(hits) > len(book.Plants()) {
			t.Fatalf("%q finds %d plants", query, len(hits))
		}
	})
}

func TestNewID(t *testing.T) {
	for name, want := range map[string]string{
		"Düsseldorf daisy": "dusseldorf-daisy", "St. John's wort": "st-john-s-wort", "3-leaf": "leaf", "×": "x", "日本": "", "": "",
		strings.Repeat("long ", 40): strings.TrimRight(strings.Repeat("long-", 12), "-"),
	} {
		if got := plants.NewID(name); got != want {
			t.Errorf("NewID(%q) = %q, want %q", name, got, want)
		}
	}
}
