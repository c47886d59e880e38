package session_test

import (
	"context"
	"errors"
	"strings"
	"testing"

	"fourturn/app/session"
	"fourturn/planner"
)

const reading session.Work = "reading"

// letters is what the errands of the tests work out: how long a title is.
func letters(_ context.Context, a answer) (int, error) { return len(a.title), nil }

// outcome is what an errand reported, and how often.
type outcome struct {
	answer, times int
	err           error
}

func (o *outcome) take(answer int, err error) { *o = outcome{answer, o.times + 1, err} }

func errandOf(work func(context.Context, answer) (int, error), o *outcome) session.Errand[answer, int] {
	return session.Errand[answer, int]{Name: reading, Work: work, Done: o.take}
}

// untilStopped does not answer before its context is done.
func untilStopped(ctx context.Context, _ answer) (int, error) {
	<-ctx.Done()
	return 1, nil
}

func (r *rig) until(o *outcome) {
	r.tb.Helper()
	r.bench.runUntil(r.tb, "the errand", func() bool { return o.times > 0 })
}

// An errand reads what belongs to the current plan, though it was sent before that was
// worked out.
func TestErrandReadsTheCurrentPlan(t *testing.T) {
	r := newRig(t, t.TempDir(), workOut)
	defer r.Close()
	r.retitle("Terrace")
	var o outcome
	stop := session.Send(r.Session, errandOf(letters, &o))
	if !r.Busy(reading) {
		t.Error("nobody is told that something goes on")
	}
	r.until(&o)
	if o.answer != len("Terrace") || o.err != nil || r.Busy(reading) {
		t.Errorf("answered %+v, still busy %v", o, r.Busy(reading))
	}
	stop() // too late: nothing happens
	r.retitle("Yard")
	r.bench.runUntil(t, "the outlook", func() bool { _, current := r.Outlook(); return current })
	if o.times != 1 {
		t.Errorf("reported %d times", o.times)
	}
}

func TestErrandIsStopped(t *testing.T) {
	r := newRig(t, t.TempDir(), workOut)
	defer r.Close()
	var o outcome
	stop := session.Send(r.Session, errandOf(untilStopped, &o))
	stop()
	stop()
	r.until(&o)
	if !errors.Is(o.err, session.ErrStopped) || o.answer != 0 || o.times != 1 {
		t.Errorf("reported %+v", o)
	}
}

// An answer for a plan that was changed meanwhile is dropped, unless it is wanted all
// the same.
func TestStaleErrandIsDropped(t *testing.T) {
	for _, outlasts := range []bool{false, true} {
		r := newRig(t, t.TempDir(), workOut)
		r.retitle("Terrace")
		begun, goOn := make(chan struct{}), make(chan struct{})
		var o outcome
		errand := errandOf(func(ctx context.Context, a answer) (int, error) {
			close(begun)
			<-goOn
			return letters(ctx, a)
		}, &o)
		errand.Outlasts = outlasts
		session.Send(r.Session, errand)
		r.bench.runUntil(t, "the outlook", func() bool { _, current := r.Outlook(); return current })
		<-begun
		r.retitle("Yard")
		close(goOn)
		r.until(&o)
		if stale := errors.Is(o.err, session.ErrStale); stale == outlasts {
			t.Errorf("outlasts %v: reported %+v", outlasts, o)
		}
		if outlasts && o.answer != len("Terrace") {
			t.Errorf("read %d letters", o.answer)
		}
		r.Close()
	}
}

// So is one for another day.
func TestErrandOfYesterdayIsDropped(t *testing.T) {
	r := newRig(t, t.TempDir(), workOut)
	defer r.Close()
	var o outcome
	session.Send(r.Session, errandOf(untilStopped, &o))
	r.WorkOutAgain()
	r.until(&o)
	if !errors.Is(o.err, session.ErrStale) {
		t.Errorf("reported %+v", o)
	}
}

func TestErrorsAndPanicsOfErrandsAreReported(t *testing.T) {
	r := newRig(t, t.TempDir(), workOut)
	defer r.Close()
	broken := errors.New("no such pot")
	var o outcome
	session.Send(r.Session, errandOf(func(context.Context, answer) (int, error) { return 0, broken }, &o))
	r.until(&o)
	if !errors.Is(o.err, broken) {
		t.Errorf("reported %+v", o)
	}
	o = outcome{}
	session.Send(r.Session, errandOf(func(context.Context, answer) (int, error) { panic("rotation: no such change-out") }, &o))
	r.until(&o)
	var failed *session.PanicError
	if !errors.As(o.err, &failed) || !strings.Contains(failed.Error(), "no such change-out") || !strings.Contains(string(failed.Stack), "errand_test.go") {
		t.Errorf("reported %+v", o)
	}
}

// Nobody waits any more once the session is closed.
func TestErrandsEndWithTheSession(t *testing.T) {
	r := newRig(t, t.TempDir(), workOut)
	var o outcome
	session.Send(r.Session, errandOf(untilStopped, &o))
	r.bench.runUntil(t, "the outlook", func() bool { _, current := r.Outlook(); return current })
	r.Close()
	session.Send(r.Session, errandOf(letters, &o))()
	r.bench.runUntil(t, "nothing", func() bool { return true })
	if o.times != 0 {
		t.Errorf("reported %+v after the end", o)
	}
}

// What an errand finds out may become an edit, and the next errand may be sent from
// where the one before reports.
func TestErrandLeadsToTheNext(t *testing.T) {
	r := newRig(t, t.TempDir(), workOut)
	defer r.Close()
	var second outcome
	first := errandOf(letters, nil)
	first.Done = func(n int, err error) {
		if err != nil {
			t.Error(err)
		}
		if err := r.Do("edit.title", nil, func(p planner.Plan) (planner.Plan, error) {
			p.Title = strings.Repeat("a", n+3)
			return p, nil
		}); err != nil {
			t.Error(err)
		}
		session.Send(r.Session, errandOf(letters, &second))
	}
	session.Send(r.Session, first)
	r.until(&second)
	if second.answer != 3 || second.err != nil {
		t.Errorf("reported %+v", second)
	}
}
