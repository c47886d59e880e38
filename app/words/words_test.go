package words

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	"fourturn/planner/civil"
)

// small is a catalogue for tests: German lacks a text that English has.
var small = map[string]catalogue{
	"en": {
		"due.pots#one": "{count} pot", "due.pots#other": "{count} pots",
		"due.fed": "{pot} was fed on {date}", "due.only_english": "Everything is done",
	},
	"de": {
		"due.pots#one": "{count} Topf", "due.pots#other": "{count} Töpfe",
		"due.fed": "Am {date} wurde {pot} gedüngt",
	},
}

func TestLanguageIsFoundInSystemLocales(t *testing.T) {
	for preferred, want := range map[string]string{
		"de":                     "de",
		"de_AT.UTF-8":            "de",
		"de_DE@euro":             "de",
		"de-CH":                  "de",
		"en_US.UTF-8":            "en",
		"sv_SE.UTF-8":            "en", // no catalogue
		"C":                      "en",
		"C.UTF-8":                "en",
		"POSIX":                  "en",
		"":                       "en",
		"not a locale at all":    "en",
		strings.Repeat("x", 999): "en",
	} {
		if got := newWords(small, preferred).Language(); got != want {
			t.Errorf("%q gives language %q, want %q", preferred, got, want)
		}
	}
}

func TestEnvironmentIsAskedInOrder(t *testing.T) {
	environment := map[string]string{"LANG": "en_GB.UTF-8", "LC_MESSAGES": "de_DE.UTF-8"}
	getenv := func(name string) string { return environment[name] }
	if got := Preferred(getenv); got != "de_DE.UTF-8" {
		t.Errorf("LC_MESSAGES should outrank LANG, got %q", got)
	}
	environment["LC_ALL"] = "es_ES.UTF-8"
	if got := Preferred(getenv); got != "es_ES.UTF-8" {
		t.Errorf("LC_ALL should outrank the others, got %q", got)
	}
	if got := Preferred(func(string) string { return "" }); got != "" {
		t.Errorf("an empty environment asks for %q", got)
	}
}

func TestTextsAreFilledIn(t *testing.T) {
	english, german := newWords(small, "en"), newWords(small, "de")
	date := civil.MustParse("2027-04-14")
	for _, c := range []struct{ got, want string }{
		{english.T("due.fed", A{"pot": "Trough"}, A{"date": date}), "Trough was fed on 14 Apr 2027"},
		{german.T("due.fed", A{"pot": "Trog", "date": date}), "Am 14. Apr. 2027 wurde Trog gedüngt"},
		{english.T("due.fed", A{"pot": "{date}", "date": date}), "{date} was fed on 14 Apr 2027"}, // arguments are not filled in themselves
		{german.T("due.only_english"), "Everything is done"},
		{english.T("due.nothing_of_the_kind"), "⟦due.nothing_of_the_kind⟧"},
		{english.T("due.fed", A{"pot": "Trough"}), "Trough was fed on ⟦date⟧"},
		{english.T("due.pots", A{"count": 1}), "1 pot"},
		{english.T("due.pots", A{"count": 0}), "0 pots"},
		{english.T("due.pots", A{"count": 1.5}), "1.5 pots"},
		{english.T("due.pots", A{"count": 1_000_001}), "1,000,001 pots"},
		{german.T("due.pots", A{"count": 1}), "1 Topf"},
		{german.T("due.pots", A{"count": 12_345}), "12.345 Töpfe"},
		{english.List(), ""},
		{New("en").List("a"), "a"},
		{New("en").List("a", "b"), "a and b"},
		{New("en").List("a", "b", "c"), "a, b and c"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestArgumentWithoutAFormPanics(t *testing.T) {
	defer func() {
		if said, _ := recover().(string); !strings.HasPrefix(said, "words: argument") {
			t.Errorf("panicked with %q", said)
		}
	}()
	newWords(small, "en").T("due.fed", A{"pot": []int{1}, "date": "today"})
}

// TestFormsAgreeWithCLDR compares dates, numbers, money and plurals with
// testdata/published/words.csv, which was written by an ICU that knows nothing of
// this package.
func TestFormsAgreeWithCLDR(t *testing.T) {
	file, err := os.Open("../../testdata/published/words.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	// Dates and numbers need no text, so any catalogue of these languages will do.
	all := map[string]catalogue{"en": {}, "de": {}, "es": {}}
	checked := 0
	for _, row := range rows[1:] {
		locale, form, input, want := row[0], row[1], row[2], row[3]
		if got := form2string(t, newWords(all, locale), form, input); got != want {
			t.Errorf("%s %s of %s is %q, want %q (%s)", locale, form, input, got, want, row[4])
		}
		checked++
	}
	if checked < 190 {
		t.Errorf("only %d rows were checked", checked)
	}
}

func form2string(t *testing.T, w *Words, form, input string) string {
	t.Helper()
	number := func(s string) float64 {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	switch form {
	case "date":
		return w.Date(civil.MustParse(input))
	case "short":
		return w.ShortDate(civil.MustParse(input))
	case "weekday":
		return w.WeekdayDate(civil.MustParse(input))
	case "long":
		return w.LongDate(civil.MustParse(input))
	case "month":
		return w.MonthYear(civil.MustParse(input))
	case "range":
		from, to, _ := strings.Cut(input, "/")
		return w.DateRange(civil.MustParse(from), civil.MustParse(to))
	case "number":
		return w.Number(number(input), 2)
	case "percent":
		return w.Percent(number(input))
	case "money":
		amount, currency, _ := strings.Cut(input, " ")
		return w.WithCurrency(currency).Money(number(amount))
	case "plural":
		return w.category(number(input))
	}
	t.Fatalf("unknown form %q", form)
	return ""
}

func TestEveryMonthAndWeekdayHasItsName(t *testing.T) {
	for _, language := range []string{"en", "en_US", "de", "es"} {
		w := newWords(map[string]catalogue{"en": {}, "de": {}, "es": {}}, language)
		seen := map[string]bool{}
		for d := civil.MustParse("2027-01-01"); d <= civil.MustParse("2027-12-31"); d = d.AddDays(1) {
			seen[w.LongDate(d)] = true
			if strings.Contains(w.LongDate(d)+w.WeekdayDate(d), missingOpen) {
				t.Fatalf("%s: %s", language, w.LongDate(d))
			}
		}
		if len(seen) != 365 {
			t.Errorf("%s writes %d different days of 365", language, len(seen))
		}
	}
}

func TestEdgesOfDatesAndNumbers(t *testing.T) {
	w := New("en")
	leap := civil.MonthDay{Month: 2, Day: 29}
	for _, c := range []struct{ got, want string }{
		{w.Date(0), ""},
		{w.MonthDay(civil.MonthDay{}), ""},
		{w.MonthDay(leap), "29 Feb"},
		{w.DateRange(civil.MustParse("2027-03-31"), civil.MustParse("2027-03-31")), "31 Mar"},
		{w.Number(-0.001, 2), "0"},
		{w.Number(0.125, 2), "0.13"},
		{w.Number(1e300, 2), w.Number(1e300, 0)},
		{w.Number(nan(), 1), "–"},
		{w.Significant(1234.5, 3), "1,235"},
		{w.Significant(0.012345, 3), "0.0123"},
		{w.Money(12), "12.00"},
		{w.WithCurrency("QQQ").Money(-1.5), "-QQQ\u00a01.50"},
		{w.WithCurrency("EUR").Money(-0.001), "€0.00"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func nan() float64 { zero := 0.0; return zero / zero }
