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

	"pgregory.net/rapid"

	"fourturn/app/session"
	"fourturn/planner"
	"fourturn/planner/planfile"
	"fourturn/planner/planfile/plantest"
)

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
