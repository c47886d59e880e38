package words_test

import (
	"testing"

	"pgregory.net/rapid"

	"fourturn/app/words"
)

func TestFold(t *testing.T) {
	for text, want := range map[string]string{
		"Großer Kübel":       "grosser kubel",
		"20-20-20 soluble":   "20 20 20 soluble",
		"  Café,\tsouth ":    "cafe south",
		"Painter's Palette":  "painters palette",
		"Begonia × hybrida":  "begonia x hybrida",
		"ﬁg":                 "fig",
		"İstanbul Łódź Øse":  "istanbul lodz ose",
		"—":                  "",
		"1.5 cu ft (½ full)": "1 5 cu ft 1⁄2 full",
	} {
		if got := words.Fold(text); got != want {
			t.Errorf("Fold(%q) = %q, want %q", text, got, want)
		}
	}
}

// Folding twice is folding once: what is stored folded can be compared with what
// is typed.
func TestFoldIsSettled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		once := words.Fold(rapid.String().Draw(t, "text"))
		if twice := words.Fold(once); twice != once {
			t.Errorf("%q folds on to %q", once, twice)
		}
	})
}
