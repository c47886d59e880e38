package session

import (
	"errors"

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
	if s.ReadOnly() {
		return ErrReadOnly
	}
	changed, err := edit(*s.plan)
	if errors.Is(err, ErrNothingToDo) {
		return nil
	}
	if err != nil {
		return err
	}
	if err := planfile.Check(&changed); err != nil {
		return err
	}
	s.take(Step{Name: name, Args: args, before: s.plan, after: &changed})
	return nil
}

// take makes a step.
func (s *Session[O]) take(step Step) {
	s.done = append(s.done, step)
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
