package session

import (
	"errors"
	"slices"

	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/planfile"
)

// Step is one edit that can be undone. Name is the key of its name, such as
// "edit.pot_size", and Args are what the name's text needs.
type Step struct {
	Name   string
	Args   []finding.Arg
	before *planner.Plan
	after  *planner.Plan
}

// ErrNothingToDo is returned by an edit that finds the plan already as it would
// make it. The session takes no step then and reports no error.
var ErrNothingToDo = errors.New("session: nothing to do")

// ErrReadOnly is the error of an edit of a plan that may only be looked at,
// because a newer version of the program made it.
var ErrReadOnly = errors.New("session: the plan may only be looked at")

// Do changes the plan by a named edit. The edit gets a copy of the current plan
// and returns the changed one; lists in it are shared with the current plan, so
// an edit copies a list before it changes an item. An error of the edit, or of a
// result that fails [planfile.Check], leaves everything as it was and is returned.
func (s *Session[O]) Do(name string, args []finding.Arg, edit func(planner.Plan) (planner.Plan, error)) error {
	changed, err := s.try(edit)
	if changed != nil {
		s.take(Step{Name: name, Args: args, before: s.plan, after: changed})
	}
	return err
}

// Amend is [Session.Do] for edits that come in quick succession, as while a slider
// is dragged: one with the same name and arguments as the last becomes one step
// with it, unless that one was saved or undone to.
func (s *Session[O]) Amend(name string, args []finding.Arg, edit func(planner.Plan) (planner.Plan, error)) error {
	changed, err := s.try(edit)
	if changed == nil {
		return err
	}
	step := Step{Name: name, Args: args, before: s.plan, after: changed}
	if last, ok := s.UndoStep(); ok && last.Name == name && slices.Equal(last.Args, args) && s.Dirty() && len(s.undone) == 0 {
		step.before = last.before
		s.done = s.done[:len(s.done)-1]
	}
	s.take(step)
	return nil
}

// try makes an edit without taking the step; nil means that there is none to take.
func (s *Session[O]) try(edit func(planner.Plan) (planner.Plan, error)) (*planner.Plan, error) {
	if s.ReadOnly() {
		return nil, ErrReadOnly
	}
	changed, err := edit(*s.plan)
	if errors.Is(err, ErrNothingToDo) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	if err := planfile.Check(&changed); err != nil {
		return nil, err
	}
	return &changed, nil
}

// How many steps can be undone: a thousand, and fewer for large plans, since each
// edit of a pot copies the list of pots (some 600 bytes each, so the limit is
// about 250 MB), but always twenty.
const (
	mostSteps      = 1000
	mostPotsCopied = 400_000
	leastSteps     = 20
)

// take makes a step.
func (s *Session[O]) take(step Step) {
	s.done = append(s.done, step)
	keep := max(leastSteps, min(mostSteps, mostPotsCopied/max(1, len(step.after.Pots))))
	if extra := len(s.done) - keep; extra > 0 {
		s.done = append([]Step(nil), s.done[extra:]...)
	}
	s.undone = nil
	s.show(step.after)
	s.notify(PlanChanged | FileChanged)
}

// Undo takes back the last edit. It does nothing where there is none.
func (s *Session[O]) Undo() {
	if len(s.done) == 0 {
		return
	}
	last := len(s.done) - 1
	step := s.done[last]
	s.done = s.done[:last]
	s.undone = append(s.undone, step)
	s.show(step.before)
	s.notify(PlanChanged | FileChanged)
}

// Redo makes the last undone edit again. It does nothing where there is none.
func (s *Session[O]) Redo() {
	if len(s.undone) == 0 {
		return
	}
	last := len(s.undone) - 1
	step := s.undone[last]
	s.undone = s.undone[:last]
	s.done = append(s.done, step)
	s.show(step.after)
	s.notify(PlanChanged | FileChanged)
}

// UndoStep returns the edit that [Session.Undo] would take back.
func (s *Session[O]) UndoStep() (Step, bool) { return lastStep(s.done) }

// RedoStep returns the edit that [Session.Redo] would make again.
func (s *Session[O]) RedoStep() (Step, bool) { return lastStep(s.undone) }

func lastStep(steps []Step) (Step, bool) {
	if len(steps) == 0 {
		return Step{}, false
	}
	return steps[len(steps)-1], true
}
