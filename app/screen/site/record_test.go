package site_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"fourturn/app/screen/screentest"
	"fourturn/app/screen/site"
	"fourturn/planner"
	"fourturn/planner/climate/climatetest"
)

func values(facts []site.Fact) string {
	var b strings.Builder
	for _, f := range facts {
		b.WriteString(f.Label + ": " + f.Value + "\n")
	}
	return b.String()
}

// A record is looked at, taken in as one step, and works on when its file is gone; the
// step can be taken back.
func TestARecordIsTakenIn(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	path := filepath.Join(t.TempDir(), "garden.csv")
	if err := os.WriteFile(path, []byte(string(climatetest.Text(t, "USW00094789"))), 0o600); err != nil {
		t.Fatal(err)
	}
	var preview *site.Preview
	s.ReadFile(path, func(p *site.Preview, err error) {
		if err != nil {
			t.Fatal(err)
		}
		preview = p
	})
	for preview == nil {
		d.Settle()
	}
	if said := values(preview.Facts); preview.Problem != "" || !strings.Contains(said, "date, low tmin") || !strings.Contains(said, "°C") || !strings.Contains(said, "1980") {
		t.Fatalf("%q\n%s", preview.Problem, said)
	}
	if d.Dirty() {
		t.Error("looking at a record changed the plan")
	}
	before := s.Freezes()
	if err := s.TakeRecord(preview); err != nil {
		t.Fatal(err)
	}
	if got := d.UndoName(); got != "take in a daily record for The yard" {
		t.Errorf("the undo is called %q", got)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	d.Settle()
	facts, seasons, ok := s.Record()
	if !ok || !strings.Contains(values(facts), "garden.csv") || len(seasons) < 30 || cmp.Equal(before[0].Value, s.Freezes()[0].Value) || s.Freezes()[0].Soft {
		t.Errorf("record %v of %d seasons, freezes %v", facts, len(seasons), s.Freezes()[0])
	}
	if source := s.Source(); !strings.Contains(source, "garden.csv") || strings.Contains(source, "⟦") {
		t.Errorf("source %q", source)
	}
	d.Undo()
	d.Settle()
	if _, _, ok := s.Record(); ok || !cmp.Equal(before[0].Value, s.Freezes()[0].Value) {
		t.Error("taking it back leaves the record")
	}
}

// What is wrong with a record is counted, named and told with its lines; seasons that do
// not count are named.
func TestWhatIsWrongWithARecord(t *testing.T) {
	_, s := open(t, screentest.Example(t))
	text := "Datum;TNK;TXK\n01.01.2001;-5,0;2,0\n02.01.2001;9,0;3,0\n02.01.2001;-4;1\n03.01.2001;x1;1\n31.02.2001;1;2\n20.01.2001;-99;2\n"
	p := s.ReadPasted(text)
	said := values(p.Facts) + values(p.Faults)
	for _, want := range []string{
		"semicolons between", "day, month, year", "minimum above maximum", "the same day again", "no number can be read", "no date can be read",
		"line 3", "colder or hotter than any air", "1 gap", "19 days from",
	} {
		if !strings.Contains(strings.ToLower(said), want) {
			t.Errorf("%q is not said in\n%s", want, said)
		}
	}
	if strings.Contains(said, "⟦") {
		t.Error(said)
	}
	if p.Problem == "" || len(p.Uncounted()) != 1 || s.TakeRecord(p) == nil {
		t.Errorf("problem %q, uncounted %v", p.Problem, p.Uncounted())
	}
	long := s.ReadPasted(string(climatetest.Text(t, "USC00275868")))
	if left := long.Uncounted(); long.Problem != "" || len(left) < 5 || len(left) >= len(long.Seasons) || !strings.Contains(left[0], "/") {
		t.Errorf("problem %q, uncounted %v", long.Problem, left)
	}
	for text, want := range map[string]string{"": "", "nothing\nat all\n": "No columns", "date,tmin,tmax\n": "no day"} {
		if p := s.ReadPasted(text); p.Problem == "" || !strings.Contains(p.Problem, want) || s.TakeRecord(p) == nil {
			t.Errorf("%q: %q", text, p.Problem)
		}
	}
}

// What was guessed can be said otherwise.
func TestARecordIsReadOtherwise(t *testing.T) {
	_, s := open(t, screentest.Example(t))
	p := s.ReadPasted("date,tmin,tmax\n01/02/2001,10,35\n")
	doubtful := 0
	for _, f := range p.Facts {
		if f.Doubtful {
			doubtful++
		}
	}
	if doubtful != 2 {
		t.Errorf("%d facts are doubtful: %s", doubtful, values(p.Facts))
	}
	if len(s.RecordUnits()) != 4 || len(s.RecordOrders()) != 4 {
		t.Fatal("not all readings can be chosen")
	}
	p = s.Reread(p, p.Choice.WithUnit(2).WithOrder(2))
	if said := values(p.Facts); !strings.Contains(said, "°F, as you said") || !strings.Contains(said, "day, month, year, as you said") || !strings.Contains(said, "1 Feb 2001") {
		t.Error(said)
	}
	all := s.ReadPasted(string(climatetest.Text(t, "USW00094728")))
	n := len(all.Seasons)
	if all = s.Reread(all, site.RecordChoice{All: true}); len(all.Seasons) <= n {
		t.Errorf("all years have %d seasons, the last thirty %d", len(all.Seasons), n)
	}
}

func TestRecordsThatCannotBeRead(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	done := false
	s.ReadFile(filepath.Join(t.TempDir(), "gone.csv"), func(_ *site.Preview, err error) {
		done = true
		if said := err.Error(); !strings.Contains(said, "gone.csv was not read") {
			t.Errorf("%q", said)
		}
	})
	for !done {
		d.Settle()
	}
	_, s = open(t, screentest.Empty())
	if s.CanRead() {
		t.Error("a record can be read for no place")
	}
	_, s = open(t, &planner.Plan{Sites: []planner.Site{{ID: "a", Record: nil}}})
	if s.CanRead() || s.Outlook() != nil || s.Fault() == "" {
		t.Errorf("a site without a place: %q", s.Fault())
	}
}
