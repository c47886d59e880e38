package session_test

import (
	"context"
	"fmt"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"fourturn/app/session"
	"fourturn/planner"
	"fourturn/planner/planfile"
)

// bench is an interface goroutine for tests: the test itself, which runs what is
// posted when it waits for something.
type bench struct {
	mu     sync.Mutex
	posted []func()
	wake   chan struct{}
}

func newBench() *bench { return &bench{wake: make(chan struct{}, 1)} }

func (b *bench) post(f func()) {
	b.mu.Lock()
	b.posted = append(b.posted, f)
	b.mu.Unlock()
	select {
	case b.wake <- struct{}{}:
	default:
	}
}

// runUntil runs what is posted until a condition holds.
func (b *bench) runUntil(t testing.TB, what string, holds func() bool) {
	t.Helper()
	deadline := time.After(20 * time.Second)
	for !holds() {
		b.mu.Lock()
		posted := b.posted
		b.posted = nil
		b.mu.Unlock()
		for _, f := range posted {
			f()
		}
		if len(posted) > 0 || holds() {
			continue
		}
		select {
		case <-b.wake:
		case <-deadline:
			t.Fatalf("waited in vain for: %s", what)
		}
	}
}

// answer is what the tests work out: the title and how many pots there are.
type answer struct {
	title string
	pots  int
}

func workOut(_ context.Context, p *planner.Plan) answer { return answer{p.Title, len(p.Pots)} }

type rig struct {
	*session.Session[answer]
	bench *bench
	state string
	tb    testing.TB
}

var (
	names   int
	namesMu sync.Mutex
)

func newStore(state string) *planfile.Store {
	clock := time.Date(2027, 5, 1, 9, 0, 0, 0, time.UTC)
	return planfile.NewStore(state, func() time.Time { return clock }, func() string {
		namesMu.Lock()
		defer namesMu.Unlock()
		names++
		return fmt.Sprintf("n%d", names)
	})
}

func newRig(tb testing.TB, state string, work func(context.Context, *planner.Plan) answer) *rig {
	b := newBench()
	s := session.New(session.Config[answer]{
		Store: newStore(state), Holder: planfile.Holder{User: "ann", Host: "shed"}, WorkOut: work, Post: b.post,
	})
	return &rig{s, b, state, tb}
}

// wait runs an action that reports to a function, and returns what it reported.
func (r *rig) wait(what string, action func(done func(error))) error {
	r.tb.Helper()
	var result error
	called := false
	action(func(err error) { result, called = err, true })
	r.bench.runUntil(r.tb, what, func() bool { return called })
	return result
}

func (r *rig) saveAs(path string) error {
	return r.wait("save as", func(done func(error)) { r.SaveAs(path, false, done) })
}
func (r *rig) save() error { return r.wait("save", r.Save) }
func (r *rig) open(path string) error {
	return r.wait("open", func(done func(error)) { r.Open(path, done) })
}

func (r *rig) retitle(title string) {
	r.tb.Helper()
	if err := r.Do("edit.title", nil, func(p planner.Plan) (planner.Plan, error) {
		p.Title = title
		return p, nil
	}); err != nil {
		r.tb.Fatal(err)
	}
}

func planDiff(a, b *planner.Plan) string { return cmp.Diff(a, b, cmpopts.EquateEmpty()) }
