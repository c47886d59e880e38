package session

import (
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/planfile"
	"fourturn/planner/working"
)

// Keys of the names of edits that bring in another state of the plan.
const (
	RestoreName   = "session.restore"    // with the argument {date}, the day of the copy
	MergeName     = "session.merge"      // of what someone else wrote into the file
	MergeCopyName = "session.merge_copy" // of another file
)

// Copies lists the previous states of the plan's file in the background, newest
// first. done is called on the interface goroutine.
func (s *Session[O]) Copies(done func([]planfile.Copy, error)) {
	path := s.file.path
	if path == "" {
		done(nil, ErrNoFile)
		return
	}
	s.disk.add(func() {
		copies, err := s.config.Store.Copies(path)
		s.config.Post(func() { done(copies, err) })
	})
}

// Preview reads a previous state in the background and compares it with the
// current plan: each difference tells what restoring it would change. done is
// called on the interface goroutine.
func (s *Session[O]) Preview(c planfile.Copy, done func(*planner.Plan, []planfile.Difference, error)) {
	now := s.plan
	s.disk.add(func() {
		d, err := s.config.Store.OpenCopy(c)
		if err != nil {
			s.config.Post(func() { done(nil, nil, err) })
			return
		}
		differences := planfile.Differences(now, d.Plan())
		s.config.Post(func() { done(d.Plan(), differences, nil) })
	})
}

// Restore makes a previous state the current plan, as one edit that can be
// undone. It is not saved by this.
func (s *Session[O]) Restore(c planfile.Copy, done func(error)) {
	if s.ReadOnly() {
		done(ErrReadOnly)
		return
	}
	now := s.plan
	s.begin(OpeningFile)
	s.disk.add(func() {
		d, err := s.config.Store.OpenCopy(c)
		s.config.Post(func() {
			s.end(OpeningFile)
			if err == nil && (s.plan != now || s.closed) {
				err = ErrMeanwhile // edited meanwhile: the person did not mean to lose that
			}
			if err != nil {
				done(err)
				return
			}
			date := finding.Arg{Name: "date", Value: working.Text(c.Made.Format("2006-01-02"))}
			s.take(Step{Name: RestoreName, Args: []finding.Arg{date}, before: now, after: d.Plan()})
			done(nil)
		})
	})
}

// FindUnsaved looks in the background for the work of sessions that ended without
// saving it, newest first. done is called on the interface goroutine.
func (s *Session[O]) FindUnsaved(done func([]planfile.Found, error)) {
	s.state.add(func() {
		found, err := s.config.Store.Unsaved()
		s.config.Post(func() { done(found, err) })
	})
}

// Forget lets go of the work that a session left behind.
func (s *Session[O]) Forget(found planfile.Found, done func(error)) {
	s.state.add(func() {
		err := s.config.Store.Forget(found)
		s.config.Post(func() { done(err) })
	})
}
