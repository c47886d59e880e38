package pots

import (
	"fmt"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
	"fourturn/plants"
)

// mostAlike is how many pots alike may be added at once: more is a slip of a key.
const mostAlike = 500

// Add puts a new pot behind the chosen one and chooses it. It is an ordinary 30 cm
// round pot until somebody measures it.
func (s *Screen) Add() error {
	plan := s.session.Plan()
	pot := planner.Pot{
		ID:     planner.FreeID("pot", func(id string) bool { return plan.Pot(id) != nil }),
		Name:   s.words.T("pots.new_name"),
		Vessel: reshaped(vessel.Spec{}, vessel.Round),
	}
	after := ""
	if chosen := s.Chosen(); chosen != nil {
		after, pot.Spot = chosen.ID, chosen.Spot
		pot.Plantings = chosen.Plantings
	} else if len(plan.Spots) > 0 {
		pot.Spot = plan.Spots[0].ID
	}
	return s.insert("pots.edit_add", after, []planner.Pot{pot}, s.about(&pot))
}

// Duplicate puts n pots like the chosen one behind it and chooses the first.
func (s *Screen) Duplicate(n int) error {
	pot := s.Chosen()
	if pot == nil {
		return nil
	}
	if n < 1 || n > mostAlike {
		return &words.Refusal{Text: s.words.T("pots.alike_range", map[string]any{"most": mostAlike})}
	}
	taken := s.taken()
	pots := make([]planner.Pot, n)
	for i := range pots {
		pots[i] = *pot
		taken.name(&pots[i], pot.Label(), true)
	}
	args := append(s.about(pot), finding.Arg{Name: "count", Value: working.Number(float64(n), working.None)})
	return s.insert("pots.edit_duplicate", pot.ID, pots, args)
}

// taken are the ids and names that pots of the plan have.
type taken struct {
	ids, names map[string]bool
	next       map[string]int // where the search for a free number of a name begins
}

func (s *Screen) taken() taken {
	t := taken{ids: map[string]bool{}, names: map[string]bool{}, next: map[string]int{}}
	for i := range s.session.Plan().Pots {
		pot := &s.session.Plan().Pots[i]
		t.ids[pot.ID], t.names[pot.Label()] = true, true
	}
	return t
}

// name gives a pot a name of its own, with a number behind it where the name is
// there already or is to have one, and an id.
func (t taken) name(pot *planner.Pot, name string, numbered bool) {
	pot.Name = name
	for n := max(2, t.next[name]); numbered && (pot.Name == name || t.names[pot.Name]); n++ {
		pot.Name = fmt.Sprintf("%s %d", name, n)
		t.next[name] = n + 1
	}
	base := plants.NewID(pot.Name)
	if base == "" {
		base = "pot"
	}
	pot.ID = planner.FreeID(base, func(id string) bool { return t.ids[id] })
	t.ids[pot.ID], t.names[pot.Name] = true, true
}

func (s *Screen) insert(name, after string, pots []planner.Pot, args []finding.Arg) error {
	err := s.session.Do(name, args, func(p planner.Plan) (planner.Plan, error) { return p.WithNewPots(after, pots...) })
	if err == nil {
		s.chosen = pots[0].ID
	}
	return s.readable(err)
}

// Remove takes the chosen pot out of the plan and chooses its neighbour. Undo brings
// it back.
func (s *Screen) Remove() error {
	pot := s.Chosen()
	if pot == nil {
		return nil
	}
	plan := s.session.Plan()
	i := plan.PotIndex(pot.ID)
	neighbour := ""
	switch {
	case i+1 < len(plan.Pots):
		neighbour = plan.Pots[i+1].ID
	case i > 0:
		neighbour = plan.Pots[i-1].ID
	}
	id := pot.ID
	err := s.session.Do("pots.edit_remove", s.about(pot), func(p planner.Plan) (planner.Plan, error) { return p.WithoutPot(id) })
	if err == nil {
		s.chosen = neighbour
	}
	return s.readable(err)
}
