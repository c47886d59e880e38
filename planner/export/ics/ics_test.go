package ics_test

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"fourturn/planner/civil"
	"fourturn/planner/export/ics"
)

var stamp = time.Date(2027, time.March, 1, 6, 30, 0, 0, time.UTC)

func entries() []ics.Entry {
	return []ics.Entry{
		{
			UID: ics.UID("plan", "round", "2027", "1"), Date: civil.MustParse("2027-05-15"), Summary: "Feed: 20-20-20, two cans",
			Description: "Trough; basket, urn.\n1 tbsp in 9 L — half strength if hot\\dry.", Category: "Feeding",
			Alarms: []ics.Alarm{{DaysBefore: 1, At: 18 * time.Hour}, {At: 7*time.Hour + 30*time.Minute}},
		},
		{UID: ics.UID("plan", "change", "trough", "summer"), Date: civil.MustParse("2028-02-29"), Days: 3, Summary: strings.Repeat("Frühjahr 春 🌱 ", 30)},
		{UID: ics.UID("plan", "round", "2027", "2"), Date: civil.MustParse("2027-12-31"), Summary: "Feed", Cancelled: true, Sequence: 4},
	}
}

func written(t testing.TB, list []ics.Entry) []byte {
	t.Helper()
	var file bytes.Buffer
	if err := ics.Write(&file, ics.Calendar{Name: "Pots", Entries: list}, stamp); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}

// The rules of RFC 5545, section 3.1, for every line of a file.
func checkLines(t interface{ Fatalf(string, ...any) }, file []byte) {
	text := string(file)
	if strings.Count(text, "\n") != strings.Count(text, "\r\n") || strings.Count(text, "\r") != strings.Count(text, "\r\n") {
		t.Fatalf("a line does not end in CRLF")
	}
	for line := range strings.SplitSeq(strings.TrimSuffix(text, "\r\n"), "\r\n") {
		if len(line) > 75 || line == "" || !utf8.ValidString(line) {
			t.Fatalf("line of %d octets: %q", len(line), line)
		}
	}
}

func TestWriteFollowsTheRules(t *testing.T) {
	file := written(t, entries())
	checkLines(t, file)
	unfolded := strings.ReplaceAll(string(file), "\r\n ", "")
	for _, line := range []string{
		"DTSTAMP:20270301T063000Z", "DTSTART;VALUE=DATE:20270515", "DTEND;VALUE=DATE:20270516",
		"DTSTART;VALUE=DATE:20280229", "DTEND;VALUE=DATE:20280303", "DTEND;VALUE=DATE:20280101",
		"TRIGGER:-PT6H", "TRIGGER:PT7H30M", "ACTION:DISPLAY", "SEQUENCE:4", "STATUS:CANCELLED", "METHOD:PUBLISH",
		`DESCRIPTION:Trough\; basket\, urn.\n1 tbsp in 9 L — half strength if hot\\dry.`,
	} {
		if !strings.Contains(unfolded, "\r\n"+line+"\r\n") {
			t.Errorf("no line %q in\n%s", line, unfolded)
		}
	}
}

func TestReadReturnsWhatWasWritten(t *testing.T) {
	list := entries()
	list[1].Summary = strings.TrimSpace(list[1].Summary)
	list[0].Days, list[2].Days = 1, 1
	got, err := ics.Read(bytes.NewReader(written(t, list)))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(ics.Calendar{Name: "Pots", Entries: list}, got); diff != "" {
		t.Error(diff)
	}
}

func drawEntry(t *rapid.T) ics.Entry {
	e := ics.Entry{
		UID:         ics.UID(rapid.String().Draw(t, "uid"), rapid.StringN(1, 8, -1).Draw(t, "part")),
		Date:        civil.MustParse("2024-02-28").AddDays(rapid.IntRange(-30000, 30000).Draw(t, "day")),
		Days:        rapid.IntRange(1, 400).Draw(t, "days"),
		Summary:     rapid.String().Draw(t, "summary"),
		Description: rapid.String().Draw(t, "description"),
		Category:    rapid.String().Draw(t, "category"),
		Sequence:    rapid.IntRange(0, 9999).Draw(t, "sequence"),
		Cancelled:   rapid.Bool().Draw(t, "cancelled"),
	}
	if !e.Cancelled && rapid.Bool().Draw(t, "alarm") {
		e.Alarms = []ics.Alarm{{DaysBefore: rapid.IntRange(0, 400).Draw(t, "before"), At: time.Duration(rapid.IntRange(0, 86399).Draw(t, "at")) * time.Second}}
	}
	return e
}

// What is written is read back, and writing that again makes the same file.
func TestWrittenFilesSettle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := drawEntry(t)
		var first, second bytes.Buffer
		if err := ics.Write(&first, ics.Calendar{Entries: []ics.Entry{e}}, stamp); err != nil {
			t.Fatal(err)
		}
		checkLines(t, first.Bytes())
		back, err := ics.Read(&first)
		if err != nil {
			t.Fatal(err)
		}
		got := back.Entries[0]
		if got.UID != e.UID || got.Date != e.Date || got.Days != e.Days || got.Sequence != e.Sequence || got.Cancelled != e.Cancelled || !cmp.Equal(got.Alarms, e.Alarms) {
			t.Fatalf("%+v became %+v", e, got)
		}
		if err := ics.Write(&second, back, stamp); err != nil {
			t.Fatal(err)
		}
		again, err := ics.Read(&second)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(back, again); diff != "" {
			t.Fatal(diff)
		}
	})
}

func TestUpdateCountsUpWhatChanged(t *testing.T) {
	before, err := ics.Read(bytes.NewReader(written(t, entries()[:2])))
	if err != nil {
		t.Fatal(err)
	}
	today := civil.MustParse("2027-05-01")
	if same := ics.Update(before.Entries, entries()[:2], today, today); same[0].Sequence != 0 || same[1].Sequence != 0 || len(same) != 2 {
		t.Errorf("nothing changed, yet %+v", same)
	}
	moved := entries()[:1]
	moved[0].Date++
	after := ics.Update(before.Entries, moved, today, today)
	if len(after) != 2 || after[0].Sequence != 1 || after[0].UID != before.Entries[0].UID {
		t.Fatalf("a round that moved: %+v", after)
	}
	if gone := after[1]; !gone.Cancelled || gone.Sequence != 1 || gone.UID != before.Entries[1].UID {
		t.Fatalf("a change-out that fell away: %+v", gone)
	}
	if again := ics.Update(after, moved, today, today); again[1].Sequence != 1 || !again[1].Cancelled {
		t.Errorf("it is cancelled once: %+v", again[1])
	}
	if later := ics.Update(after, moved, civil.MustParse("2029-01-01"), civil.MustParse("2029-01-01")); len(later) != 1 {
		t.Errorf("what was cancelled and is past is kept: %+v", later)
	}
	if past := ics.Update(before.Entries, moved, civil.MustParse("2030-01-01"), today); len(past) != 2 || past[1].Cancelled || past[1].Sequence != 0 {
		t.Errorf("what is past and fell away: %+v", past)
	}
	revived := ics.Update(after, entries()[:2], today, today)
	if revived[1].Cancelled || revived[1].Sequence != 2 {
		t.Errorf("a change-out that came back: %+v", revived[1])
	}
}

func TestUID(t *testing.T) {
	if a, b := ics.UID("a", "bc"), ics.UID("ab", "c"); a == b || a != ics.UID("a", "bc") || len(a) != 36 || a[14] != '5' {
		t.Errorf("%s and %s", a, b)
	}
}

func TestWriteRefuses(t *testing.T) {
	good := entries()[0]
	change := func(f func(*ics.Entry)) []ics.Entry {
		e := good
		f(&e)
		return []ics.Entry{e}
	}
	for want, list := range map[error][]ics.Entry{
		ics.ErrNoUID:     change(func(e *ics.Entry) { e.UID = " \r\n" }),
		ics.ErrNoDate:    change(func(e *ics.Entry) { e.Date = 0 }),
		ics.ErrSequence:  change(func(e *ics.Entry) { e.Sequence = -1 }),
		ics.ErrAlarm:     change(func(e *ics.Entry) { e.Alarms = []ics.Alarm{{At: 24 * time.Hour}} }),
		ics.ErrDoubleUID: {good, good},
	} {
		if err := ics.Write(&bytes.Buffer{}, ics.Calendar{Entries: list}, stamp); !errors.Is(err, want) {
			t.Errorf("%v, want %v", err, want)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add(written(f, entries()))
	f.Add([]byte("BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:a\r\nDTSTART:20270101T000000Z\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n"))
	f.Add([]byte("BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:a\r\nSEQUENCE:1\r\nDTSTART;VALUE=DATE:20270101\r\nDTEND;VALUE=DATE:20270102\r\nBEGIN:VALARM\r\nTRIGGER:P9999999999D\r\nEND:VALARM\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n"))
	f.Fuzz(func(t *testing.T, file []byte) {
		c, err := ics.Read(bytes.NewReader(file))
		if err != nil {
			return
		}
		var again bytes.Buffer
		if err := ics.Write(&again, c, stamp); err != nil && !errors.Is(err, ics.ErrDoubleUID) {
			t.Fatal(err)
		}
	})
}

// The file is read by an independent program, python3-icalendar, which parses dates,
// durations and text by RFC 5545.
const independentReader = `
import sys, datetime, icalendar
cal = icalendar.Calendar.from_ical(sys.stdin.buffer.read())
for e in cal.walk('VEVENT'):
    print(e['UID'], e.decoded('DTSTART'), e.decoded('DTEND'), e['SEQUENCE'], e['STATUS'], e.decoded('DTSTAMP').isoformat(), repr(str(e['SUMMARY'])), len(e.errors))
    for a in e.walk('VALARM'):
        print(' ', a['ACTION'], int(a.decoded('TRIGGER').total_seconds()), len(a.errors))
`

func TestAnotherProgramReadsTheFile(t *testing.T) {
	python := "/usr/bin/python3"
	if err := exec.Command(python, "-c", "import icalendar").Run(); err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("python3-icalendar is not installed, so the file is not checked by another program")
		}
		t.Skip("SKIPPED: python3-icalendar is not installed, so the file is not checked by another program")
	}
	list := entries()
	list[1].Summary = strings.Repeat("Frühjahr, 春; 🌱 ", 30) + `back\slash "quoted"`
	reader := exec.Command(python, "-c", independentReader)
	reader.Stdin = bytes.NewReader(written(t, list))
	reader.Env = append(os.Environ(), "PYTHONIOENCODING=utf-8")
	reader.Stderr = os.Stderr
	got, err := reader.Output()
	if err != nil {
		t.Fatal(err)
	}
	want := list[0].UID + ` 2027-05-15 2027-05-16 0 CONFIRMED 2027-03-01T06:30:00+00:00 'Feed: 20-20-20, two cans' 0
  DISPLAY -21600 0
  DISPLAY 27000 0
` + list[1].UID + ` 2028-02-29 2028-03-03 0 CONFIRMED 2027-03-01T06:30:00+00:00 '` + strings.ReplaceAll(list[1].Summary, `\`, `\\`) + `' 0
` + list[2].UID + ` 2027-12-31 2028-01-01 4 CANCELLED 2027-03-01T06:30:00+00:00 'Feed' 0
`
	if diff := cmp.Diff(want, string(got)); diff != "" {
		t.Error(diff)
	}
}
