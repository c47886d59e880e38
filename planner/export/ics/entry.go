package ics

import (
	"crypto/sha1"
	"fmt"
	"slices"
	"strings"
	"time"

	"fourturn/planner/civil"
)

// Alarm is a reminder of an all-day entry, by the clock of the phone.
type Alarm struct {
	DaysBefore int           // 0 on the day, 1 the day before
	At         time.Duration // since midnight, from 0 up to 24 hours, in whole seconds
}

// Entry is one thing to be done on a day.
type Entry struct {
	UID         string     // stable for as long as the entry is the same thing, see [UID]
	Date        civil.Date // first day
	Days        int        // how many days; 0 means 1
	Summary     string     // one line
	Description string     // may have line breaks
	Category    string     // one word of the calendar's own, or empty
	Alarms      []Alarm
	Sequence    int // counts the changes since the entry was first written
	Cancelled   bool
}

// namespace is the name space of this package's UIDs, drawn once at random.
var namespace = [16]byte{0x8f, 0x1c, 0x5a, 0x36, 0x0e, 0x7b, 0x4d, 0x92, 0xa3, 0x54, 0xc8, 0x6d, 0x21, 0xf9, 0x70, 0x4b}

// UID returns a stable UID for the parts that identify an entry, such as a plan's
// id, "round" and its number in the year. It is a UUID of version 5 (RFC 9562,
// section 5.5), the form that RFC 7986, section 5.3, asks for.
func UID(parts ...string) string {
	hash := sha1.New()
	hash.Write(namespace[:])
	for _, part := range parts {
		// The length keeps {"a", "bc"} apart from {"ab", "c"}.
		fmt.Fprintf(hash, "%d:%s", len(part), part)
	}
	id := hash.Sum(nil)[:16]
	id[6] = id[6]&0x0f | 0x50
	id[8] = id[8]&0x3f | 0x80
	return fmt.Sprintf("%x-%x-%x-%x-%x", id[0:4], id[4:6], id[6:8], id[8:10], id[10:16])
}

// days returns how many days the entry lasts, at least 1.
func (e Entry) days() int { return max(1, e.Days) }

// clean returns the entry as it is written: line ends as \n, no other control
// characters, alarms in order and without doubles.
func (e Entry) clean() Entry {
	e.Days = e.days()
	e.Summary = strings.Join(strings.Fields(cleanText(e.Summary)), " ")
	e.Description = strings.TrimSpace(cleanText(e.Description))
	e.Category = strings.Join(strings.Fields(cleanText(e.Category)), " ")
	e.Alarms = slices.Clone(e.Alarms)
	slices.SortFunc(e.Alarms, func(a, b Alarm) int { return int((a.trigger() - b.trigger()) / time.Second) })
	e.Alarms = slices.Compact(e.Alarms)
	if len(e.Alarms) == 0 {
		e.Alarms = nil
	}
	return e
}

// trigger returns the time of the alarm relative to the start of the day.
func (a Alarm) trigger() time.Duration {
	return a.At - time.Duration(a.DaysBefore)*24*time.Hour
}

func cleanText(s string) string {
	s = strings.ToValidUTF8(s, "\uFFFD")
	s = strings.ReplaceAll(strings.ReplaceAll(s, "\r\n", "\n"), "\r", "\n")
	return strings.Map(func(r rune) rune {
		// RFC 5545, section 3.1: CONTROL may not stand in text, but for HTAB.
		if r < ' ' && r != '\n' && r != '\t' || r == 0x7f {
			return -1
		}
		return r
	}, s)
}

// Update returns the entries to write now, given those of the file written before:
// an entry that changed counts its sequence up from the one before, one that stayed
// keeps it, and one that fell away is added at the end as cancelled, unless it was
// cancelled already and lies before the day keep. What is past on the day today and fell
// away stays as it was: it happened, or might have. Sequences in next are not read.
func Update(before, next []Entry, today, keep civil.Date) []Entry {
	old := make(map[string]Entry, len(before))
	for _, e := range before {
		old[e.UID] = e
	}
	var entries []Entry
	still := make(map[string]bool, len(next))
	for _, e := range next {
		still[e.UID] = true
		e.Sequence = 0
		if was, ok := old[e.UID]; ok {
			e.Sequence = was.Sequence
			if !same(e, was) {
				e.Sequence++
			}
		}
		entries = append(entries, e)
	}
	for _, e := range before {
		if still[e.UID] || e.Cancelled && e.Date < keep {
			continue
		}
		if !e.Cancelled && e.Date.AddDays(e.days()) > today {
			e.Cancelled, e.Alarms = true, nil
			e.Sequence++
		}
		entries = append(entries, e)
	}
	return entries
}

// same reports whether two entries are written alike, the sequence apart.
func same(a, b Entry) bool {
	a, b = a.clean(), b.clean()
	return a.Date == b.Date && a.Days == b.Days && a.Summary == b.Summary && a.Description == b.Description &&
		a.Category == b.Category && a.Cancelled == b.Cancelled && slices.Equal(a.Alarms, b.Alarms)
}
