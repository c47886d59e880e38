package session

import (
	"context"

	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/planfile"
)

// Config is what a session needs from the program around it.
type Config[O any] struct {
	// Store reads and writes plan files and journals.
	Store *planfile.Store
	// Holder says who we are, for the lock of the file.
	Holder planfile.Holder
	// WorkOut works everything out for a plan. It runs outside the interface
	// goroutine, must not change the plan, and may give up when its context is done.
	WorkOut func(ctx context.Context, plan *planner.Plan) O
	// Post runs a function on the interface goroutine, later and in order. It
	// must not wait for the function to run.
	Post func(func())
}

// Session is the open plan. O is what is worked out from it. Its methods are
// called on the interface goroutine.
type Session[O any] struct {
	config Config[O]

	plan     *planner.Plan
	revision uint64
	done     []Step
	undone   []Step

	file  file
	saved *planner.Plan // the plan that the file holds; nil where it holds none

	outlook    O
	outlookFor uint64 // revision that outlook belongs to; 0 is none
	recompute  recompute
	errands    map[int]*errand
	nextErrand int

	disk      queue // plan files, which may lie on a drive that hangs
	state     queue // the journal, which must be written all the same
	journal   journal
	busy      map[Work]int
	listeners map[int]func(Event)
	nextID    int
	closed    bool
}

// New returns a session with an empty plan and no file.
func New[O any](config Config[O]) *Session[O] {
	if config.Store == nil || config.WorkOut == nil || config.Post == nil {
		panic("session: incomplete configuration")
	}
	s := &Session[O]{
		config:    config,
		busy:      map[Work]int{},
		listeners: map[int]func(Event){},
		errands:   map[int]*errand{},
	}
	s.journal.store = config.Store
	s.adopt(&planner.Plan{Risk: planner.DefaultRisk}, file{}, true)
	return s
}

// Plan returns the current plan. Nobody may change what it points to.
func (s *Session[O]) Plan() *planner.Plan { return s.plan }

// Revision counts the changes of the plan, undo and redo included.
func (s *Session[O]) Revision() uint64 { return s.revision }

// Outlook returns what was last worked out, and whether it belongs to the current
// plan. Until the first answer it is the zero value of O.
func (s *Session[O]) Outlook() (outlook O, current bool) {
	return s.outlook, s.outlookFor == s.revision
}

// Dirty reports whether the plan holds work that its file does not. Undoing back
// to what was saved makes it clean again.
func (s *Session[O]) Dirty() bool { return s.plan != s.saved }

// Start replaces the plan by one that has no file, such as a new or an example
// plan. The edits before it are forgotten. The error is [ErrUnsaved] while there
// is unsaved work, or [planfile.Problems] if the plan is not well formed.
func (s *Session[O]) Start(plan *planner.Plan) error {
	if s.Dirty() {
		return ErrUnsaved
	}
	if err := planfile.Check(plan); err != nil {
		return err
	}
	s.adopt(plan, file{}, true)
	return nil
}

// adopt makes a plan the current one, with its file and without a past.
func (s *Session[O]) adopt(plan *planner.Plan, f file, clean bool) {
	if f.lock != s.file.lock {
		old := s.file.lock
		s.disk.add(old.Release)
	}
	s.file = f
	s.saved = nil
	if clean {
		s.saved = plan
	} else if f.document != nil {
		s.saved = f.document.Plan()
	}
	s.done, s.undone = nil, nil
	s.show(plan)
	s.notify(PlanChanged | FileChanged)
}

// show makes a plan the current value and has it worked out.
func (s *Session[O]) show(plan *planner.Plan) {
	s.plan = plan
	s.revision++
	s.dropErrands()
	s.startWork()
	s.keepUnsaved()
}

// Position returns the line and column of a part of the plan in the file as it
// was last read or saved; ok is false where it is not there.
func (s *Session[O]) Position(where finding.Where) (line, column int, ok bool) {
	if s.file.document == nil {
		return 0, 0, false
	}
	return s.file.document.Position(where)
}

// Close ends the session once all that was to be written is written. Unsaved
// work stays in the journal for the next start; see [Session.Discard].
func (s *Session[O]) Close() { s.CloseContext(context.Background()) }

// CloseContext is [Session.Close], but does not wait for plan files longer than
// the context allows: a drive that hangs must not keep the program from ending.
// The journal is written in any case.
func (s *Session[O]) CloseContext(ctx context.Context) {
	if s.closed {
		return
	}
	s.closed = true
	s.recompute.stop()
	s.stopErrands()
	s.state.add(s.journal.close)
	s.disk.add(s.file.lock.Release)
	s.state.wait(context.Background())
	s.disk.wait(ctx)
}
