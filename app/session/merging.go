package session

import (
	"crypto/sha256"
	"errors"

	"fourturn/planner"
	"fourturn/planner/planfile"
)

// ErrMeanwhile is the error of bringing in another version after the plan was edited
// or saved: the conflicts that the person was shown are no longer those there are.
// Compare anew.
var ErrMeanwhile = errors.New("session: the plan was changed meanwhile")

// Merging is another version of the plan, compared with it and not brought in yet.
// Nothing is changed by it and nothing is lost if it is dropped.
type Merging struct {
	Path      string // of the file that the other version is in
	Copy      bool   // it is another file than the plan's own
	Mine      *planner.Plan
	Theirs    *planner.Plan
	Conflicts []planfile.Conflict
	// Incoming is what bringing it in changes in the plan without a question.
	Incoming []planfile.Difference

	base     *planner.Plan // what both began from; of a copy, what they may have begun from, or nil
	document *planfile.Document
	stamp    planfile.Stamp
	file     string // the plan's own file when it was compared
}

// Nothing reports whether there is nothing to bring in.
func (m *Merging) Nothing() bool { return len(m.Conflicts) == 0 && len(m.Incoming) == 0 }

// CompareFile reads the plan's file, which someone else changed, in the background
// and compares it with the current plan; both began from the plan that was last read
// or saved. done is called on the interface goroutine. The error is [ErrNoFile] or a
// [planfile.FileError].
func (s *Session[O]) CompareFile(done func(*Merging, error)) {
	if s.file.document == nil {
		done(nil, ErrNoFile)
		return
	}
	s.compare(&Merging{Path: s.file.path, Mine: s.plan, base: s.file.document.Plan(), file: s.file.path}, done)
}

// CompareCopy reads another file of the same plan in the background, such as a second
// copy that a sync service dropped, and compares it with the current plan; see
// [planfile.MergeCopy]. The errors are [ErrReadOnly] and [planfile.FileError].
func (s *Session[O]) CompareCopy(path string, done func(*Merging, error)) {
	if s.ReadOnly() {
		done(nil, ErrReadOnly)
		return
	}
	s.compare(&Merging{Path: path, Copy: true, Mine: s.plan, file: s.file.path}, done)
}

func (s *Session[O]) compare(m *Merging, done func(*Merging, error)) {
	s.begin(OpeningFile)
	s.disk.add(func() {
		err := s.read(m)
		s.config.Post(func() {
			s.end(OpeningFile)
			if err != nil {
				done(nil, err)
				return
			}
			done(m, nil)
		})
	})
}

// read fills a comparison. It runs in the disk queue.
func (s *Session[O]) read(m *Merging) error {
	var err error
	if m.document, m.stamp, err = s.config.Store.Load(m.Path); err != nil {
		return err
	}
	if m.document.ReadOnly() { // what it holds is not known in full, and it may not be written to
		return &planfile.FileError{Action: planfile.Reading, Path: m.Path, Safe: planfile.FileUntouched, Err: planfile.ErrNewer}
	}
	m.Theirs = m.document.Plan()
	if m.Copy && m.file != "" {
		m.base = s.config.Store.Ancestor(m.file, m.Theirs)
	}
	usual, err := m.merge(nil)
	if err != nil {
		return err
	}
	m.Conflicts = usual.Conflicts
	kept, err := m.merge(func(planfile.Conflict) planfile.Side { return planfile.Mine })
	if err != nil {
		return err
	}
	m.Incoming = planfile.Differences(m.Mine, kept.Plan)
	return nil
}

func (m *Merging) merge(choose func(planfile.Conflict) planfile.Side) (*planfile.Merged, error) {
	if m.Copy {
		return planfile.MergeCopy(m.base, m.Mine, m.Theirs, choose)
	}
	return planfile.Merge(m.base, m.Mine, m.Theirs, choose)
}

// BringIn makes another version part of the plan, as one edit that can be undone.
// choose decides each conflict, or the usual side where it is nil. done gets what was
// merged, or [ErrMeanwhile] where the plan is no longer the one that was compared. The
// plan is not saved by this. Of a copy it is remembered that it was brought in, so
// that [Session.FindBeside] does not offer it again.
func (s *Session[O]) BringIn(m *Merging, choose func(planfile.Conflict) planfile.Side, done func(*planfile.Merged, error)) {
	s.begin(OpeningFile)
	s.disk.add(func() {
		merged, err := m.merge(choose)
		if err == nil && len(planfile.Differences(m.Theirs, merged.Plan)) == 0 {
			merged.Plan = m.Theirs // then there is nothing to save
		}
		changed := err == nil && len(planfile.Differences(m.Mine, merged.Plan)) > 0
		s.config.Post(func() {
			s.end(OpeningFile)
			if err == nil && (s.plan != m.Mine || s.file.path != m.file || s.closed) {
				err = ErrMeanwhile
			}
			if err != nil {
				done(nil, err)
				return
			}
			s.bringIn(m, merged.Plan, changed)
			done(merged, nil)
		})
	})
}

// bringIn takes a merged plan over; one that is as mine was is no edit.
func (s *Session[O]) bringIn(m *Merging, merged *planner.Plan, changed bool) {
	step := Step{Name: MergeCopyName, before: m.Mine, after: merged}
	if !m.Copy {
		step.Name = MergeName
		s.file.document, s.file.stamp = m.document, m.stamp
		s.saved = m.Theirs
	} else {
		s.settle(m.stamp.Sum)
	}
	if !changed {
		s.keepUnsaved()
		s.notify(FileChanged)
		return
	}
	s.take(step)
}

// FindBeside looks in the background for files that look like second copies of the
// plan; see [planfile.Store.Beside]. done is called on the interface goroutine; it
// gets none where the folder cannot be read.
func (s *Session[O]) FindBeside(done func([]planfile.Beside)) {
	path, plan := s.file.path, s.plan
	if path == "" || s.ReadOnly() {
		done(nil)
		return
	}
	s.disk.add(func() {
		found, err := s.config.Store.Beside(path, plan)
		s.config.Post(func() {
			if err != nil || s.file.path != path || s.closed {
				found = nil
			}
			done(found)
		})
	})
}

// Settle remembers that a file beside the plan is not to be offered again while it
// stays as it is.
func (s *Session[O]) Settle(b planfile.Beside) { s.settle(b.Sum) }

func (s *Session[O]) settle(sum [sha256.Size]byte) {
	path := s.file.path
	if path == "" {
		return
	}
	s.disk.add(func() {
		// Where this fails, the copy is offered once more: no harm is done.
		_ = s.config.Store.Settle(path, sum)
	})
}
