package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/export/ics"
)

// runCalendar writes the change-outs and rounds of a plan to a calendar file. A file
// that is there is brought up to date: what moved keeps its place in the phone's
// calendar, what fell away is cancelled.
func runCalendar(t *terminal, args []string) int {
	o, ok := parseOptions(args, true, "-o", "--today")
	if !ok || o.out == "" {
		return usage(t, "calendar")
	}
	document, ok := readPlan(t, o.plan)
	if !ok {
		return exitFault
	}
	if o.today.IsZero() {
		o.today = t.today()
	}
	outlook := planner.WorkOut(document.Plan(), reference(), o.today)
	before, err := calendarBefore(o.out)
	if err != nil {
		t.complain("command.cannot_read", words.A{"file": o.out, "cause": cause(err)})
		return exitFault
	}
	entries := ics.Update(before, calendarEntries(t.words, outlook), o.today.AddDays(-calendarKeep))
	ics.Sort(entries)
	if err := writeCalendar(o.out, ics.Calendar{Name: document.Plan().Title, Entries: entries}, t.now()); err != nil {
		t.complain("command.cannot_write", words.A{"file": o.out, "cause": cause(err)})
		return exitFault
	}
	t.say("command.calendar_written", words.A{"entries": len(entries), "file": o.out})
	return exitGood
}

// calendarKeep is how many days a cancelled entry is still written, so that phones
// that are seldom updated learn of it.
const calendarKeep = 60

// calendarBefore returns the entries of a calendar file, none where there is no file.
func calendarBefore(path string) ([]ics.Entry, error) {
	text, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	calendar, err := ics.Read(bytes.NewReader(text))
	return calendar.Entries, err
}

// writeCalendar writes the file whole or not at all.
func writeCalendar(path string, calendar ics.Calendar, now time.Time) error {
	var text bytes.Buffer
	if err := ics.Write(&text, calendar, now); err != nil {
		return err
	}
	temporary, err := os.CreateTemp(filepath.Dir(path), ".calendar-*")
	if err != nil {
		return err
	}
	defer os.Remove(temporary.Name()) // gone already when the rename went well
	if _, err := temporary.Write(text.Bytes()); err != nil {
		temporary.Close()
		return err
	}
	if err := errors.Join(temporary.Sync(), temporary.Close()); err != nil {
		return err
	}
	const readable = 0o644 // as any file that is handed on
	if err := os.Chmod(temporary.Name(), readable); err != nil {
		return err
	}
	return os.Rename(temporary.Name(), path)
}

// calendarEntries are the coming change-outs and rounds as days of a calendar: one
// entry a round, not one a pot.
func calendarEntries(w *words.Words, o *planner.Outlook) []ics.Entry {
	morning := []ics.Alarm{{At: 8 * time.Hour}}
	var entries []ics.Entry
	for _, r := range o.Rounds {
		if r.Done || r.Date < o.Today {
			continue
		}
		entries = append(entries, ics.Entry{
			UID: ics.UID("round", o.Plan.Title, r.Date.String()), Date: r.Date, Alarms: morning,
			Summary:     w.T("calendar.round", words.A{"product": o.Plan.ProductLabel(r.Product), "count": len(r.Pots)}),
			Description: roundText(w, o, r),
		})
	}
	type change struct {
		day    civil.Date
		season planner.Season
	}
	pots := map[change][]string{}
	var order []change
	for i := range o.Pots {
		for _, s := range o.Pots[i].Stands {
			if s.Happened || s.From < o.Today {
				continue
			}
			c := change{s.From, s.Season}
			if pots[c] == nil {
				order = append(order, c)
			}
			pots[c] = append(pots[c], o.Pots[i].Pot.Name)
		}
	}
	for _, c := range order {
		entries = append(entries, ics.Entry{
			UID:  ics.UID("change-out", o.Plan.Title, string(c.season), fmt.Sprint(c.day.Year())+"-"+c.day.Month().String()),
			Date: c.day, Alarms: []ics.Alarm{{DaysBefore: 7, At: 8 * time.Hour}, {At: 8 * time.Hour}},
			Summary:     w.T("calendar.change_out", words.A{"season": w.T("plan.season." + string(c.season)), "count": len(pots[c])}),
			Description: w.List(pots[c]...),
		})
	}
	return distinct(entries)
}

func roundText(w *words.Words, o *planner.Outlook, r planner.Round) string {
	units := o.Plan.Units
	return w.T("calendar.round_text", words.A{
		"water": w.Named("feed.water", r.Water.Value, units), "dose": w.Value(r.Dose.Value, units), "spoons": w.Value(r.Spoons.Value, units),
	})
}

// distinct gives entries that share a UID one that tells them apart by their day:
// pots at different spots change into a season on different days of a month.
func distinct(entries []ics.Entry) []ics.Entry {
	seen := map[string]bool{}
	for i := range entries {
		if seen[entries[i].UID] {
			entries[i].UID = ics.UID(entries[i].UID, entries[i].Date.String())
		}
		seen[entries[i].UID] = true
	}
	return entries
}
