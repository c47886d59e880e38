package main

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
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
	today := o.day(t)
	outlook := planner.WorkOut(document.Plan(), reference(t), today)
	before, err := calendarBefore(o.out)
	if err != nil {
		t.complain("command.cannot_read", words.A{"file": o.out, "cause": cause(err)})
		return exitFault
	}
	entries := ics.Update(before, calendarEntries(t.words, outlook), today, today.AddDays(-calendarKeep))
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

// calendarEntries are the change-outs and rounds as days of a calendar: one entry a
// round, not one a pot. Each is known by what stays when its day moves: a round by its
// number in the plan, a change-out by its season, its year and the first of its pots.
func calendarEntries(w *words.Words, o *planner.Outlook) []ics.Entry {
	plan := o.Plan.ID
	if plan == "" {
		plan = o.Plan.Title
	}
	morning := []ics.Alarm{{At: reminderTime(o.Plan)}}
	var entries []ics.Entry
	for _, r := range o.Rounds {
		entry := ics.Entry{
			UID: ics.UID("round", plan, strconv.Itoa(r.Number)), Date: r.Date,
			Summary: w.T("calendar.round", words.A{"product": o.Plan.ProductLabel(r.Product), "count": len(r.Pots)}),
		}
		if !r.Done {
			entry.Alarms, entry.Description = morning, roundText(w, o, r)
		}
		entries = append(entries, entry)
	}
	return append(entries, changeEntries(w, o, plan)...)
}

// reminderTime returns the time of day at which the person wants to be reminded.
func reminderTime(plan *planner.Plan) time.Duration {
	at, err := time.Parse("15:04", plan.Reminders.At)
	if err != nil {
		return 8 * time.Hour
	}
	return time.Duration(at.Hour())*time.Hour + time.Duration(at.Minute())*time.Minute
}

// changeEntries are the coming change-outs: one entry for all pots that change over to a
// season on a day.
func changeEntries(w *words.Words, o *planner.Outlook, plan string) []ics.Entry {
	type change struct {
		day    civil.Date
		season planner.Season
	}
	pots := map[change][]int{}
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
			pots[c] = append(pots[c], i)
		}
	}
	var entries []ics.Entry
	at := reminderTime(o.Plan)
	for _, c := range order {
		var names []string
		for _, i := range pots[c] {
			names = append(names, o.Pots[i].Pot.Label())
		}
		first := o.Pots[pots[c][0]].Pot.ID
		entries = append(entries, ics.Entry{
			UID:  ics.UID("change-out", plan, string(c.season), strconv.Itoa(c.day.Year()), first),
			Date: c.day, Alarms: []ics.Alarm{{DaysBefore: 7, At: at}, {At: at}},
			Summary:     w.T("calendar.change_out", words.A{"season": w.T("plan.season." + string(c.season)), "count": len(names)}),
			Description: w.List(names...),
		})
	}
	return entries
}

func roundText(w *words.Words, o *planner.Outlook, r planner.Round) string {
	units := o.Plan.Units
	return w.T("calendar.round_text", words.A{
		"water": w.Named("feed.water", r.Water.Value, units), "dose": w.Value(r.Dose.Value, units), "spoons": w.Value(r.Spoons.Value, units),
	})
}
