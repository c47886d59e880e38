package desktop

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/widgets"
	"fourturn/planner/quantity"
)

func TestClosingWithUnsavedWork(t *testing.T) {
	for _, choice := range []struct {
		button string
		closed bool
		dirty  bool
	}{
		{"Discard the changes", true, false},
		{"Cancel", false, true},
		{"Save", true, false},
	} {
		t.Run(choice.button, func(t *testing.T) {
			st := newStage(t)
			path := st.save("terrace.yaml")
			st.rename("Yard")
			st.Quit()
			if !st.dialogOpen() || st.closed {
				t.Fatal("nobody asked what to do with unsaved work")
			}
			if focused := st.Canvas().Focused(); focused != nil {
				t.Errorf("at first the focus is at %T: Enter would press it", focused)
			}
			test.Tap(st.button(choice.button))
			st.settle()
			if st.closed != choice.closed || st.session.Dirty() != choice.dirty {
				t.Errorf("closed %v, unsaved work %v", st.closed, st.session.Dirty())
			}
			text, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if saved := strings.Contains(string(text), "Yard"); saved != (choice.button == "Save") {
				t.Errorf("the file holds the change: %v", saved)
			}
		})
	}
}

func TestKeysOfTheQuestionAboutUnsavedWork(t *testing.T) {
	st := newStage(t)
	st.save("terrace.yaml")
	st.rename("Yard")
	st.Quit()
	st.Quit() // by the button of the window, while the question is open
	if n := len(st.Canvas().Overlays().List()); n != 1 {
		t.Errorf("the question was asked %d times at once", n)
	}
	for _, name := range []string{"save", "new", "undo", "open", "keys"} {
		st.Perform(name)
	}
	if n := len(st.Canvas().Overlays().List()); n != 1 || st.session.Plan().Title != "Yard" {
		t.Errorf("keys reached past the question: %d dialogs, plan %q", n, st.session.Plan().Title)
	}
	st.press(fyne.KeyEscape)
	if st.dialogOpen() || !st.session.Dirty() {
		t.Fatal("Esc did not leave everything as it was")
	}
	st.Quit()
	st.press(fyne.KeyReturn)
	st.settle()
	if !st.closed || st.session.Dirty() {
		t.Errorf("Enter: closed %v, unsaved work %v", st.closed, st.session.Dirty())
	}
}

func TestClosingWithoutUnsavedWorkAsksNothing(t *testing.T) {
	st := newStage(t)
	st.Quit()
	if st.dialogOpen() || !st.closed {
		t.Errorf("asked %v, closed %v", st.dialogOpen(), st.closed)
	}
}

func TestSavingAsksForAPlaceOnce(t *testing.T) {
	st := newStage(t)
	folder := st.config.Folder
	st.Perform("save")
	if !st.dialogOpen() {
		t.Fatal("nobody asked where to save")
	}
	test.Tap(st.button("Save"))
	st.settle()
	want := filepath.Join(folder, "Terrace.fourturn.yaml")
	if st.session.Path() != want || !slices.Equal(st.settings.Recent(), []string{want}) {
		t.Errorf("saved in %q, recent %q", st.session.Path(), st.settings.Recent())
	}
	st.rename("Yard")
	st.Perform("save")
	st.settle()
	if st.dialogOpen() || st.session.Dirty() || !strings.Contains(st.text(), "Saved in") {
		t.Errorf("asked again: %v; unsaved: %v; said %q", st.dialogOpen(), st.session.Dirty(), st.text())
	}
}

func TestSavingAsRefusesAndReplaces(t *testing.T) {
	st := newStage(t)
	taken := filepath.Join(st.config.Folder, "taken.fourturn.yaml")
	if err := os.WriteFile(taken, []byte("fourturn: 1\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	st.AskSaveAs(nil)
	name := st.Canvas().Focused().(*nameEntry)
	for typed, want := range map[string]string{"a?b": "may not hold"} {
		name.SetText(typed)
		test.Tap(st.button("Save"))
		if !st.dialogOpen() || !strings.Contains(labels(st), want) {
			t.Errorf("%q was not refused: %q", typed, labels(st))
		}
	}
	name.SetText("taken")
	st.press(fyne.KeyReturn)
	st.until("the question", st.dialogOpen)
	test.Tap(st.button("Replace"))
	st.settle()
	if st.session.Path() != taken || st.session.Dirty() {
		t.Errorf("saved in %q", st.session.Path())
	}
}

// labels returns the text of all labels on top.
func labels(st *stage) string {
	var all []string
	for _, o := range test.LaidOutObjects(st.Canvas().Overlays().Top()) {
		if l, ok := o.(*widget.Label); ok && l.Visible() {
			all = append(all, l.Text)
		}
	}
	return strings.Join(all, "|")
}

func TestOpeningAFile(t *testing.T) {
	st := newStage(t)
	path := filepath.Join(t.TempDir(), "yard.yaml")
	if err := os.WriteFile(path, []byte("fourturn: 1\ntitle: Yard\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	st.GoTo("pots", "")
	st.Dropped([]fyne.URI{test.NewApp().Storage().RootURI()}) // no file: passed over
	st.OpenFile(path)
	st.settle()
	if st.session.Plan().Title != "Yard" || st.Room() != "due" || st.window.Title() != "Yard – Fourturn" {
		t.Errorf("plan %q in room %q, window %q", st.session.Plan().Title, st.Room(), st.window.Title())
	}
	if !st.Perform("recent 1") {
		t.Error("the plan is not among the recent ones")
	}
	st.settle()
}

func TestAFileThatCannotBeReadLeavesThePlan(t *testing.T) {
	st := newStage(t)
	path := filepath.Join(t.TempDir(), "broken.yaml")
	if err := os.WriteFile(path, []byte("fourturn: 1\ntitel: Yard\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	st.OpenFile(path)
	st.settle()
	said := noticeText(st)
	for _, want := range []string{"line 2, column 1", "did you mean", "The file is as it was"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q does not say %q", said, want)
		}
	}
	if st.session.Plan().Title != "Terrace" {
		t.Error("the plan is gone")
	}
	st.settings.AddRecent(filepath.Join(t.TempDir(), "gone.yaml"))
	st.OpenFile(st.settings.Recent()[0])
	st.settle()
	if len(st.settings.Recent()) != 0 || !strings.Contains(noticeText(st), "it is not there") {
		t.Errorf("recent %q; said %q", st.settings.Recent(), noticeText(st))
	}
}

func noticeText(st *stage) string {
	var all []string
	for _, o := range st.notices.list.Objects {
		all = append(all, o.(*widgets.Notice).AccessibilityLabel())
	}
	return strings.Join(all, "|")
}

func TestAFileChangedElsewhereIsMerged(t *testing.T) {
	st := newStage(t)
	path := st.save("terrace.yaml")
	st.setUnits(quantity.USCustomary)
	st.settle()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	theirs := strings.Replace(string(text), "Terrace", "Roof", 1)
	if err := os.WriteFile(path, []byte(theirs), 0o644); err != nil {
		t.Fatal(err)
	}
	st.Save(nil)
	st.settle()
	if !st.session.Dirty() || !strings.Contains(noticeText(st), "changed by someone else") {
		t.Fatalf("unsaved %v; said %q", st.session.Dirty(), noticeText(st))
	}
	test.Tap(st.button("Look at the changes…"))
	st.until("the comparison", st.dialogOpen)
	test.Tap(st.button("Bring it in"))
	st.settle()
	if p := st.session.Plan(); p.Title != "Roof" || p.Units != quantity.USCustomary {
		t.Errorf("merged into %q, %v", p.Title, p.Units)
	}
	if noticeText(st) != "" {
		t.Errorf("still says %q", noticeText(st))
	}
}

func TestUnsavedWorkCanBeLetGo(t *testing.T) {
	st := newStage(t)
	st.rename("Yard")
	st.session.Close()
	st.Shell.Close()
	st.start(st.config.App)
	st.OfferRecovery()
	test.Tap(st.button("Look at it…"))
	test.Tap(st.button("Later"))
	if found, _ := st.config.Store.Unsaved(); len(found) != 1 {
		t.Fatalf("later left %d works", len(found))
	}
	st.OfferRecovery()
	test.Tap(st.button("Look at it…"))
	test.Tap(st.button("Discard it for good"))
	if found, _ := st.config.Store.Unsaved(); len(found) != 0 || noticeText(st) != "" {
		t.Errorf("%d works left, said %q", len(found), noticeText(st))
	}
}

func TestEarlierCopyIsAnEdit(t *testing.T) {
	st := newStage(t)
	st.save("terrace.yaml")
	st.rename("Yard")
	st.Save(nil)
	st.settle()
	st.Perform("restore_copy")
	st.until("the copies", st.dialogOpen)
	test.Tap(st.button("Bring back"))
	st.settle()
	if st.session.Plan().Title != "Terrace" || !st.session.Dirty() {
		t.Errorf("brought back %q", st.session.Plan().Title)
	}
	st.Perform("undo")
	if st.session.Plan().Title != "Yard" {
		t.Error("bringing back could not be undone")
	}
}

func TestStateOfTheFileIsSaid(t *testing.T) {
	st := newStage(t)
	if !strings.Contains(st.text(), "Terrace · not in a file yet") {
		t.Errorf("says %q", st.text())
	}
	st.save("terrace.yaml")
	if !strings.Contains(st.text(), "Terrace · saved") {
		t.Errorf("says %q", st.text())
	}
	st.rename("Yard")
	if !strings.Contains(st.text(), "Yard · unsaved work, kept for a restart") || st.window.Title() != "• Yard – Fourturn" {
		t.Errorf("says %q, window %q", st.text(), st.window.Title())
	}
}

func TestACrashIsToldOnce(t *testing.T) {
	st := newStage(t)
	st.TellCrash("")
	if noticeText(st) != "" {
		t.Error("told of no crash")
	}
	path := filepath.Join(t.TempDir(), "crash-1.txt")
	st.TellCrash(path)
	if !strings.Contains(noticeText(st), path) {
		t.Errorf("said %q", noticeText(st))
	}
	st.unnotice(aboutCrash)
	st.TellCrash(path)
	if noticeText(st) != "" {
		t.Error("told twice")
	}
}

func TestWhatIsDoneIsLogged(t *testing.T) {
	st := newStage(t)
	var lines []string
	st.config.Log = func(event string, about ...string) { lines = append(lines, event+" "+strings.Join(about, " ")) }
	st.Perform("units_us")
	st.Perform("go_pots")
	st.Perform("undo") // back to what is saved, so that nobody asks
	st.settle()
	st.OpenFile(filepath.Join(t.TempDir(), "secret", "gone.yaml"))
	st.settle()
	all := strings.Join(lines, "\n")
	for _, want := range []string{"action units_us", "edit desktop.edit_units", "room pots"} {
		if !strings.Contains(all, want) {
			t.Errorf("the log lacks %q:\n%s", want, all)
		}
	}
	if strings.Contains(all, "secret") || !strings.Contains(all, "gone.yaml") {
		t.Errorf("the log names folders, or not the file:\n%s", all)
	}
}
