package session_test

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"fourturn/app/session"
	"fourturn/planner"
	"fourturn/planner/planfile"
	"fourturn/planner/planfile/plantest"
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

// Undo after do is identity, redo after undo is identity, whatever is done.
func TestUndoRedoLaws(t *testing.T) {
	state := t.TempDir()
	rapid.Check(t, func(rt *rapid.T) {
		r := newRig(t, state, workOut)
		defer r.Close()
		history := []*planner.Plan{r.Plan()}
		at := 0
		for range rapid.IntRange(1, 12).Draw(rt, "steps") {
			switch rapid.IntRange(0, 3).Draw(rt, "step") {
			case 0:
				r.Undo()
				at = max(0, at-1)
			case 1:
				r.Redo()
				at = min(len(history)-1, at+1)
			default:
				next := plantest.Plan().Draw(rt, "plan")
				if err := r.Do("edit.any", nil, func(planner.Plan) (planner.Plan, error) { return *next, nil }); err != nil {
					rt.Fatal(err)
				}
				history = append(history[:at+1], next)
				at++
			}
			if diff := planDiff(history[at], r.Plan()); diff != "" {
				rt.Fatalf("at step %d of %d:\n%s", at, len(history), diff)
			}
			if got, want := r.Dirty(), at != 0; got != want {
				rt.Fatalf("dirty is %v at step %d", got, at)
			}
		}
		r.Discard()
	})
}

func TestSaveThenOpenIsIdentity(t *testing.T) {
	folder := t.TempDir()
	count := 0
	rapid.Check(t, func(rt *rapid.T) {
		count++
		path := filepath.Join(folder, fmt.Sprintf("plan%d.yaml", count))
		plan := plantest.Plan().Draw(rt, "plan")
		r := newRig(t, filepath.Join(folder, "state"), workOut)
		defer r.Close()
		if err := r.Start(plan); err != nil {
			rt.Fatal(err)
		}
		if err := r.saveAs(path); err != nil {
			rt.Fatal(err)
		}
		second := newRig(t, filepath.Join(folder, "state"), workOut)
		defer second.Close()
		if err := second.open(path); err != nil {
			rt.Fatal(err)
		}
		if diff := planDiff(plan, second.Plan()); diff != "" {
			rt.Fatal(diff)
		}
		if second.OpenElsewhere() == nil {
			rt.Fatal("the second session does not know that the first has the file open")
		}
	})
}

func TestStaleAnswersAreDropped(t *testing.T) {
	started := make(chan string, 10)
	release := make(chan struct{})
	var cancelled bool
	var mu sync.Mutex
	r := newRig(t, t.TempDir(), func(ctx context.Context, p *planner.Plan) answer {
		started <- p.Title
		if p.Title == "slow" {
			<-release
			mu.Lock()
			cancelled = ctx.Err() != nil
			mu.Unlock()
		}
		return answer{title: p.Title}
	})
	defer r.Close()
	<-started
	r.bench.runUntil(t, "first answer", func() bool { _, ok := r.Outlook(); return ok })
	r.retitle("slow")
	<-started
	r.retitle("skipped")
	r.retitle("newest")
	var seen []string
	defer r.Subscribe(func(e session.Event) {
		if e.Has(session.OutlookChanged) {
			o, _ := r.Outlook()
			seen = append(seen, o.title)
		}
	})()
	if _, current := r.Outlook(); current {
		t.Error("an old answer is said to be current")
	}
	close(release)
	r.bench.runUntil(t, "newest answer", func() bool { return !r.Busy(session.WorkingOut) })
	if len(seen) != 1 || seen[0] != "newest" {
		t.Errorf("listeners saw the answers %q, want only the newest", seen)
	}
	mu.Lock()
	defer mu.Unlock()
	if !cancelled {
		t.Error("the context of the stale work was not cancelled")
	}
}

func TestEditErrorsChangeNothing(t *testing.T) {
	r := newRig(t, t.TempDir(), workOut)
	defer r.Close()
	before := r.Plan()
	boom := errors.New("boom")
	if err := r.Do("x", nil, func(p planner.Plan) (planner.Plan, error) { return p, boom }); !errors.Is(err, boom) {
		t.Errorf("Do = %v", err)
	}
	var problems *planfile.Problems
	err := r.Do("x", nil, func(p planner.Plan) (planner.Plan, error) {
		p.Pots = []planner.Pot{{ID: "a", Spot: "nowhere"}}
		return p, nil
	})
	if !errors.As(err, &problems) {
		t.Errorf("an edit with a broken reference returns %v", err)
	}
	if err := r.Do("x", nil, func(p planner.Plan) (planner.Plan, error) { return p, session.ErrNothingToDo }); err != nil {
		t.Errorf("nothing to do returns %v", err)
	}
	if _, can := r.UndoStep(); r.Plan() != before || can || r.Dirty() {
		t.Error("a failed edit left something behind")
	}
}

func TestUndoToSavedIsClean(t *testing.T) {
	folder := t.TempDir()
	r := newRig(t, filepath.Join(folder, "state"), workOut)
	defer r.Close()
	r.retitle("one")
	if err := r.save(); !errors.Is(err, session.ErrNoFile) {
		t.Fatalf("Save without a file = %v", err)
	}
	path := filepath.Join(folder, "p.yaml")
	if err := r.saveAs(path); err != nil {
		t.Fatal(err)
	}
	if r.Dirty() || r.Path() != path {
		t.Fatalf("after a save: dirty %v, path %q", r.Dirty(), r.Path())
	}
	r.retitle("two")
	if !r.Dirty() {
		t.Fatal("an edit does not make the plan dirty")
	}
	r.Undo()
	if r.Dirty() {
		t.Fatal("undoing back to the saved plan leaves it dirty")
	}
	r.Undo()
	if !r.Dirty() {
		t.Fatal("undoing past the saved plan leaves it clean")
	}
}

func TestOpenRefusesToDropWork(t *testing.T) {
	folder := t.TempDir()
	r := newRig(t, filepath.Join(folder, "state"), workOut)
	defer r.Close()
	path := filepath.Join(folder, "p.yaml")
	if err := r.saveAs(path); err != nil {
		t.Fatal(err)
	}
	r.retitle("unsaved")
	if err := r.open(path); !errors.Is(err, session.ErrUnsaved) {
		t.Fatalf("Open = %v", err)
	}
	if err := r.Start(&planner.Plan{}); !errors.Is(err, session.ErrUnsaved) {
		t.Fatalf("Start = %v", err)
	}
	r.Discard()
	if err := r.open(path); err != nil || r.Plan().Title != "" {
		t.Fatalf("after Discard: %v, title %q", err, r.Plan().Title)
	}
}

func TestBadFileLeavesEverything(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "bad.yaml")
	bad := []byte("fourturn: 1\ntitel: x\n")
	if err := os.WriteFile(path, bad, 0o600); err != nil {
		t.Fatal(err)
	}
	r := newRig(t, filepath.Join(folder, "state"), workOut)
	defer r.Close()
	before := r.Plan()
	err := r.open(path)
	var problems *planfile.Problems
	var failed *planfile.FileError
	if !errors.As(err, &problems) || problems.List[0].Line != 2 || problems.List[0].Column != 1 {
		t.Errorf("Open = %v, want a problem on line 2, column 1", err)
	}
	if !errors.As(err, &failed) || failed.Path != path || failed.Safe != planfile.FileUntouched {
		t.Errorf("Open = %#v, want the file's name and that it is untouched", err)
	}
	if r.Plan() != before || r.Path() != "" {
		t.Error("a failed open changed the session")
	}
	if after, _ := os.ReadFile(path); string(after) != string(bad) {
		t.Error("a failed open changed the file")
	}
}

func TestNewerFileIsReadOnly(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "new.yaml")
	text := "fourturn: 2\ntitle: From tomorrow\nsoil_probe: yes\n"
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	r := newRig(t, filepath.Join(folder, "state"), workOut)
	defer r.Close()
	if err := r.open(path); err != nil {
		t.Fatal(err)
	}
	if !r.ReadOnly() || r.Plan().Title != "From tomorrow" || len(r.Warnings()) != 1 {
		t.Errorf("read only %v, title %q, warnings %v", r.ReadOnly(), r.Plan().Title, r.Warnings())
	}
	if err := r.Do("x", nil, func(p planner.Plan) (planner.Plan, error) { return p, nil }); !errors.Is(err, session.ErrReadOnly) {
		t.Errorf("Do = %v", err)
	}
	if err := r.save(); !errors.Is(err, session.ErrReadOnly) {
		t.Errorf("Save = %v", err)
	}
	if after, _ := os.ReadFile(path); string(after) != text {
		t.Error("the file was changed")
	}
}

func TestRecoverAfterCrash(t *testing.T) {
	folder := t.TempDir()
	state := filepath.Join(folder, "state")
	path := filepath.Join(folder, "p.yaml")
	crashed := newRig(t, state, workOut)
	crashed.retitle("saved")
	if err := crashed.saveAs(path); err != nil {
		t.Fatal(err)
	}
	crashed.retitle("never saved")
	crashed.retitle("never saved either")
	running, err := newStore(state).Unsaved()
	if err != nil || len(running) != 0 {
		t.Fatalf("the work of a running session is offered: %v, %v", running, err)
	}
	crashed.Close() // ends like a crash: unsaved work stays in the journal

	found, err := newStore(state).Unsaved()
	if err != nil || len(found) != 1 || found[0].Err != nil || found[0].Path != path || found[0].Edit != "edit.title" {
		t.Fatalf("found %+v, %v", found, err)
	}
	r := newRig(t, state, workOut)
	if err := r.wait("recover", func(done func(error)) { r.Recover(found[0], done) }); err != nil {
		t.Fatal(err)
	}
	if r.Plan().Title != "never saved either" || !r.Dirty() || r.Path() != path {
		t.Fatalf("title %q, dirty %v, path %q", r.Plan().Title, r.Dirty(), r.Path())
	}
	if err := r.save(); err != nil {
		t.Fatal(err)
	}
	r.Close()
	if left, err := newStore(state).Unsaved(); err != nil || len(left) != 0 {
		t.Fatalf("after recovery and save there is still %v, %v", left, err)
	}
	if text, _ := os.ReadFile(path); !strings.Contains(string(text), "never saved either") {
		t.Fatalf("the file holds %s", text)
	}
}

func TestMergeWhatSomeoneElseSaved(t *testing.T) {
	folder := t.TempDir()
	state := filepath.Join(folder, "state")
	path := filepath.Join(folder, "p.yaml")
	r := newRig(t, state, workOut)
	defer r.Close()
	r.retitle("start")
	if err := r.saveAs(path); err != nil {
		t.Fatal(err)
	}
	other := "# by hand\nfourturn: 1\ntitle: start\ncurrency: EUR\nrisk: 10 %\n"
	if err := os.WriteFile(path, []byte(other), 0o600); err != nil {
		t.Fatal(err)
	}
	r.retitle("mine")
	if err := r.save(); !session.IsChangedElsewhere(err) {
		t.Fatalf("Save = %v, want that the file was changed", err)
	}
	if text, _ := os.ReadFile(path); string(text) != other {
		t.Fatal("the refused save changed the file")
	}
	var change planfile.Change
	r.Look(func(c planfile.Change) { change = c })
	r.bench.runUntil(t, "look", func() bool { return change != "" })
	if change != planfile.Edited {
		t.Errorf("Look says %s", change)
	}
	var merged *planfile.Merged
	err := r.wait("merge", func(done func(error)) {
		r.MergeFile(nil, func(m *planfile.Merged, err error) { merged = m; done(err) })
	})
	if err != nil || len(merged.Conflicts) != 0 {
		t.Fatalf("merge: %v, %v", err, merged)
	}
	if p := r.Plan(); p.Title != "mine" || p.Currency != "EUR" {
		t.Fatalf("merged plan has title %q and currency %q", p.Title, p.Currency)
	}
	if err := r.save(); err != nil {
		t.Fatal(err)
	}
	want := strings.Replace(other, "title: start", "title: mine", 1)
	if text, _ := os.ReadFile(path); string(text) != want {
		t.Errorf("the file holds\n%s\nwant\n%s", text, want)
	}
}

func TestEditsWhileSavingStayUnsaved(t *testing.T) {
	folder := t.TempDir()
	r := newRig(t, filepath.Join(folder, "state"), workOut)
	defer r.Close()
	r.retitle("one")
	path := filepath.Join(folder, "p.yaml")
	saved := false
	r.SaveAs(path, false, func(err error) {
		if err != nil {
			t.Error(err)
		}
		saved = true
	})
	r.retitle("two") // before the save is noted
	r.bench.runUntil(t, "save", func() bool { return saved })
	if !r.Dirty() {
		t.Error("an edit made during a save counts as saved")
	}
	if text, _ := os.ReadFile(path); !strings.Contains(string(text), "title: one") {
		t.Errorf("the file holds %s", text)
	}
}

func TestJournalTroubleIsTold(t *testing.T) {
	folder := t.TempDir()
	state := filepath.Join(folder, "state")
	if err := os.WriteFile(state, nil, 0o600); err != nil { // a file where the folder should be
		t.Fatal(err)
	}
	r := newRig(t, state, workOut)
	defer r.Close()
	r.retitle("x")
	r.bench.runUntil(t, "journal trouble", func() bool { return r.JournalError() != nil })
	var failed *planfile.FileError
	if !errors.As(r.JournalError(), &failed) || failed.Action != planfile.Journaling {
		t.Errorf("JournalError = %v", r.JournalError())
	}
	r.Discard()
}

func TestAmendIsOneStep(t *testing.T) {
	folder := t.TempDir()
	r := newRig(t, filepath.Join(folder, "state"), workOut)
	defer r.Close()
	amend := func(title string) {
		if err := r.Amend("edit.title", nil, func(p planner.Plan) (planner.Plan, error) { p.Title = title; return p, nil }); err != nil {
			t.Fatal(err)
		}
	}
	r.retitle("typed")
	amend("a")
	amend("ab")
	if err := r.saveAs(filepath.Join(folder, "p.yaml")); err != nil {
		t.Fatal(err)
	}
	amend("abc")
	amend("abcd")
	if r.Plan().Title != "abcd" {
		t.Fatalf("title %q", r.Plan().Title)
	}
	r.Undo()
	if r.Plan().Title != "ab" || r.Dirty() {
		t.Fatalf("after one undo: title %q, dirty %v; want what was saved", r.Plan().Title, r.Dirty())
	}
	r.Undo()
	if r.Plan().Title != "" {
		t.Fatalf("after two undos: title %q", r.Plan().Title)
	}
}

func TestUndoHasALimit(t *testing.T) {
	r := newRig(t, t.TempDir(), workOut)
	defer r.Close()
	big := planner.Plan{}
	for i := range 20_000 {
		big.Pots = append(big.Pots, planner.Pot{ID: fmt.Sprint("p", i)})
	}
	if err := r.Do("edit.big", nil, func(planner.Plan) (planner.Plan, error) { return big, nil }); err != nil {
		t.Fatal(err)
	}
	for i := range 30 {
		r.retitle(fmt.Sprint(i))
	}
	undone := 0
	for {
		if _, ok := r.UndoStep(); !ok {
			break
		}
		r.Undo()
		undone++
	}
	if undone != 20 || r.Plan().Title != "9" {
		t.Errorf("%d steps undone, back to %q", undone, r.Plan().Title)
	}
	r.Discard()
}

func TestRestoreACopy(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "p.yaml")
	r := newRig(t, filepath.Join(folder, "state"), workOut)
	defer r.Close()
	r.retitle("first")
	if err := r.saveAs(path); err != nil {
		t.Fatal(err)
	}
	r.retitle("second")
	if err := r.save(); err != nil {
		t.Fatal(err)
	}
	var copies []planfile.Copy
	err := r.wait("copies", func(done func(error)) {
		r.Copies(func(c []planfile.Copy, err error) { copies = c; done(err) })
	})
	if err != nil || len(copies) != 1 {
		t.Fatalf("copies %v, %v", copies, err)
	}
	var differences []planfile.Difference
	err = r.wait("preview", func(done func(error)) {
		r.Preview(copies[0], func(_ *planner.Plan, d []planfile.Difference, err error) { differences = d; done(err) })
	})
	if err != nil || len(differences) != 1 || differences[0].Before != "second" || differences[0].After != "first" {
		t.Fatalf("differences %v, %v", differences, err)
	}
	if err := r.wait("restore", func(done func(error)) { r.Restore(copies[0], done) }); err != nil {
		t.Fatal(err)
	}
	if r.Plan().Title != "first" || !r.Dirty() {
		t.Errorf("restored %q, dirty %v", r.Plan().Title, r.Dirty())
	}
	r.Undo()
	if r.Plan().Title != "second" || r.Dirty() {
		t.Errorf("undone to %q, dirty %v", r.Plan().Title, r.Dirty())
	}
}

func TestMergeASecondCopy(t *testing.T) {
	folder := t.TempDir()
	other := filepath.Join(folder, "p copy.yaml")
	if err := os.WriteFile(other, []byte("fourturn: 1\ntitle: theirs\npots:\n  tub: {name: Tub}\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	r := newRig(t, filepath.Join(folder, "state"), workOut)
	defer r.Close()
	r.retitle("mine")
	var merged *planfile.Merged
	err := r.wait("merge", func(done func(error)) {
		r.MergeCopy(other, nil, func(m *planfile.Merged, err error) { merged = m; done(err) })
	})
	if err != nil || len(merged.Conflicts) != 1 || r.Plan().Title != "mine" || len(r.Plan().Pots) != 1 {
		t.Fatalf("%v, %+v, plan %+v", err, merged, r.Plan())
	}
}

func TestFindAndForgetUnsavedWork(t *testing.T) {
	state := t.TempDir()
	crashed := newRig(t, state, workOut)
	crashed.retitle("left behind")
	crashed.Close()
	r := newRig(t, state, workOut)
	defer r.Close()
	find := func() (found []planfile.Found) {
		err := r.wait("find", func(done func(error)) {
			r.FindUnsaved(func(f []planfile.Found, err error) { found = f; done(err) })
		})
		if err != nil {
			t.Fatal(err)
		}
		return found
	}
	found := find()
	if len(found) != 1 || found[0].Path != "" {
		t.Fatalf("found %+v", found)
	}
	if err := r.wait("forget", func(done func(error)) { r.Forget(found[0], done) }); err != nil {
		t.Fatal(err)
	}
	if found := find(); len(found) != 0 {
		t.Errorf("still there: %+v", found)
	}
}

// A drive that hangs keeps neither the journal from being written nor the program
// from ending.
func TestHangingDriveDoesNotStopTheJournal(t *testing.T) {
	folder := t.TempDir()
	state := filepath.Join(folder, "state")
	pipe := filepath.Join(folder, "p.yaml")
	r := newRig(t, state, workOut)
	hang := make(chan struct{})
	defer close(hang)
	r.Hang(hang)
	r.Open(pipe, func(error) { t.Error("the hanging drive answered") })
	r.retitle("written while it hangs")
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	r.CloseContext(ctx)
	found, err := newStore(state).Unsaved()
	if err != nil || len(found) != 1 || !strings.Contains(string(found[0].Text), "written while it hangs") {
		t.Fatalf("found %+v, %v", found, err)
	}
}
