package ics

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	ical "github.com/arran4/golang-ical"
)

// Calendar is a calendar file.
type Calendar struct {
	Name    string // as phones show it
	Entries []Entry
}

// The faults of a calendar that cannot be written; each error wraps one.
var (
	ErrNoUID     = errors.New("an entry has no UID")
	ErrDoubleUID = errors.New("two entries share a UID")
	ErrNoDate    = errors.New("an entry has no date")
	ErrAlarm     = errors.New("an alarm is not a time of day before or on the day")
	ErrSequence  = errors.New("a sequence is below zero")
)

// Write writes the calendar. stamp is when the file is made: RFC 5545 asks for it
// in every entry. It fails on entries without UID or date, on doubled UIDs, on
// alarms at no time of day, and when w does.
func Write(w io.Writer, c Calendar, stamp time.Time) error {
	cal := ical.NewCalendar()
	cal.SetProductId("-//Fourturn//Container planner//EN")
	cal.SetMethod(ical.MethodPublish)
	cal.SetCalscale("GREGORIAN")
	if name := strings.Join(strings.Fields(cleanText(c.Name)), " "); name != "" {
		cal.SetName(name)
		cal.SetXWRCalName(name)
	}
	seen := map[string]bool{}
	for i, e := range c.Entries {
		if err := e.check(); err != nil {
			return fmt.Errorf("calendar entry %d (%s): %w", i+1, e.Summary, err)
		}
		if seen[e.UID] {
			return fmt.Errorf("calendar entry %d (%s): %w: %s", i+1, e.Summary, ErrDoubleUID, e.UID)
		}
		seen[e.UID] = true
		addEvent(cal, e.clean(), stamp)
	}
	if err := cal.SerializeTo(w, ical.WithNewLine("\r\n"), ical.WithLineLength(75)); err != nil {
		return fmt.Errorf("writing a calendar: %w", err)
	}
	return nil
}

func (e Entry) check() error {
	switch {
	case strings.TrimSpace(cleanText(e.UID)) == "":
		return ErrNoUID
	case e.Date.IsZero():
		return ErrNoDate
	case e.Sequence < 0:
		return ErrSequence
	}
	for _, a := range e.Alarms {
		if a.DaysBefore < 0 || a.At < 0 || a.At >= 24*time.Hour || a.At%time.Second != 0 {
			return ErrAlarm
		}
	}
	return nil
}

func addEvent(cal *ical.Calendar, e Entry, stamp time.Time) {
	event := cal.AddEvent(e.UID)
	event.SetDtStampTime(stamp)
	event.SetModifiedAt(stamp)
	event.SetSequence(e.Sequence)
	event.SetAllDayStartAt(e.Date.Time())
	event.SetAllDayEndAt(e.Date.AddDays(e.Days).Time()) // the day after the last, section 3.6.1
	event.SetSummary(e.Summary)
	if e.Description != "" {
		event.SetDescription(e.Description)
	}
	if e.Category != "" {
		event.AddCategory(e.Category)
	}
	event.SetTimeTransparency(ical.TransparencyTransparent) // a feeding day does not block the diary
	if e.Cancelled {
		event.SetStatus(ical.ObjectStatusCancelled)
		return
	}
	event.SetStatus(ical.ObjectStatusConfirmed)
	for _, a := range e.Alarms {
		alarm := event.AddAlarm()
		alarm.SetAction(ical.ActionDisplay)
		alarm.SetTrigger(duration(a.trigger()))
		alarm.SetDescription(e.Summary)
	}
}

// duration writes a duration as in RFC 5545, section 3.3.6: -PT15H, PT7H30M.
func duration(d time.Duration) string {
	sign := ""
	if d < 0 {
		sign, d = "-", -d
	}
	var b strings.Builder
	b.WriteString(sign + "P")
	if days := d / (24 * time.Hour); days > 0 {
		fmt.Fprintf(&b, "%dD", days)
		d -= days * 24 * time.Hour
	}
	hours, minutes, seconds := d/time.Hour, d%time.Hour/time.Minute, d%time.Minute/time.Second
	switch {
	case seconds > 0:
		fmt.Fprintf(&b, "T%dH%dM%dS", hours, minutes, seconds)
	case minutes > 0:
		fmt.Fprintf(&b, "T%dH%dM", hours, minutes)
	case hours > 0 || !strings.HasSuffix(b.String(), "D"):
		fmt.Fprintf(&b, "T%dH", hours)
	}
	return b.String()
}
