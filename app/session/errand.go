package session

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"runtime/debug"
	"slices"
)

// Errand is work in the background that somebody waits for, such as the search for
// the best year of a pot. It reads what was worked out for the current plan and
// changes nothing.
type Errand[O, A any] struct {
	// Name is what goes on, for [Session.Busy].
	Name Work
	// Work does it, outside the interface goroutine. It should give up when its context
	// is done. What is worked out is not changed by anybody meanwhile.
	Work func(ctx context.Context, outlook O) (A, error)
	// Done gets the answer on the interface goroutine, once, and unless the session is
	// closed. The error is that of the work, a [*PanicError], [ErrStopped] or
	// [ErrStale].
	Done func(answer A, err error)
	// Outlasts says that the answer is wanted even where the plan changes meanwhile,
	// such as a print of it as it was.
	Outlasts bool
}

var (
	// ErrStopped is the error of an errand that was stopped.
	ErrStopped = errors.New("session: stopped")
	// ErrStale is the error of an errand whose answer no longer fits, since the plan was
	// changed or the day is another.
	ErrStale = errors.New("session: the plan has changed meanwhile")
)

// PanicError is a programming error that stopped an errand.
type PanicError struct {
	Value any
	Stack []byte
}

// Error says what went wrong, without the stack.
func (e *PanicError) Error() string { return fmt.Sprintf("session: an errand failed: %v", e.Value) }

// errand is one that is under way or waits for what it reads.
type errand struct {
	outlasts bool
	run      func()
	end      func(error)
}

// Send starts an errand, as soon as the current plan is worked out. The function that
// it returns stops it; it does nothing once the errand is done.
func Send[O, A any](s *Session[O], e Errand[O, A]) (stop func()) {
	if e.Work == nil || e.Done == nil {
		panic("session: an errand without work or without somebody who waits")
	}
	if s.closed {
		return func() {}
	}
	ctx, cancel := context.WithCancel(context.Background())
	id := s.nextErrand
	s.nextErrand++
	finish := func(answer A, err error) {
		if _, open := s.errands[id]; !open {
			return
		}
		delete(s.errands, id)
		cancel()
		s.end(e.Name)
		e.Done(answer, err)
	}
	end := func(err error) {
		cancel()
		s.config.Post(func() {
			var none A
			finish(none, err)
		})
	}
	run := func() {
		outlook := s.outlook
		go func() {
			answer, err := guarded(ctx, outlook, e.Work)
			s.config.Post(func() { finish(answer, err) })
		}()
	}
	s.errands[id] = &errand{outlasts: e.Outlasts, run: run, end: end}
	s.begin(e.Name)
	s.runErrands()
	return func() {
		if s.errands[id] != nil {
			end(ErrStopped)
		}
	}
}

// guarded does the work and turns a panic into an error.
func guarded[O, A any](ctx context.Context, outlook O, work func(context.Context, O) (A, error)) (answer A, err error) {
	defer func() {
		if value := recover(); value != nil {
			err = &PanicError{Value: value, Stack: debug.Stack()}
		}
	}()
	return work(ctx, outlook)
}

// runErrands starts those that wait, once what they read belongs to the current plan.
func (s *Session[O]) runErrands() {
	if s.outlookFor != s.revision {
		return
	}
	for _, e := range s.openErrands() {
		if run := e.run; run != nil {
			e.run = nil
			run()
		}
	}
}

// dropErrands ends those whose answer no longer fits the plan.
func (s *Session[O]) dropErrands() {
	for _, e := range s.openErrands() {
		if !e.outlasts {
			e.end(ErrStale)
		}
	}
}

// stopErrands gives all of them up without a word to anybody.
func (s *Session[O]) stopErrands() {
	for _, e := range s.openErrands() {
		e.end(ErrStopped)
	}
	clear(s.errands)
}

// openErrands lists those that are not done, in the order in which they came.
func (s *Session[O]) openErrands() []*errand {
	var list []*errand
	for _, id := range slices.Sorted(maps.Keys(s.errands)) {
		list = append(list, s.errands[id])
	}
	return list
}
