package session

import "context"

// recompute is the state of working out: at most one runs at a time, and of the
// plans that come meanwhile only the newest is worked out next.
type recompute struct {
	running bool
	again   bool // the plan changed since the running one began
	cancel  context.CancelFunc
}

func (r *recompute) stop() {
	if r.cancel != nil {
		r.cancel()
	}
}

// startWork has the current plan worked out.
func (s *Session[O]) startWork() {
	if s.closed {
		return
	}
	if s.recompute.running {
		s.recompute.again = true
		s.recompute.cancel() // its answer would be stale
		return
	}
	ctx, cancel := context.WithCancel(context.Background())
	s.recompute = recompute{running: true, cancel: cancel}
	s.begin(WorkingOut)
	plan, revision := s.plan, s.revision
	go func() {
		outlook := s.config.WorkOut(ctx, plan)
		s.config.Post(func() { s.finishWork(revision, outlook) })
	}()
}

// finishWork takes an answer, unless the plan has moved on.
func (s *Session[O]) finishWork(revision uint64, outlook O) {
	if s.closed {
		return
	}
	again := s.recompute.again
	s.recompute.cancel()
	s.recompute = recompute{}
	if revision == s.revision {
		s.outlook, s.outlookFor = outlook, revision
		s.notify(OutlookChanged)
		s.runErrands()
	}
	if again {
		s.startWork()
	}
	s.end(WorkingOut)
}

// WorkOutAgain has the plan worked out anew, as when the day has changed or the
// plant book.
func (s *Session[O]) WorkOutAgain() {
	s.revision++ // the answer we have is stale
	s.dropErrands()
	s.startWork()
}
