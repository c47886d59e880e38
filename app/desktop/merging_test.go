package desktop

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
	"fourturn/planner"
)

// shared is a plan on which two people work.
const shared = `fourturn: 1
title: Yard
spots:
  wall: {name: North wall, light: sun}
pots:
  urn:
    name: Urn by the gate
    kind: round
    top_diameter: 40 cm
    bottom_diameter: 30 cm
    height: 40 cm
    spot: wall
    plantings:
      summer: {plants: [{plant: petunia, count: 3}]}
  tub: {name: Old tub, notes: cracked}
log:
  - {id: a, date: 2027-04-01, kind: noted, pots: [urn], text: looks well}
`

// theirShared is what somebody else made of it.
var theirShared = strings.NewReplacer("40 cm\n    bottom", "50 cm\n    bottom", "count: 3", "count: 7", "Yard", "Roof",
	"  tub: {name: Old tub, notes: cracked}\n", "", "looks well", "looks very well").Replace(shared)

// twoPeople is a stage on which both changed the plan and the other saved.
func twoPeople(t *testing.T) (st *stage, path string) {
	t.Helper()
	st = newStage(t)
	path = filepath.Join(t.TempDir(), "yard.yaml")
	writePlan(t, path, shared)
	st.OpenFile(path)
	st.settle()
	err := st.session.Do("pots.title", nil, func(p planner.Plan) (planner.Plan, error) {
		p.Pots = append([]planner.Pot(nil), p.Pots...)
		p.Pots[0].Vessel.TopDiameter = 0.35
		p.Pots[0].Plantings = []planner.Planting{{Season: planner.Summer, Plants: []planner.Part{{Plant: "petunia", Count: 5}}}}
		p.Pots[1].Name = "Trough"
		return p, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	writePlan(t, path, theirShared)
	st.Save(nil)
	st.settle()
	return st, path
}

func writePlan(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

// lookAtChanges opens the choice between the two.
func (st *stage) lookAtChanges() {
	st.t.Helper()
	test.Tap(st.button("Look at the changes…"))
	st.until("the comparison", st.dialogOpen)
}

func TestConflictsAreChosenPlaceByPlace(t *testing.T) {
	st, path := twoPeople(t)
	st.lookAtChanges()
	if p := st.session.Plan(); p.Title != "Yard" || p.Pots[0].Vessel.TopDiameter != 0.35 {
		t.Error("looking at the changes changed the plan")
	}
	st.press(fyne.KeyReturn) // on the first row of the table: the other side
	test.Tap(st.button("Bring it in"))
	st.settle()
	p := st.session.Plan()
	if p.Title != "Roof" || p.Pots[0].Vessel.TopDiameter != 0.5 || p.Pots[0].Plantings[0].Plants[0].Count != 5 || len(p.Pots) != 2 || p.Log[0].Text != "looks very well" {
		t.Errorf("brought in: %+v", p)
	}
	if strings.Contains(noticeText(st), "changed by someone else") {
		t.Errorf("still says %q", noticeText(st))
	}
	st.Perform("undo")
	if p := st.session.Plan(); p.Title != "Yard" || p.Pots[0].Vessel.TopDiameter != 0.35 {
		t.Errorf("one undo leads to %+v", p)
	}
	st.Perform("redo")
	st.Save(nil)
	st.settle()
	if text, err := os.ReadFile(path); err != nil || !strings.Contains(string(text), "title: Roof") || !strings.Contains(string(text), "Trough") {
		t.Errorf("saved is %s, %v", text, err)
	}
}

func TestAllTheirsAndCancelling(t *testing.T) {
	st, path := twoPeople(t)
	before := st.session.Plan()
	st.lookAtChanges()
	test.Tap(st.button("All theirs"))
	st.press(fyne.KeyEscape)
	st.settle()
	if st.dialogOpen() || st.session.Plan() != before || !strings.Contains(noticeText(st), "changed by someone else") {
		t.Errorf("cancelled: dialog %v, said %q", st.dialogOpen(), noticeText(st))
	}
	if text, err := os.ReadFile(path); err != nil || string(text) != theirShared {
		t.Errorf("cancelling changed the file to %s, %v", text, err)
	}
	st.lookAtChanges()
	test.Tap(st.button("All theirs"))
	test.Tap(st.button("Bring it in"))
	st.settle()
	if p := st.session.Plan(); len(p.Pots) != 1 || st.session.Dirty() {
		t.Errorf("all theirs: %d pots, unsaved work %v", len(p.Pots), st.session.Dirty())
	}
}

func TestASecondCopyBesideTheFileIsOffered(t *testing.T) {
	st := newStage(t)
	folder := t.TempDir()
	path := filepath.Join(folder, "yard.yaml")
	writePlan(t, path, shared)
	writePlan(t, filepath.Join(folder, "yard (second copy).yaml"), theirShared)
	st.OpenFile(path)
	st.settle()
	st.until("the offer", func() bool { return strings.Contains(noticeText(st), "second copy of this plan") })
	test.Tap(st.button("Look at it…"))
	test.Tap(st.button("Compare"))
	st.until("the comparison", st.dialogOpen)
	test.Tap(st.button("All theirs"))
	test.Tap(st.button("Bring it in"))
	st.settle()
	if p := st.session.Plan(); p.Title != "Roof" || len(p.Pots) != 2 || !st.session.Dirty() {
		t.Errorf("brought in: %+v", p)
	}
	st.LookForChanges()
	st.settle()
	if said := noticeText(st); strings.Contains(said, "second copy") {
		t.Errorf("offered again: %q", said)
	}
}

func TestASecondCopyThatAppearsIsOfferedOnFocus(t *testing.T) {
	st := newStage(t)
	folder := t.TempDir()
	path := filepath.Join(folder, "yard.yaml")
	writePlan(t, path, shared)
	st.OpenFile(path)
	st.settle()
	if strings.Contains(noticeText(st), "second copy") {
		t.Fatalf("says %q", noticeText(st))
	}
	other := filepath.Join(folder, "yard 2.yaml")
	writePlan(t, other, theirShared)
	st.LookForChanges()
	st.until("the offer", func() bool { return strings.Contains(noticeText(st), "second copy") })
	test.Tap(st.button("Look at it…"))
	test.Tap(st.button("It is something else: do not offer it again"))
	st.LookForChanges()
	st.settle()
	if said := noticeText(st); strings.Contains(said, "second copy") {
		t.Errorf("offered again: %q", said)
	}
	// From the menu it can be brought in all the same.
	if !st.Perform("bring_in") || !st.dialogOpen() {
		t.Error("the menu does not ask for another copy")
	}
}

// What the person sees when the file goes away under the open plan, and comes back.
func TestAFileThatGoesAwayUnderTheOpenPlan(t *testing.T) {
	st := newStage(t)
	folder := filepath.Join(t.TempDir(), "network")
	if err := os.Mkdir(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(folder, "yard.yaml")
	writePlan(t, path, shared)
	st.OpenFile(path)
	st.settle()
	look := func(want string) {
		t.Helper()
		st.LookForChanges()
		st.until(want, func() bool {
			return want == "" && noticeText(st) == "" || want != "" && strings.Contains(noticeText(st), want)
		})
	}
	if err := os.Rename(path, path+".away"); err != nil {
		t.Fatal(err)
	}
	look("removed or renamed")
	if err := os.Rename(folder, folder+"-gone"); err != nil {
		t.Fatal(err)
	}
	look("cannot be reached")
	st.rename("Kept here")
	st.Save(nil)
	st.settle()
	if !st.session.Dirty() || st.session.Plan().Title != "Kept here" || noticeText(st) == "" {
		t.Errorf("a save without the folder: unsaved %v, said %q", st.session.Dirty(), noticeText(st))
	}
	if err := os.Rename(folder+"-gone", folder); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(path+".away", path); err != nil {
		t.Fatal(err)
	}
	st.Save(nil)
	st.settle()
	if text, err := os.ReadFile(path); err != nil || !strings.Contains(string(text), "Kept here") || noticeText(st) != "" {
		t.Errorf("back again: %v, said %q", err, noticeText(st))
	}
}

func TestPicturesOfVersions(t *testing.T) {
	for _, one := range []struct {
		file    string
		options theme.Options
		size    fyne.Size
		show    func(*testing.T) *stage
	}{
		{"merge-light-900x600.png", theme.Options{Mode: theme.Light}, LeastWindow, mergeShown},
		{"merge-dark-1280x800.png", theme.Options{Mode: theme.Dark}, FirstWindow, mergeShown},
		{"merge-large-text-900x600.png", theme.Options{Mode: theme.Light, HighContrast: true, TextScale: theme.MaxTextScale}, LeastWindow, mergeShown},
		{"copies-light-900x600.png", theme.Options{Mode: theme.Light}, LeastWindow, copiesShown},
	} {
		st := one.show(t)
		st.succeed("") // the line at the foot names a folder of this run
		st.changeLook(func(o *theme.Options) { *o = one.options })
		st.window.Resize(one.size.AddWidthHeight(1, 1)) // text that wraps needs a second layout
		st.window.Resize(one.size)
		golden.Picture(t, one.file, st.Canvas())
	}
}

func mergeShown(t *testing.T) *stage {
	st, _ := twoPeople(t)
	st.unnotice(aboutFailure)
	st.lookAtChanges()
	return st
}

func copiesShown(t *testing.T) *stage {
	st, _ := twoPeople(t)
	st.lookAtChanges()
	test.Tap(st.button("Bring it in"))
	st.settle()
	st.Save(nil)
	st.settle()
	st.Perform("restore_copy")
	st.until("the copies", st.dialogOpen)
	st.until("the preview", func() bool {
		for _, o := range test.LaidOutObjects(st.Canvas().Overlays().Top()) {
			if l, ok := o.(interface{ AccessibilityLabel() string }); ok && strings.Contains(l.AccessibilityLabel(), "it would change") {
				return true
			}
		}
		return false
	})
	return st
}
