package words

import (
	"testing"

	"fourturn/planner/quantity"
)

// What is written in a language must be read back as what it was.
func TestReaderReadsWhatTheWordsWrite(t *testing.T) {
	for _, language := range []string{"en-GB", "en-US"} {
		w := New(language)
		for _, l := range []quantity.Length{0.355, 4.5, 1234, 0.0127} {
			for _, s := range []quantity.System{quantity.Metric, quantity.USCustomary} {
				text := w.Length(l, s)
				got, err := w.Reader().Length(text, quantity.Metre)
				if err != nil {
					t.Fatalf("%s: %q: %v", language, text, err)
				}
				if again := w.Length(got, s); again != text {
					t.Errorf("%s: %q was read as %q", language, text, again)
				}
			}
		}
	}
	if got, err := New("en-GB").Reader().Volume("1,234 L", 0); err != nil || got != 1234 {
		t.Errorf("1,234 L is %v, %v", got, err)
	}
}
