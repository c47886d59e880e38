// Package feeding is the alternating feeds: which product is whose turn, the coming
// rounds with what goes into the can, what each pot really had, and the slow release
// that is still in the mix.
//
// It draws nothing. Feeds take turns by count, not by date: a round that is left out or
// done with another product moves the turn along, and nothing is doubled.
package feeding

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

// Screen is the page of feeds.
type Screen struct {
	session *Session
	words   *words.Words
	newID   func() string
}

// New returns the page of a session. newID makes the ids of log entries.
func New(s *Session, w *words.Words, newID func() string) *Screen {
	return &Screen{session: s, words: w, newID: newID}
}

// Known reports whether anything is worked out yet.
func (s *Screen) Known() bool {
	all, _ := s.session.Outlook()
	return all != nil
}

// Figure is a value with its working, written out.
type Figure struct {
	Label  string
	Value  string
	Soft   bool
	Figure planner.Figure
}

func (s *Screen) figure(key string, f planner.Figure) Figure {
	if f.IsZero() {
		return Figure{Label: s.words.T(key), Value: "–"}
	}
	trace := f.Working()
	value := s.words.Named(key, f.Value, s.session.Plan().Units)
	if unit, ok := spoonUnits[key]; ok {
		value = s.words.T(unit, words.A{"n": value})
	}
	return Figure{Label: s.words.T(key), Value: value, Soft: trace.Soft(), Figure: f}
}

// spoonUnits are the figures that are written with the unit of a spoon.
var spoonUnits = map[string]string{"feeding.spoons": "feeding.tsp", "feeding.tablespoons": "feeding.tbsp"}

// Product is one soluble product in the turn.
type Product struct {
	ID     string
	Letter string // A, B, … in the order of the turn
	Name   string
	Next   bool // it is this one's turn
}

// Products returns the turn.
func (s *Screen) Products() []Product {
	plan := s.session.Plan()
	next := s.next()
	var list []Product
	for i, id := range plan.Feeding.Turn {
		list = append(list, Product{ID: id, Letter: letter(i), Name: plan.ProductLabel(id), Next: next != nil && next.Product == id})
	}
	return list
}

func letter(i int) string { return string(rune('A' + i)) }

// next returns the next round that is not done, or nil.
func (s *Screen) next() *planner.Round {
	all, _ := s.session.Outlook()
	if all == nil {
		return nil
	}
	for i := range all.Rounds {
		if !all.Rounds[i].Done {
			return &all.Rounds[i]
		}
	}
	return nil
}

// Round is one feeding day.
type Round struct {
	When     string
	Late     bool
	Done     bool
	Letter   string
	Product  string
	Pots     string
	Water    Figure
	Cans     Figure
	Dose     Figure
	Spoons   Figure
	Strength Figure // of nitrogen in the can
	EC       Figure // of feed and water; "–" where no slope is known
	Weaker   string // how many pots get it weaker, or ""
	date     civil.Date
	product  string   // id
	pots     []string // ids, since another plan may number its pots otherwise
}

// Rounds returns the coming rounds, at most n of them.
func (s *Screen) Rounds(n int) []Round {
	all, _ := s.session.Outlook()
	if all == nil {
		return nil
	}
	var list []Round
	for i := range all.Rounds {
		r := &all.Rounds[i]
		if r.Done {
			continue
		}
		if len(list) == n {
			break
		}
		list = append(list, s.row(all, r))
	}
	return list
}

// Past returns the rounds that were done, the latest first, at most n of them.
func (s *Screen) Past(n int) []Round {
	all, _ := s.session.Outlook()
	if all == nil {
		return nil
	}
	var list []Round
	for i := len(all.Rounds) - 1; i >= 0 && len(list) < n; i-- {
		if r := &all.Rounds[i]; r.Done {
			list = append(list, s.row(all, r))
		}
	}
	return list
}

func (s *Screen) row(all *planner.Outlook, r *planner.Round) Round {
	row := Round{
		When: s.words.WeekdayDate(r.Date), Late: !r.Done && r.Date < all.Today, Done: r.Done, Letter: "–", Product: all.Plan.ProductLabel(r.Product),
		Pots:  s.words.T("feeding.pots", words.A{"count": len(r.Pots)}),
		Water: s.figure("feeding.water", r.Water), Cans: s.figure("feeding.cans", r.Cans),
		Dose: s.figure("feeding.dose", r.Dose), Spoons: s.figure("feeding.spoons", r.Spoons),
		Strength: s.figure("feeding.strength", r.Strength), EC: s.figure("feeding.ec", r.EC),
		date: r.Date, product: r.Product,
	}
	if r.Weaker > 0 {
		row.Weaker = s.words.T("feeding.weaker", words.A{"count": r.Weaker})
	}
	for _, i := range r.Pots {
		row.pots = append(row.pots, all.Pots[i].Pot.ID)
	}
	for _, p := range s.Products() {
		if p.ID == r.Product {
			row.Letter, row.Product = p.Letter, p.Name
		}
	}
	return row
}

// Tick enters that a round was done today with a product of the turn; "" means with
// the one that was planned.
func (s *Screen) Tick(r Round, product string) error {
	if product == "" {
		product = r.product
	}
	return s.enter("feeding.edit_fed", r, planner.Entry{Kind: planner.Fed, Product: product})
}

// CanLeaveOut reports whether a round falls into the coming week. Only then is it
// known that it is not needed, as for rain.
func (s *Screen) CanLeaveOut(r Round) bool {
	const week = 7
	all, _ := s.session.Outlook()
	return all != nil && r.date < all.Today.AddDays(week)
}

// LeaveOut enters that a round was left out today, for rain, say. The same product
// stays next. A round of a later week is refused.
func (s *Screen) LeaveOut(r Round) error {
	if !s.CanLeaveOut(r) {
		return &words.Refusal{Text: s.words.T("feeding.too_early", words.A{"date": r.When})}
	}
	return s.enter("feeding.edit_skipped", r, planner.Entry{Kind: planner.Skipped})
}

func (s *Screen) enter(name string, r Round, e planner.Entry) error {
	all, _ := s.session.Outlook()
	if all == nil {
		return nil
	}
	e.ID, e.Date = s.newID(), all.Today
	args := []finding.Arg{{Name: "product", Value: working.Text(s.productName(e, r))}, {Name: "pots", Value: working.Text(r.Pots)}}
	err := s.session.Do(name, args, func(p planner.Plan) (planner.Plan, error) {
		e.Pots = nil
		for _, id := range r.pots {
			if p.Pot(id) != nil { // it may be gone since the list was drawn
				e.Pots = append(e.Pots, id)
			}
		}
		if len(e.Pots) == 0 {
			return p, session.ErrNothingToDo
		}
		return p.WithEntry(e), nil
	})
	if err != nil {
		return &words.Refusal{Text: s.words.T("feeding.refused", words.A{"cause": err.Error()})}
	}
	return nil
}

// productName is the name of what was really in the can.
func (s *Screen) productName(e planner.Entry, r Round) string {
	if e.Product == "" || e.Product == r.product {
		return r.Product
	}
	return s.session.Plan().ProductLabel(e.Product)
}
