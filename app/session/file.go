package session

import (
	"errors"

	"fourturn/planner"
	"fourturn/planner/planfile"
)

// file is the plan's file as the session knows it.
type file struct {
	path       string // empty where there is none yet
	document   *planfile.Document
	stamp      planfile.Stamp
	lock       *planfile.Lock
	holder     *planfile.Holder // of somebody else who has it open, or nil
	journalErr error
}

// ErrUnsaved is the error of opening another plan while this one holds unsaved
// work. Save it or [Session.Discard] it first.
var ErrUnsaved = errors.New("session: there is unsaved work")

// ErrNoFile is the error of saving a plan that has no file yet; see
// [Session.SaveAs].
var ErrNoFile = errors.New("session: the plan has no file yet")

// Path returns the path of the plan's file, or "" where it has none.
func (s *Session[O]) Path() string { return s.file.path }

// ReadOnly reports whether the plan's file was made by a newer version.
func (s *Session[O]) ReadOnly() bool { return s.file.document != nil && s.file.document.ReadOnly() }

// OpenElsewhere returns who else has the file open, or nil.
func (s *Session[O]) OpenElsewhere() *planfile.Holder { return s.file.holder }

// Warnings returns what was passed over when the file was read.
func (s *Session[O]) Warnings() []planfile.Problem {
	if s.file.document == nil {
		return nil
	}
	return s.file.document.Warnings()
}

// Open reads a plan file in the background and makes it the current plan. done is
// called on the interface goroutine with nil, [ErrUnsaved], or a
// [planfile.FileError]; after an error everything is as it was.
func (s *Session[O]) Open(path string, done func(error)) {
	if s.Dirty() {
		done(ErrUnsaved)
		return
	}
	plan := s.plan
	s.begin(OpeningFile)
	s.disk.add(func() {
		f, err := s.load(path)
		s.config.Post(func() {
			s.end(OpeningFile)
			if err == nil && (s.plan != plan || s.closed) { // edited while the file was read
				err = ErrUnsaved
			}
			if err != nil {
				s.disk.add(f.lock.Release)
				done(err)
				return
			}
			s.adopt(f.document.Plan(), f, true)
			done(nil)
		})
	})
}

// load reads a file and takes its lock. It runs in the disk queue.
func (s *Session[O]) load(path string) (file, error) {
	f := file{path: path}
	var err error
	if f.document, f.stamp, err = s.config.Store.Load(path); err != nil {
		return file{}, err
	}
	f.lock, f.holder = s.takeLock(path)
	return f, nil
}

// takeLock takes the lock of a file. A folder in which there can be no lock is no
// reason not to open a file.
func (s *Session[O]) takeLock(path string) (*planfile.Lock, *planfile.Holder) {
	lock, err := s.config.Store.Lock(path, s.config.Holder)
	var held *planfile.HeldError
	if errors.As(err, &held) {
		return nil, &held.Holder
	}
	return lock, nil
}

// Save writes the plan to its file in the background. done is called on the
// interface goroutine with nil, [ErrNoFile], [ErrReadOnly], or a
// [planfile.FileError]; its cause is [planfile.ErrChanged] where the file was
// changed by someone else, see [Session.MergeFile].
func (s *Session[O]) Save(done func(error)) {
	if s.file.path == "" {
		done(ErrNoFile)
		return
	}
	s.save(s.file.path, done, func(f *file, _ string) (planfile.Stamp, error) { return f.stamp, nil })
}

// SaveAs writes the plan to another file, which becomes the plan's file. Without
// overwrite a file that is there already is left alone and reported as
// [planfile.ErrChanged].
func (s *Session[O]) SaveAs(path string, overwrite bool, done func(error)) {
	s.save(path, done, func(f *file, path string) (planfile.Stamp, error) {
		if !overwrite {
			return planfile.Stamp{}, nil
		}
		return s.config.Store.StampOf(path)
	})
}

// save writes the current plan to a path that must be as since says.
func (s *Session[O]) save(path string, done func(error), since func(*file, string) (planfile.Stamp, error)) {
	if s.ReadOnly() {
		done(ErrReadOnly)
		return
	}
	plan, from := s.plan, s.file
	s.begin(SavingFile)
	s.disk.add(func() {
		written, err := s.write(path, plan, from, since)
		s.config.Post(func() {
			s.end(SavingFile)
			if written != nil && !s.closed {
				s.wrote(*written, plan)
			}
			done(err)
		})
	})
}

// write runs in the disk queue. The returned file is nil where nothing was
// written.
func (s *Session[O]) write(path string, plan *planner.Plan, from file, since func(*file, string) (planfile.Stamp, error)) (*file, error) {
	document, err := documentOf(from.document, plan)
	if err != nil {
		return nil, &planfile.FileError{Action: planfile.Saving, Path: path, Safe: planfile.FileUntouched, Err: err}
	}
	stamp, err := since(&from, path)
	if err != nil {
		return nil, err
	}
	stamp, err = s.config.Store.Save(path, document.Text(), stamp)
	if !stamp.Exists {
		return nil, err
	}
	f := file{path: path, document: document, stamp: stamp, lock: from.lock, holder: from.holder}
	if path != from.path {
		f.lock, f.holder = s.takeLock(path)
	}
	return &f, err
}

// documentOf writes a plan into the text of the document before it, or a new one.
func documentOf(before *planfile.Document, plan *planner.Plan) (*planfile.Document, error) {
	if before == nil {
		return planfile.New(plan)
	}
	return before.With(plan)
}

// wrote takes note of a save. The plan may have been edited since.
func (s *Session[O]) wrote(f file, plan *planner.Plan) {
	if f.lock != s.file.lock {
		old := s.file.lock
		s.disk.add(old.Release)
	}
	f.journalErr = s.file.journalErr
	s.file = f
	s.saved = plan
	s.keepUnsaved()
	s.notify(FileChanged)
}
