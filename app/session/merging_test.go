package session_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fourturn/app/session"
	"fourturn/planner/planfile"
)

func (r *rig) compareFile() (*session.Merging, error) {
	r.tb.Helper()
	var m *session.Merging
	err := r.wait("compare", func(done func(error)) {
		r.CompareFile(func(got *session.Merging, err error) { m = got; done(err) })
	})
	return m, err
}

func (r *rig) compareCopy(path string) (*session.Merging, error) {
	r.tb.Helper()
	var m *session.Merging
	err := r.wait("compare", func(done func(error)) {
		r.CompareCopy(path, func(got *session.Merging, err error) { m = got; done(err) })
	})
	return m, err
}

func (r *rig) bringIn(m *session.Merging, choose func(planfile.Conflict) planfile.Side) error {
	r.tb.Helper()
	return r.wait("bring in", func(done func(error)) {
		r.BringIn(m, choose, func(_ *planfile.Merged, err error) { done(err) })
	})
}

func (r *rig) beside() (found []planfile.Beside) {
	r.tb.Helper()
	called := false
	r.FindBeside(func(b []planfile.Beside) { found, called = b, true })
	r.bench.runUntil(r.tb, "the second copies", func() bool { return called })
	return found
}

func theirs(planfile.Conflict) planfile.Side { return planfile.Theirs }

// twoSaved is a plan that two people changed in the same place, one of whom saved.
func twoSaved(t *testing.T) (r *rig, path string) {
	t.Helper()
	folder := t.TempDir()
	path = filepath.Join(folder, "p.yaml")
	r = newRig(t, filepath.Join(folder, "state"), workOut)
	t.Cleanup(r.Close)
	r.retitle("start")
	if err := r.saveAs(path); err != nil {
		t.Fatal(err)
	}
	writeText(t, path, "fourturn: 1\ntitle: theirs\ncurrency: EUR\nrisk: 10 %\n")
	r.retitle("mine")
	return r, path
}

func writeText(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestConflictsWaitForAChoice(t *testing.T) {
	for _, one := range []struct {
		choose func(planfile.Conflict) planfile.Side
		title  string
	}{{nil, "mine"}, {theirs, "theirs"}} {
		r, path := twoSaved(t)
		m, err := r.compareFile()
		if err != nil || len(m.Conflicts) != 1 || len(m.Incoming) != 1 || m.Nothing() {
			t.Fatalf("compared: %+v, %v", m, err)
		}
		if c := m.Conflicts[0]; c.Base.String() != "start" || c.Mine.String() != "mine" || c.Theirs.String() != "theirs" {
			t.Errorf("the conflict is %s, %s, %s", c.Base, c.Mine, c.Theirs)
		}
		if p := r.Plan(); p.Title != "mine" || p.Currency != "" {
			t.Errorf("looking changed the plan to %+v", p)
		}
		if err := r.bringIn(m, one.choose); err != nil {
			t.Fatal(err)
		}
		if p := r.Plan(); p.Title != one.title || p.Currency != "EUR" {
			t.Errorf("brought in: %q, %q, want the title %q", p.Title, p.Currency, one.title)
		}
		if r.Dirty() != (one.title == "mine") {
			t.Errorf("title %q: unsaved work %v", one.title, r.Dirty())
		}
		r.Undo()
		if p := r.Plan(); p.Title != "mine" || p.Currency != "" || !r.Dirty() {
			t.Errorf("one undo leads to %q, %q, unsaved work %v", p.Title, p.Currency, r.Dirty())
		}
		r.Redo()
		if err := r.save(); err != nil {
			t.Fatal(err)
		}
		if text, _ := os.ReadFile(path); !strings.Contains(string(text), "title: "+one.title) {
			t.Errorf("the file holds %s", text)
		}
	}
}

func TestAComparisonThatIsDroppedChangesNothing(t *testing.T) {
	r, path := twoSaved(t)
	if _, err := r.compareFile(); err != nil {
		t.Fatal(err)
	}
	if err := r.save(); !session.IsChangedElsewhere(err) {
		t.Errorf("after looking, saving gives %v: the other's work would be overwritten", err)
	}
	if text, _ := os.ReadFile(path); !strings.Contains(string(text), "theirs") {
		t.Errorf("the file holds %s", text)
	}
}

func TestWhatWasComparedMustStillBeThere(t *testing.T) {
	r, path := twoSaved(t)
	m, err := r.compareFile()
	if err != nil {
		t.Fatal(err)
	}
	r.retitle("mine, later")
	if err := r.bringIn(m, theirs); !errors.Is(err, session.ErrMeanwhile) || r.Plan().Title != "mine, later" {
		t.Errorf("an edit meanwhile: %v, title %q", err, r.Plan().Title)
	}
	m, err = r.compareFile()
	if err != nil {
		t.Fatal(err)
	}
	const third = "fourturn: 1\ntitle: third\nrisk: 10 %\n"
	writeText(t, path, third) // while the person reads the conflicts
	if err := r.bringIn(m, theirs); err != nil {
		t.Fatal(err)
	}
	r.retitle("mine again")
	if err := r.save(); !session.IsChangedElsewhere(err) {
		t.Errorf("a third version was overwritten: %v", err)
	}
	if text, _ := os.ReadFile(path); string(text) != third {
		t.Errorf("the file holds %s", text)
	}
}

// A file of a newer version in the place of ours must not make the work here one
// that can only be looked at.
func TestANewerVersionIsNotBroughtIn(t *testing.T) {
	r, path := twoSaved(t)
	writeText(t, path, "fourturn: 99\ntitle: theirs\n")
	if _, err := r.compareFile(); !errors.Is(err, planfile.ErrNewer) {
		t.Errorf("a newer version: %v", err)
	}
	if r.ReadOnly() || r.Plan().Title != "mine" {
		t.Errorf("read only %v, title %q", r.ReadOnly(), r.Plan().Title)
	}
	if err := r.saveAs(filepath.Join(filepath.Dir(path), "elsewhere.yaml")); err != nil {
		t.Errorf("the work cannot be saved elsewhere: %v", err)
	}
}

func TestASecondCopyIsOfferedUntilItIsSettled(t *testing.T) {
	folder := t.TempDir()
	path, other := filepath.Join(folder, "p.yaml"), filepath.Join(folder, "p (second copy).yaml")
	r := newRig(t, filepath.Join(folder, "state"), workOut)
	t.Cleanup(r.Close)
	writeText(t, path, "fourturn: 1\ntitle: start\npots:\n  tub: {name: Tub}\n")
	if err := r.open(path); err != nil {
		t.Fatal(err)
	}
	if found := r.beside(); len(found) != 0 {
		t.Fatalf("found %+v", found)
	}
	r.retitle("mine")
	if err := r.save(); err != nil {
		t.Fatal(err)
	}
	writeText(t, other, "fourturn: 1\ntitle: start\ncurrency: EUR\npots:\n  tub: {name: Trough}\n  urn: {name: Urn}\n")
	found := r.beside()
	if len(found) != 1 || found[0].Path != other {
		t.Fatalf("found %+v", found)
	}
	m, err := r.compareCopy(other)
	if err != nil {
		t.Fatal(err)
	}
	// What was before is in the copy that the save kept: the title was changed here,
	// the name there; neither is taken without being told.
	var told []string
	for _, c := range m.Conflicts {
		told = append(told, strings.Join(c.Where, ".")+" "+c.Base.String())
		if !c.OneSided || (c.Taken == planfile.Theirs) != (c.Where[0] == "pots") {
			t.Errorf("conflict %+v", c)
		}
	}
	if got := strings.Join(told, "|"); got != "title start|pots.tub.name Tub" {
		t.Errorf("told is %s", got)
	}
	if err := r.bringIn(m, nil); err != nil {
		t.Fatal(err)
	}
	p := r.Plan()
	if p.Title != "mine" || p.Currency != "EUR" || len(p.Pots) != 2 || p.Pots[0].Name != "Trough" {
		t.Errorf("brought in: %+v", p)
	}
	if step, _ := r.UndoStep(); step.Name != session.MergeCopyName || !r.Dirty() {
		t.Errorf("the step is %q, unsaved work %v", step.Name, r.Dirty())
	}
	if found := r.beside(); len(found) != 0 {
		t.Errorf("the copy that was brought in is offered again: %+v", found)
	}
	if _, err := os.Stat(other); err != nil {
		t.Errorf("the copy itself is gone: %v", err)
	}
}

func TestACopyThatIsNoneIsNotOfferedAgain(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "p.yaml")
	r := newRig(t, filepath.Join(folder, "state"), workOut)
	t.Cleanup(r.Close)
	writeText(t, path, "fourturn: 1\npots:\n  tub: {name: Tub}\n")
	writeText(t, filepath.Join(folder, "p 2026.yaml"), "fourturn: 1\npots:\n  tub: {name: Tub of last year}\n")
	if err := r.open(path); err != nil {
		t.Fatal(err)
	}
	found := r.beside()
	if len(found) != 1 {
		t.Fatalf("found %+v", found)
	}
	r.Settle(found[0])
	if found := r.beside(); len(found) != 0 {
		t.Errorf("offered again: %+v", found)
	}
}
