package session

import (
	"errors"

	"fourturn/planner"
	"fourturn/planner/planfile"
)

// Look finds out in the background whether the file was changed, removed or
// replaced by someone else. done is called on the interface goroutine.
func (s *Session[O]) Look(done func(planfile.Change)) {
	path, stamp := s.file.path, s.file.stamp
	if path == "" {
		done(planfile.Unchanged)
		return
	}
	s.disk.add(func() {
		change := s.config.Store.Look(path, stamp)
		s.config.Post(func() {
			if s.file.path != path || s.file.stamp.Sum != stamp.Sum {
				change = planfile.Unchanged // saved or opened anew meanwhile
			}
			done(change)
		})
	})
}

// Recover takes over the work of a session that ended without saving it. The
// plan is then unsaved work on its file.
func (s *Session[O]) Recover(found planfile.Found, done func(error)) {
	if s.Dirty() {
		done(ErrUnsaved)
		return
	}
	if found.Err != nil {
		done(found.Err)
		return
	}
	s.begin(OpeningFile)
	s.disk.add(func() {
		f, plan, err := s.recover(found)
		s.config.Post(func() {
			s.end(OpeningFile)
			if err == nil && (s.Dirty() || s.closed) {
				err = ErrUnsaved
			}
			if err != nil {
				s.disk.add(f.lock.Release)
				done(err)
				return
			}
			s.adopt(plan, f, false)
			s.state.add(func() {
				if s.journal.err == nil { // our own journal holds it now
					_ = s.config.Store.Forget(found)
				}
			})
			done(nil)
		})
	})
}

// recover runs in the disk queue.
func (s *Session[O]) recover(found planfile.Found) (file, *planner.Plan, error) {
	work, err := planfile.Decode(found.Text)
	if err != nil {
		return file{}, nil, err
	}
	if found.Path == "" || found.Base == nil {
		return file{}, work.Plan(), nil
	}
	base, err := planfile.Decode(found.Base)
	if err != nil {
		return file{}, nil, err
	}
	f := file{path: found.Path, document: base, stamp: planfile.StampOfText(found.Base)}
	f.lock, f.holder = s.takeLock(found.Path)
	return f, work.Plan(), nil
}

// IsChangedElsewhere reports whether an error of [Session.Save] says that someone
// else changed the file.
func IsChangedElsewhere(err error) bool { return errors.Is(err, planfile.ErrChanged) }
