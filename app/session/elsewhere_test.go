package session_test

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fourturn/app/session"
	"fourturn/planner"
	"fourturn/planner/planfile"
)

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
	m, err := r.compareFile()
	if err != nil || len(m.Conflicts) != 0 || len(m.Incoming) != 1 || m.Incoming[0].After.String() != "EUR" {
		t.Fatalf("compared: %+v, %v", m, err)
	}
	if err := r.bringIn(m, nil); err != nil {
		t.Fatal(err)
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
	if err != nil || len(differences) != 1 || differences[0].Before.String() != "second" || differences[0].After.String() != "first" {
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
