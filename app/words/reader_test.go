package words

import (
	"errors"
	"strings"
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

// What is said under a field must fit the field.
func TestTypedIsShort(t *testing.T) {
	w := New("en-GB")
	for _, typed := range []string{"", "wide", "35 fortnights", "35 cm and a bit", "5 qt", "1e", "1/0 cm"} {
		for _, read := range []func(string) error{
			func(s string) error { _, err := w.Reader().Length(s, 0); return err },
			func(s string) error { _, err := w.Reader().Volume(s, 0); return err },
		} {
			var fault *quantity.ParseError
			if err := read(typed); !errors.As(err, &fault) {
				t.Fatalf("%q: %v", typed, err)
			}
			if text := w.Typed(fault); len([]rune(text)) > 32 || strings.Contains(text, missingOpen) {
				t.Errorf("%q: %q", typed, text)
			}
		}
	}
}
