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
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
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
	return Figure{
		Label: s.words.T(key), Value: s.words.Named(key, f.Value, s.session.Plan().Units), Soft: trace.Soft(), Figure: f,
	}
}

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
		name := id
		if p := plan.Product(id); p != nil && p.Name != "" {
			name = p.Name
		}
		list = append(list, Product{ID: id, Letter: letter(i), Name: name, Next: next != nil && next.Product == id})
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
	When    string
	Late    bool
	Done    bool
	Letter  string
	Product string
	Pots    string
	Water   Figure
	Cans    Figure
	Dose    Figure
	Spoons  Figure
	round   *planner.Round
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
		When: s.words.WeekdayDate(r.Date), Late: !r.Done && r.Date < all.Today, Done: r.Done, Letter: "–", Product: r.Product,
		Pots:  s.words.T("feeding.pots", words.A{"count": len(r.Pots)}),
		Water: s.figure("feeding.water", r.Water), Cans: s.figure("feeding.cans", r.Cans),
		Dose: s.figure("feeding.dose", r.Dose), Spoons: s.figure("feeding.spoons", r.Spoons), round: r,
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
		product = r.round.Product
	}
	return s.enter("feeding.edit_fed", r, planner.Entry{Kind: planner.Fed, Product: product})
}

// LeaveOut enters that a round was left out today, for rain, say. The same product
// stays next.
func (s *Screen) LeaveOut(r Round) error {
	return s.enter("feeding.edit_skipped", r, planner.Entry{Kind: planner.Skipped})
}

func (s *Screen) enter(name string, r Round, e planner.Entry) error {
	all, _ := s.session.Outlook()
	e.ID, e.Date = s.newID(), all.Today
	for _, i := range r.round.Pots {
		e.Pots = append(e.Pots, all.Pots[i].Pot.ID)
	}
	args := []finding.Arg{{Name: "product", Value: working.Text(r.Product)}, {Name: "pots", Value: working.Text(r.Pots)}}
	return s.session.Do(name, args, func(p planner.Plan) (planner.Plan, error) { return p.WithEntry(e), nil })
}

// FieldError refuses what was typed into a field; its text is for the person.
type FieldError struct{ Text string }

// Error returns the text.
func (e *FieldError) Error() string { return e.Text }

// Can returns the volume of the can, written out.
func (s *Screen) Can() string {
	return s.words.Water(s.can(), s.session.Plan().Units)
}

const usualCan = 9 * quantity.Litre // as the nutrition chapter takes it

func (s *Screen) can() quantity.Volume {
	if c := s.session.Plan().Feeding.Can; c > 0 {
		return c
	}
	return usualCan
}

// SetCan changes the volume of the can.
func (s *Screen) SetCan(typed string) error {
	unit := quantity.Litre
	if s.session.Plan().Units == quantity.USCustomary {
		unit = quantity.Gallon
	}
	v, err := quantity.ParseVolume(typed, unit)
	if err != nil {
		return s.refusal(err)
	}
	err = s.session.Do("feeding.edit_can", nil, func(p planner.Plan) (planner.Plan, error) {
		p.Feeding.Can = v
		return p, nil
	})
	if err != nil {
		return &FieldError{Text: s.words.T("feeding.can_range")}
	}
	return nil
}
