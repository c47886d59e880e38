package session

import (
	"sync"

	"fourturn/planner"
	"fourturn/planner/planfile"
)

// journal keeps unsaved work safe. Its fields but for the wish belong to the state
// queue.
type journal struct {
	store *planfile.Store
	open  *planfile.Journal
	err   error // of the last writing

	mu     sync.Mutex
	wish   *wish // the newest work that the journal shall hold
	queued bool  // a task that will look at wish is in the queue
}

// wish is what the journal shall hold; clear asks for nothing at all.
type wish struct {
	clear    bool
	plan     *planner.Plan
	document *planfile.Document // that the work began from, or nil
	path     string
	edit     string
	failed   func(error)
}

// keepUnsaved has the journal hold the current plan, or nothing where it is
// saved. Of several wishes in a row only the last is carried out.
func (s *Session[O]) keepUnsaved() {
	w := &wish{clear: !s.Dirty(), plan: s.plan, document: s.file.document, path: s.file.path}
	if step, ok := s.UndoStep(); ok {
		w.edit = step.Name
	}
	w.failed = func(err error) {
		s.config.Post(func() { s.journalFailed(err) })
	}
	s.journal.mu.Lock()
	s.journal.wish = w
	queued := s.journal.queued
	s.journal.queued = true
	s.journal.mu.Unlock()
	if !queued {
		s.state.add(s.journal.carryOut)
	}
}

// carryOut runs in the state queue.
func (j *journal) carryOut() {
	j.mu.Lock()
	w := j.wish
	j.queued = false
	j.mu.Unlock()
	j.err = j.write(w)
	w.failed(j.err)
}

func (j *journal) write(w *wish) error {
	if w.clear {
		if j.open == nil {
			return nil
		}
		return j.open.Clear()
	}
	if j.open == nil {
		open, err := j.store.NewJournal()
		if err != nil {
			return err
		}
		j.open = open
	}
	work := planfile.Unsaved{Path: w.path, Edit: w.edit}
	var err error
	if w.document != nil {
		work.Base = w.document.Text()
		work.Text, err = w.document.Encode(w.plan)
	} else {
		work.Text, err = planfile.Encode(w.plan)
	}
	if err != nil {
		return err
	}
	return j.open.Write(work)
}

func (j *journal) close() {
	if j.open != nil {
		j.open.Close()
	}
}

// journalFailed remembers that unsaved work is not being kept, or that it is
// again.
func (s *Session[O]) journalFailed(err error) {
	if s.closed || (err == nil) == (s.file.journalErr == nil) {
		return
	}
	s.file.journalErr = err
	s.notify(FileChanged)
}

// JournalError returns why unsaved work is not being kept in the journal, or nil
// while it is.
func (s *Session[O]) JournalError() error { return s.file.journalErr }

// Discard lets go of unsaved work on purpose: the plan counts as saved, and the
// journal is emptied.
func (s *Session[O]) Discard() {
	s.saved = s.plan
	s.keepUnsaved()
	s.notify(FileChanged)
}
