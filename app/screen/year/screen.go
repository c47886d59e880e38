// Package year is every pot as a strip through the year: its plantings from change-out
// to change-out, the days on which each change-out can fall, and the feeds.
//
// It draws nothing. Days are the day numbers of [civil.Date]. Moving a change-out pins
// its day; the rest of the year goes around it.
package year

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

// Screen is the page of the year.
type Screen struct {
	session *Session
	words   *words.Words
}

// New returns the page of a session.
func New(s *Session, w *words.Words) *Screen { return &Screen{session: s, words: w} }

func (s *Screen) outlook() *planner.Outlook {
	all, _ := s.session.Outlook()
	return all
}

// Known reports whether anything is worked out yet.
func (s *Screen) Known() bool { return s.outlook() != nil }

// Today returns the day that the outlook was worked out for, or no day before that.
func (s *Screen) Today() civil.Date {
	if all := s.outlook(); all != nil {
		return all.Today
	}
	return 0
}

// Span returns the first day shown and the day after the last, or no days while
// nothing is worked out.
func (s *Screen) Span() (first, last civil.Date) {
	all := s.outlook()
	if all == nil {
		return 0, 0
	}
	return all.First, all.Last.AddDays(1)
}

// Tick is the first day of a month with its name; of a year in January.
type Tick struct {
	Day   civil.Date
	Label string
	Year  bool
}

// Ticks returns the months shown.
func (s *Screen) Ticks() []Tick {
	first, last := s.Span()
	y, m, _ := first.Date()
	var ticks []Tick
	for d := civil.New(y, m+1, 1); d < last; d = d.AddMonths(1) {
		t := Tick{Day: d, Label: s.words.ShortMonth(d.Month())}
		if d.Month() == 1 {
			t.Year, t.Label = true, s.words.MonthYear(d)
		}
		ticks = append(ticks, t)
	}
	return ticks
}

// Segment is one planting on a strip.
type Segment struct {
	From, To         civil.Date
	Earliest, Latest civil.Date
	Season           int // 0 spring to 3 winter
	Label            string
	Pinned           bool
	Happened         bool
	Start            planner.Figure
}

// Mark is one feed.
type Mark struct {
	Day  civil.Date
	Turn int // which product of the turn, from 0
	Done bool
}

// Row is one pot.
type Row struct {
	ID       string
	Label    string
	Detail   string
	Segments []Segment
	Feeds    []Mark
}

// Rows returns how many pots there are.
func (s *Screen) Rows() int {
	if all := s.outlook(); all != nil {
		return len(all.Pots)
	}
	return 0
}

// Row returns the strip of one pot.
func (s *Screen) Row(i int) Row {
	all := s.outlook()
	p := &all.Pots[i]
	row := Row{
		ID: p.Pot.ID, Label: p.Pot.Label(),
		Segments: make([]Segment, 0, len(p.Stands)), Feeds: make([]Mark, 0, len(p.Feeds)),
	}
	if p.Spot != nil {
		row.Detail = p.Spot.Name
	}
	for k := range p.Stands {
		st := &p.Stands[k]
		row.Segments = append(row.Segments, Segment{
			From: st.From, To: st.To, Earliest: st.Earliest, Latest: st.Latest, Season: seasonIndex(st.Season),
			Label: s.name(all.Plan, st), Pinned: st.Pinned, Happened: st.Happened, Start: st.Start,
		})
	}
	for _, f := range p.Feeds {
		row.Feeds = append(row.Feeds, Mark{Day: f.Date, Turn: turnOf(all.Plan, f.Product), Done: f.Done})
	}
	return row
}

func seasonIndex(season planner.Season) int {
	for i, s := range planner.Seasons {
		if s == season {
			return i
		}
	}
	return 0
}

func turnOf(plan *planner.Plan, product string) int {
	for i, id := range plan.Feeding.Turn {
		if id == product {
			return i
		}
	}
	return len(plan.Feeding.Turn)
}

// name names a planting by its recipe, its first plant, or its season.
func (s *Screen) name(plan *planner.Plan, st *planner.Stand) string {
	if r := plan.Recipe(st.Planting.Recipe); r != nil && len(st.Planting.Plants) == 0 && r.Name != "" {
		return r.Name
	}
	if len(st.Plants) > 0 && st.Plants[0].Known != nil {
		return st.Plants[0].Known.Name()
	}
	return s.words.T("plan.season." + string(st.Season))
}

// Day writes a day out.
func (s *Screen) Day(d civil.Date) string { return s.words.WeekdayDate(d) }

// Refusal is why something was not done, in words for the person.
type Refusal struct{ Text string }

// Error returns the text.
func (e *Refusal) Error() string { return e.Text }

// Move pins the start of a planting to a day. What has happened stays as it was
// logged, and a day outside the days shown is refused.
func (s *Screen) Move(row, segment int, day civil.Date) error {
	pot, stand := s.at(row, segment)
	if stand == nil {
		return nil
	}
	if stand.Happened {
		return &Refusal{Text: s.words.T("year.happened")}
	}
	if first, last := s.Span(); day < first || day >= last {
		return &Refusal{Text: s.words.T("year.outside", words.A{"first": first, "last": last.AddDays(-1)})}
	}
	return s.pin("year.edit_move", pot, stand.Season, day)
}

// Unpin gives the day of a change-out back to the site. It does nothing to one that is
// not pinned.
func (s *Screen) Unpin(row, segment int) error {
	pot, stand := s.at(row, segment)
	if stand == nil || !stand.Pinned {
		return nil
	}
	return s.pin("year.edit_unpin", pot, stand.Season, 0)
}

// at returns the pot and the planting at a place of the strips, or nil.
func (s *Screen) at(row, segment int) (*planner.Pot, *planner.Stand) {
	all := s.outlook()
	if all == nil || row < 0 || row >= len(all.Pots) || segment < 0 || segment >= len(all.Pots[row].Stands) {
		return nil, nil
	}
	return all.Pots[row].Pot, &all.Pots[row].Stands[segment]
}

func (s *Screen) pin(name string, of *planner.Pot, season planner.Season, day civil.Date) error {
	args := []finding.Arg{
		{Name: "pot", Value: working.Text(of.Label())},
		{Name: "season", Value: working.Text("plan.season." + string(season))},
	}
	err := s.session.Do(name, args, func(plan planner.Plan) (planner.Plan, error) {
		return plan.WithPot(of.ID, func(pot *planner.Pot) {
			for i := range pot.Plantings {
				if pot.Plantings[i].Season == season {
					pot.Plantings[i].Start = day
				}
			}
		})
	})
	if err != nil {
		return &Refusal{Text: s.words.T("year.refused", words.A{"cause": err.Error()})}
	}
	return nil
}

// Told is what is said of one planting below the strips.
type Told struct {
	Title  string
	Spread string
	Reason string
	Start  planner.Figure
	Value  string
	Soft   bool
	Pinned bool
}

// Tell returns what is to be said of a planting.
func (s *Screen) Tell(row, segment int) Told {
	pot, st := s.at(row, segment)
	if st == nil {
		return Told{}
	}
	t := Told{
		Title: s.words.T("year.told", words.A{"pot": pot.Label(), "planting": s.name(s.outlook().Plan, st)}),
		Start: st.Start, Value: s.words.Date(st.From), Pinned: st.Pinned, Reason: s.words.T(st.Reason),
	}
	if !st.Start.IsZero() {
		trace := st.Start.Working()
		t.Soft = trace.Soft()
	}
	if !st.Earliest.IsZero() {
		t.Spread = s.words.DateRange(st.Earliest, st.Latest)
	}
	return t
}

// Risk returns the plan's appetite for risk in words.
func (s *Screen) Risk() string {
	return s.words.T("year.risk", words.A{"risk": s.words.Percent(s.session.Plan().Risk)})
}

// Risks are the named appetites, with the number of the plan's or -1.
func (s *Screen) Risks() (names []string, chosen int) {
	chosen = -1
	for i, r := range namedRisks {
		names = append(names, s.words.T(r.key, words.A{"risk": s.words.Percent(r.risk)}))
		if r.risk == s.session.Plan().Risk {
			chosen = i
		}
	}
	return names, chosen
}

var namedRisks = [...]struct {
	key  string
	risk float64
}{{"year.cautious", 0.10}, {"year.even", 0.50}, {"year.bold", 0.90}}

// SetRisk takes one of the named appetites.
func (s *Screen) SetRisk(i int) error {
	if i < 0 || i >= len(namedRisks) {
		return nil
	}
	risk := namedRisks[i].risk
	return s.session.Do("year.edit_risk", nil, func(p planner.Plan) (planner.Plan, error) {
		if p.Risk == risk {
			return p, session.ErrNothingToDo
		}
		p.Risk = risk
		return p, nil
	})
}
