package ics

import (
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"time"

	ical "github.com/arran4/golang-ical"

	"fourturn/planner/civil"
)

// ErrNotOurs reports an entry that this package did not write.
var ErrNotOurs = errors.New("not an all-day entry of this planner")

// Read reads a calendar that [Write] wrote, so that [Update] can compare. It fails
// on calendars of other programs.
func Read(r io.Reader) (Calendar, error) {
	cal, err := ical.ParseCalendar(r)
	if err != nil {
		return Calendar{}, fmt.Errorf("reading a calendar: %w", err)
	}
	var c Calendar
	for _, p := range cal.CalendarProperties {
		if p.IANAToken == string(ical.PropertyName) {
			c.Name = p.Value
		}
	}
	for i, event := range cal.Events() {
		e, err := readEvent(event)
		if err != nil {
			return Calendar{}, fmt.Errorf("reading calendar entry %d: %w", i+1, err)
		}
		c.Entries = append(c.Entries, e)
	}
	return c, nil
}

func readEvent(event *ical.VEvent) (Entry, error) {
	value := func(p ical.ComponentProperty) string {
		if property := event.GetProperty(p); property != nil {
			return property.Value
		}
		return ""
	}
	e := Entry{
		UID:         value(ical.ComponentPropertyUniqueId),
		Summary:     value(ical.ComponentPropertySummary),
		Description: value(ical.ComponentPropertyDescription),
		Category:    value(ical.ComponentPropertyCategories),
		Cancelled:   value(ical.ComponentPropertyStatus) == string(ical.ObjectStatusCancelled),
	}
	first, err := readDate(value(ical.ComponentPropertyDtStart))
	if err != nil {
		return Entry{}, err
	}
	end, err := readDate(value(ical.ComponentPropertyDtEnd))
	if err != nil {
		return Entry{}, err
	}
	e.Date, e.Days = first, int(end-first)
	if e.Sequence, err = strconv.Atoi(value(ical.ComponentPropertySequence)); err != nil {
		return Entry{}, fmt.Errorf("%w: a sequence that is no number", ErrNotOurs)
	}
	for _, alarm := range event.Alarms() {
		trigger := alarm.GetProperty(ical.ComponentPropertyTrigger)
		if trigger == nil {
			return Entry{}, fmt.Errorf("%w: an alarm without a time", ErrNotOurs)
		}
		a, err := readTrigger(trigger.Value)
		if err != nil {
			return Entry{}, err
		}
		e.Alarms = append(e.Alarms, a)
	}
	if err := e.check(); err != nil {
		return Entry{}, fmt.Errorf("%w: %w", ErrNotOurs, err)
	}
	if e.Days < 1 {
		return Entry{}, fmt.Errorf("%w: it ends before it starts", ErrNotOurs)
	}
	return e, nil
}

func readDate(s string) (civil.Date, error) {
	t, err := time.Parse("20060102", s)
	if err != nil || !civil.Valid(t.Date()) {
		return 0, fmt.Errorf("%w: %q is not a day", ErrNotOurs, s)
	}
	return civil.Of(t), nil
}

var triggers = regexp.MustCompile(`^(-?)P(?:(\d{1,5})D)?(?:T(?:(\d{1,2})H)?(?:(\d{1,2})M)?(?:(\d{1,2})S)?)?$`)

// readTrigger reads what [duration] writes.
func readTrigger(s string) (Alarm, error) {
	m := triggers.FindStringSubmatch(s)
	if m == nil {
		return Alarm{}, fmt.Errorf("%w: %q is not a time before or on the day", ErrNotOurs, s)
	}
	total := time.Duration(0)
	for i, unit := range []time.Duration{24 * time.Hour, time.Hour, time.Minute, time.Second} {
		if m[i+2] != "" {
			n, _ := strconv.Atoi(m[i+2]) // the pattern holds digits alone
			total += time.Duration(n) * unit
		}
	}
	if m[1] == "-" {
		total = -total
	}
	a := Alarm{At: total}
	for a.At < 0 {
		a.DaysBefore++
		a.At += 24 * time.Hour
	}
	return a, nil
}

// Sort puts entries in order of date, then of UID, so that files compare well.
func Sort(entries []Entry) {
	slices.SortFunc(entries, func(a, b Entry) int {
		if a.Date != b.Date {
			return int(a.Date - b.Date)
		}
		switch {
		case a.UID < b.UID:
			return -1
		case a.UID > b.UID:
			return 1
		}
		return 0
	})
}
