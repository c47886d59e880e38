package year

import (
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
)

// Told is what is said of one planting below the strips.
type Told struct {
	Title   string
	Start   planner.Figure
	Value   string // the day of its change-out
	Soft    bool
	Why     string // the spread of the day and the reason, in a line
	Pinned  bool
	Movable bool // its day can be pinned and moved
}

// Tell returns what is to be said of a planting.
func (s *Screen) Tell(row, segment int) Told {
	pot, st := s.at(row, segment)
	if st == nil {
		return Told{}
	}
	first, last := s.planned()
	t := Told{
		Title: s.words.T("year.told", words.A{"pot": pot.Label(), "planting": s.name(s.outlook().Plan, st)}),
		Start: st.Start, Value: s.words.Date(st.From), Pinned: st.Pinned,
		Movable: !st.Happened && st.From > first && st.From <= last,
	}
	if !st.Start.IsZero() {
		trace := st.Start.Working()
		t.Soft = trace.Soft()
	}
	var why []string
	if !st.Earliest.IsZero() && st.Earliest != st.Latest {
		why = append(why, s.words.T("year.spread_line", words.A{"range": s.words.DateRange(st.Earliest, st.Latest)}))
	}
	if !st.Good.From.IsZero() && st.Good.From != st.Good.Last() {
		why = append(why, s.words.T("year.good_line", words.A{"range": s.words.DateRange(st.Good.From, st.Good.Last())}))
	}
	if st.Reason != "" {
		why = append(why, words.Capital(s.words.T(st.Reason)))
	}
	t.Why = strings.Join(why, ". ")
	return t
}

// Standing returns the planting of a row that stands today, or the first.
func (s *Screen) Standing(row int) int {
	p := s.pot(row)
	if p == nil {
		return -1
	}
	for k := range p.Stands {
		if st := &p.Stands[k]; st.From <= s.Today() && s.Today() < st.To {
			return k
		}
	}
	return 0
}

// SiteName returns the name of the site whose weather is shown, or "".
func (s *Screen) SiteName() string {
	if site := s.site(); site != nil {
		return site.Site.Label()
	}
	return ""
}
