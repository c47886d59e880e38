// Package due is what to do: the change-outs and feeding rounds that the plan asks for
// by a date, across all pots, to be ticked off or put off.
//
// It draws nothing. A tick enters in the log what really happened, on today's date;
// the rest of the year is then worked out from that.
package due

import (
	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// Session is the open plan with what is worked out for it.
type Session = session.Session[*planner.Outlook]

// Screen is the list of what is due.
type Screen struct {
	session *Session
	words   *words.Words
	newID   func() string
}

// New returns the list of a session. newID makes the ids of log entries; it must
// never give the same twice, even on two machines.
func New(s *Session, w *words.Words, newID func() string) *Screen {
	return &Screen{session: s, words: w, newID: newID}
}

// Group is a stretch of time with what is due in it.
type Group struct {
	Title string
	Tasks []Task
}

// Task is one piece of work.
type Task struct {
	Kind   planner.DueKind
	Title  string
	Detail string
	When   string
	Late   string         // such as "2 days late", or ""
	Count  string         // of pots
	Figure planner.Figure // its working, or zero
	due    planner.Due
	pots   []string // ids, since another plan may number its pots otherwise
}

// Feed reports whether the work is a feeding round; else it is a change-out.
func (t Task) Feed() bool { return t.Kind == planner.DueFeed }

const (
	weekDays  = 7
	monthDays = 31
)

// Known reports whether anything is worked out yet.
func (s *Screen) Known() bool {
	all, _ := s.session.Outlook()
	return all != nil
}

// Groups returns what is due: late, this week, this month and later, without the
// empty ones.
func (s *Screen) Groups() []Group {
	all, _ := s.session.Outlook()
	if all == nil {
		return nil
	}
	groups := []Group{
		{Title: s.words.T("due.late")},
		{Title: s.words.T("due.this_week")},
		{Title: s.words.T("due.this_month")},
		{Title: s.words.T("due.later")},
		{Title: s.words.T("due.asleep")},
	}
	for _, d := range all.Due {
		at := stretch(d.Date, all.Today)
		if !d.Until.IsZero() {
			at = len(groups) - 1
		}
		groups[at].Tasks = append(groups[at].Tasks, s.task(all, d))
	}
	full := groups[:0]
	for _, g := range groups {
		if len(g.Tasks) > 0 {
			full = append(full, g)
		}
	}
	return full
}

func stretch(day, today civil.Date) int {
	switch {
	case day < today:
		return 0
	case day < today.AddDays(weekDays):
		return 1
	case day < today.AddDays(monthDays):
		return 2
	}
	return 3
}

// Next returns the first work after what is listed, in one sentence, or "".
func (s *Screen) Next() string {
	all, _ := s.session.Outlook()
	if all == nil {
		return ""
	}
	next := civil.Date(0)
	for i := range all.Pots {
		for _, stand := range all.Pots[i].Stands {
			if stand.From > all.Today && (next.IsZero() || stand.From < next) {
				next = stand.From
			}
		}
	}
	for _, r := range all.Rounds {
		if !r.Done && r.Date > all.Today && (next.IsZero() || r.Date < next) {
			next = r.Date
		}
	}
	if next.IsZero() {
		return ""
	}
	return s.words.T("due.next", words.A{"date": s.words.WeekdayDate(next)})
}

func (s *Screen) task(all *planner.Outlook, d planner.Due) Task {
	t := Task{Kind: d.Kind, due: d, pots: ids(all, d.Pots), When: s.words.WeekdayDate(d.Date)}
	if d.Date < all.Today {
		t.Late = s.words.T("due.days_late", words.A{"count": d.Overdue(all.Today)})
	}
	t.Count = s.words.T("due.pots", words.A{"count": len(d.Pots)})
	switch d.Kind {
	case planner.DueFeed:
		s.feedTask(&t, all, d)
	case planner.DueChangeOut:
		s.changeTask(&t, all, d)
	}
	return t
}

func (s *Screen) feedTask(t *Task, all *planner.Outlook, d planner.Due) {
	r := &all.Rounds[d.Round]
	t.Title = s.words.T("due.feed", words.A{"product": all.Plan.ProductLabel(d.Product)})
	t.Detail = s.words.T("due.feed_detail", words.A{
		"count": count(r.Cans), "water": s.written("feed.water", r.Water), "cans": s.written("", r.Cans),
		"dose": s.written("", r.Dose), "spoons": s.written("", r.Spoons),
	})
	t.Figure = r.Dose
}

func (s *Screen) changeTask(t *Task, all *planner.Outlook, d planner.Due) {
	t.Title = s.words.T("due.change_out", words.A{"season": s.words.T("plan.season." + string(d.Season))})
	var names []string
	for _, i := range d.Pots {
		names = append(names, all.Pots[i].Pot.Label())
		if t.Figure.IsZero() {
			if stand := all.Pots[i].Standing(d.Date); stand != nil {
				t.Figure = stand.Start
			}
		}
	}
	t.Detail = s.words.List(shortened(s.words, names)...)
}

// shortened keeps a list of names short enough for one line.
func shortened(w *words.Words, names []string) []string {
	const most = 4
	if len(names) <= most {
		return names
	}
	return append(names[:most-1:most-1], w.T("due.more_pots", words.A{"count": len(names) - most + 1}))
}

// count is the number that a plural goes by; of no figure, that of many.
func count(f planner.Figure) float64 {
	if f.IsZero() {
		return 0
	}
	return f.Number()
}

func (s *Screen) written(name string, f planner.Figure) string {
	if f.IsZero() {
		return "–"
	}
	return s.words.Named(name, f.Value, s.session.Plan().Units)
}

// Tick enters in the log that the work was done today.
func (s *Screen) Tick(t Task) error {
	entry := planner.Entry{Kind: planner.Fed, Product: t.due.Product}
	name := "due.edit_fed"
	if t.Kind == planner.DueChangeOut {
		entry = planner.Entry{Kind: planner.Planted, Season: t.due.Season}
		name = "due.edit_planted"
	}
	return s.enter(name, t, entry)
}

// PutOff leaves a round out, or moves a change-out by a week. A round can be left out
// in the week that it falls into, since only then is it known that it is not needed.
func (s *Screen) PutOff(t Task) error {
	today := s.today()
	if t.Kind == planner.DueFeed {
		if t.due.Date >= today.AddDays(weekDays) {
			return &words.Refusal{Text: s.words.T("due.too_early", words.A{"date": s.words.WeekdayDate(t.due.Date)})}
		}
		return s.enter("due.edit_skipped", t, planner.Entry{Kind: planner.Skipped})
	}
	day := max(t.due.Date, today).AddDays(weekDays)
	return s.change("due.edit_put_off", t, func(p planner.Plan, pots []string) (planner.Plan, error) {
		return p.WithPots(pots, func(pot *planner.Pot) {
			for i := range pot.Plantings {
				if pot.Plantings[i].Season == t.due.Season {
					pot.Plantings[i].Start = day
				}
			}
		})
	})
}

func (s *Screen) today() civil.Date {
	all, _ := s.session.Outlook()
	if all == nil {
		panic("due: a task without an outlook")
	}
	return all.Today
}

func (s *Screen) enter(name string, t Task, e planner.Entry) error {
	e.ID, e.Date = s.newID(), s.today()
	return s.change(name, t, func(p planner.Plan, pots []string) (planner.Plan, error) {
		e.Pots = pots
		return p.WithEntry(e), nil
	})
}

// change is one edit of those pots of a task that the plan still has: the list may
// have been drawn before a pot was removed.
func (s *Screen) change(name string, t Task, edit func(planner.Plan, []string) (planner.Plan, error)) error {
	args := []finding.Arg{{Name: "task", Value: working.Text(t.Title)}}
	err := s.session.Do(name, args, func(p planner.Plan) (planner.Plan, error) {
		var pots []string
		for _, id := range t.pots {
			if p.Pot(id) != nil {
				pots = append(pots, id)
			}
		}
		if len(pots) == 0 {
			return p, session.ErrNothingToDo
		}
		return edit(p, pots)
	})
	if err != nil {
		return &words.Refusal{Text: s.words.T("due.refused", words.A{"cause": err.Error()})}
	}
	return nil
}

func ids(all *planner.Outlook, pots []int) []string {
	list := make([]string, len(pots))
	for i, p := range pots {
		list[i] = all.Pots[p].Pot.ID
	}
	return list
}
