package desktop

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/google/go-cmp/cmp"

	"fourturn/app/session"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/planfile"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// stage is a shell in a window in memory. What the session hands back is kept
// until the test waits for it.
type stage struct {
	*Shell
	t      *testing.T
	state  string
	pages  map[string]*fakePage
	mu     sync.Mutex
	posted []func()
	closed bool
}

// fakePage is a room that counts how often it was refreshed.
type fakePage struct {
	object    fyne.CanvasObject
	field     *widget.Entry
	figure    *widgets.Figure
	refreshed int
	opened    []string
}

func (p *fakePage) Object() fyne.CanvasObject { return p.object }
func (p *fakePage) Refresh()                  { p.refreshed++ }
func (p *fakePage) Open(id string)            { p.opened = append(p.opened, id) }

// mixFigure is a figure whose first input has a working of its own.
func mixFigure() planner.Figure {
	volume := working.Trace{
		Name: "pots.title", Formula: "V = a × b × h", Result: working.Number(31, working.Litre),
		Source: working.Source{Status: working.Definition},
		Inputs: []working.Input{{Symbol: "a", Name: "due.title", Value: working.Number(0.8, working.Metre), Source: working.Source{Status: working.Entered}}},
	}
	return planner.NewFigure(working.Number(38, working.Litre), func() working.Trace {
		return working.Trace{
			Name: "feeding.title", Formula: "B = V × (1 + s)", Result: working.Number(38, working.Litre),
			Source: working.Source{Status: working.CommonPractice},
			Inputs: []working.Input{
				{Symbol: "V", Name: "pots.title", Value: working.Number(31, working.Litre), From: &volume},
				{Symbol: "s", Name: "desktop.back", Value: working.Number(0.2, working.Share), Source: working.Source{Status: working.Judgement}},
			},
		}
	})
}

func newStage(t *testing.T) *stage {
	t.Helper()
	st := &stage{t: t, state: t.TempDir(), pages: map[string]*fakePage{}}
	a := test.NewTempApp(t)
	a.Settings().SetTheme(theme.New(theme.Options{Mode: theme.Light}))
	st.start(a)
	return st
}

// start opens a window on the state folder, as after a restart.
func (st *stage) start(a fyne.App) {
	number := 0
	random := func() string { number++; return fmt.Sprintf("r%d", number) }
	day := time.Date(2027, time.April, 20, 9, 30, 0, 0, time.UTC)
	store := planfile.NewStore(st.state, func() time.Time { return day }, random)
	s := session.New(session.Config[*planner.Outlook]{
		Store: store, Holder: planfile.Holder{User: "someone", Since: day},
		WorkOut: func(_ context.Context, p *planner.Plan) *planner.Outlook { return &planner.Outlook{Plan: p} },
		Post: func(f func()) {
			st.mu.Lock()
			defer st.mu.Unlock()
			st.posted = append(st.posted, f)
		},
	})
	w := a.NewWindow("")
	w.Resize(LeastWindow)
	w.SetOnClosed(func() { st.closed = true })
	st.Shell = New(Config{
		App: a, Window: w, Session: s, Store: store, Words: words.New("en_GB"), Rooms: st.rooms(),
		NewPlan: func() *planner.Plan { return &planner.Plan{Risk: planner.DefaultRisk} },
		Example: func() *planner.Plan { return &planner.Plan{Title: "Example", Risk: planner.DefaultRisk} },
		Folder:  st.t.TempDir(),
	})
	st.t.Cleanup(s.Close)
	st.Start(&planner.Plan{Title: "Terrace", Risk: planner.DefaultRisk})
	st.settle()
}

func (st *stage) rooms() []Room {
	room := func(key string, icon theme.IconName, label string) Room {
		return Room{Key: key, Icon: icon, Label: label, Make: func(s *Shell) Page {
			p := &fakePage{field: widget.NewEntry()}
			p.figure = widgets.NewFigure(widgets.FigureData{Value: "38 L"}, func() { s.ShowWorking(mixFigure()) })
			p.object = container.NewVBox(p.field, p.figure)
			st.pages[key] = p
			return p
		}}
	}
	return []Room{
		room("due", theme.IconDue, "due.title"),
		room("pots", theme.IconPots, "pots.title"),
		room("feeding", theme.IconFeeding, "feeding.title"),
	}
}

// settle runs what is posted until nothing goes on in the background.
func (st *stage) settle() {
	st.t.Helper()
	st.until("the session to settle", func() bool {
		_, current := st.session.Outlook()
		return current && !st.session.Busy(session.OpeningFile) && !st.session.Busy(session.SavingFile)
	})
}

func (st *stage) until(what string, holds func() bool) {
	st.t.Helper()
	for range 5000 {
		st.mu.Lock()
		posted := st.posted
		st.posted = nil
		st.mu.Unlock()
		for _, f := range posted {
			f()
		}
		if len(posted) == 0 && holds() {
			return
		}
		time.Sleep(time.Millisecond)
	}
	st.t.Fatalf("waited in vain for %s", what)
}

// rename makes an edit, so that there is unsaved work.
func (st *stage) rename(title string) {
	st.t.Helper()
	if err := st.session.Do("pots.title", nil, func(p planner.Plan) (planner.Plan, error) {
		p.Title = title
		return p, nil
	}); err != nil {
		st.t.Fatal(err)
	}
	st.settle()
}

// press types a key as the window does: to what has the focus, else to the canvas.
func (st *stage) press(key fyne.KeyName) {
	ev := &fyne.KeyEvent{Name: key}
	if focused := st.Canvas().Focused(); focused != nil {
		focused.TypedKey(ev)
	} else if typed := st.Canvas().OnTypedKey(); typed != nil {
		typed(ev)
	}
}

// shortcut does what the window does with a key and modifiers, by the menus alone.
func (st *stage) shortcut(keys fyne.KeyboardShortcut) bool {
	var find func(items []*fyne.MenuItem) bool
	find = func(items []*fyne.MenuItem) bool {
		for _, item := range items {
			if item.Shortcut != nil && item.Shortcut.ShortcutName() == keys.ShortcutName() {
				item.Action()
				return true
			}
			if item.ChildMenu != nil && find(item.ChildMenu.Items) {
				return true
			}
		}
		return false
	}
	for _, m := range st.window.MainMenu().Items {
		if find(m.Items) {
			return true
		}
	}
	return false
}

// button returns the button with a name in the window, dialogs first.
func (st *stage) button(name string) *widgets.Button {
	st.t.Helper()
	roots := []fyne.CanvasObject{st.Canvas().Content()}
	if top := st.Canvas().Overlays().Top(); top != nil {
		roots = []fyne.CanvasObject{top}
	}
	var names []string
	for _, root := range roots {
		for _, o := range test.LaidOutObjects(root) {
			if b, ok := o.(*widgets.Button); ok && b.Visible() {
				if b.AccessibilityLabel() == name {
					return b
				}
				names = append(names, b.AccessibilityLabel())
			}
		}
	}
	st.t.Fatalf("there is no button %q, only %q", name, names)
	return nil
}

func (st *stage) text() string { return st.status.AccessibilityLabel() }

// save gives the plan a file.
func (st *stage) save(name string) string {
	st.t.Helper()
	path := filepath.Join(st.t.TempDir(), name)
	st.saveAs(path, nil)
	st.settle()
	if st.session.Path() != path {
		st.t.Fatalf("the plan is in %q", st.session.Path())
	}
	return path
}

func TestEveryKeyMeansOneThing(t *testing.T) {
	st := newStage(t)
	names, keys := map[string]bool{}, map[string]string{}
	for _, a := range st.Actions() {
		if names[a.Name] {
			t.Errorf("two actions are called %q", a.Name)
		}
		names[a.Name] = true
		for _, k := range a.Keys {
			written := st.writeKeys(k)
			if other, ok := keys[written]; ok {
				t.Errorf("%s does both %q and %q", written, other, a.Name)
			}
			keys[written] = a.Name
		}
	}
	for _, want := range []string{
		"Ctrl+N", "Ctrl+O", "Ctrl+S", "Ctrl+Shift+S", "Ctrl+Q", "Ctrl+Z", "Ctrl+Y", "Ctrl+Shift+Z", "Ctrl+X", "Ctrl+C",
		"Ctrl+V", "Ctrl+A", "Ctrl+1", "Ctrl+2", "Ctrl+3", "Alt+Left", "Alt+Right", "Ctrl+=", "Ctrl+−", "Ctrl+0",
	} {
		if keys[want] == "" {
			t.Errorf("%s does nothing; there are %v", want, keys)
		}
	}
}

// Every key of the table must be heard by the menus, the second ones too, and by
// the action that it belongs to.
func TestEveryKeyIsHeard(t *testing.T) {
	st := newStage(t)
	for _, a := range st.Actions() {
		for _, k := range a.Keys {
			ran := ""
			for _, other := range st.Actions() {
				name := other.Name
				other.Run, other.Enabled = func() { ran = name }, nil
			}
			if !st.shortcut(k) || ran != a.Name {
				t.Errorf("%s ran %q, not %q", st.writeKeys(k), ran, a.Name)
			}
		}
	}
}

func TestPageOfKeysListsEveryKey(t *testing.T) {
	st := newStage(t)
	rows := st.Keys()
	for _, a := range st.Actions() {
		if len(a.Keys) > 0 && !slices.ContainsFunc(rows, func(r KeyRow) bool { return r.Does == a.Label() }) {
			t.Errorf("the page of keys lacks %q", a.Name)
		}
	}
	for _, r := range rows {
		if strings.Contains(r.Does+r.Keys, "⟦") {
			t.Errorf("no words for %v", r)
		}
	}
	st.Perform("keys")
	if !st.dialogOpen() {
		t.Fatal("the page of keys did not open")
	}
	st.press(fyne.KeyEscape)
	if st.dialogOpen() {
		t.Error("Esc did not close the page of keys")
	}
}

func TestMenusHaveWords(t *testing.T) {
	st := newStage(t)
	st.rename("Yard")
	for _, a := range st.Actions() {
		if strings.Contains(a.Label(), "⟦") || a.Label() == "" {
			t.Errorf("%s is called %q", a.Name, a.Label())
		}
	}
}

// An action out of use does nothing when its key is pressed all the same.
func TestKeysOfActionsOutOfUse(t *testing.T) {
	st := newStage(t)
	if st.Perform("back") || st.Perform("restore_copy") || st.Perform("undo") || st.Perform("no such action") {
		t.Error("an action out of use was performed")
	}
	st.shortcut(backKeys())
	if st.Room() != "due" {
		t.Error("back went somewhere")
	}
}

func TestUndoAsksTheFocusedFieldFirst(t *testing.T) {
	st := newStage(t)
	st.rename("Yard")
	if got := st.undoLabel(); got != "Undo: Pots" {
		t.Errorf("undo is called %q", got)
	}
	field := st.pages["due"].field
	st.Canvas().Focus(field)
	test.Type(field, "basil")
	st.shortcut(&fyne.ShortcutUndo{})
	if field.Text == "basil" || st.session.Plan().Title != "Yard" {
		t.Errorf("undo left the field at %q and the plan at %q", field.Text, st.session.Plan().Title)
	}
	st.shortcut(&fyne.ShortcutRedo{})
	if field.Text != "basil" {
		t.Errorf("redo left the field at %q", field.Text)
	}
	st.Canvas().Unfocus()
	st.shortcut(&fyne.ShortcutUndo{})
	if st.session.Plan().Title != "Terrace" || !strings.Contains(st.text(), "Undone: Pots") {
		t.Errorf("undo left the plan at %q and said %q", st.session.Plan().Title, st.text())
	}
	st.shortcut(ctrlShift(fyne.KeyZ))
	if st.session.Plan().Title != "Yard" {
		t.Error("Ctrl+Shift+Z did not redo")
	}
}

// calm is a field in which nothing is typed that the plan does not have.
type calm struct{ widget.Entry }

func (c *calm) Typing() bool { return false }

func TestUndoPassesAFieldWithoutTyping(t *testing.T) {
	st := newStage(t)
	st.rename("Yard")
	field := &calm{}
	field.ExtendBaseWidget(field)
	st.pages["due"].object.(*fyne.Container).Add(field)
	st.Canvas().Focus(field)
	st.Undo()
	if st.session.Plan().Title != "Terrace" {
		t.Error("undo stayed in a field without typing")
	}
}

func TestCutCopyPasteGoToTheFocusedField(t *testing.T) {
	st := newStage(t)
	field := st.pages["due"].field
	st.Canvas().Focus(field)
	test.Type(field, "thyme")
	st.shortcut(&fyne.ShortcutSelectAll{})
	st.shortcut(&fyne.ShortcutCut{})
	if field.Text != "" || st.config.App.Clipboard().Content() != "thyme" {
		t.Errorf("cut left %q and put %q on the clipboard", field.Text, st.config.App.Clipboard().Content())
	}
	st.shortcut(&fyne.ShortcutPaste{})
	st.shortcut(&fyne.ShortcutPaste{})
	if field.Text != "thymethyme" {
		t.Errorf("pasting gave %q", field.Text)
	}
	st.Canvas().Unfocus()
	st.shortcut(&fyne.ShortcutPaste{}) // nowhere to go: nothing happens
}

func TestBackAndForward(t *testing.T) {
	st := newStage(t)
	st.shortcut(ctrl(fyne.Key2))
	st.GoTo("feeding", "round-3")
	st.GoTo("no such room", "")
	if st.Room() != "feeding" {
		t.Fatalf("in %q", st.Room())
	}
	st.shortcut(backKeys())
	st.shortcut(backKeys())
	if st.Room() != "due" || st.rail.Selected() != 0 || st.page.Objects[0] != st.pages["due"].object {
		t.Fatalf("back led to %q, tab %d", st.Room(), st.rail.Selected())
	}
	st.shortcut(forwardKeys())
	st.shortcut(forwardKeys())
	if st.Room() != "feeding" || !slices.Equal(st.pages["feeding"].opened, []string{"round-3", "round-3"}) {
		t.Errorf("forward led to %q, where %q was opened", st.Room(), st.pages["feeding"].opened)
	}
	st.Back()
	st.GoTo("due", "")
	if st.history.canGoForward() {
		t.Error("what lay ahead is still there")
	}
}

func TestHistoryForgetsTheOldest(t *testing.T) {
	h := history{}
	for i := range 3 * historyKept {
		h.visit(place{"pots", fmt.Sprint(i)})
	}
	steps := 0
	for h.back() {
		steps++
	}
	if steps != historyKept-1 {
		t.Errorf("%d steps back", steps)
	}
	if h.visit(h.here()) {
		t.Error("going where one is was a step")
	}
}

func TestRoomsOutOfSightAreRefreshedLater(t *testing.T) {
	st := newStage(t)
	if len(st.pages) != 1 {
		t.Fatalf("%d rooms were made before anybody went there", len(st.pages))
	}
	st.GoTo("pots", "")
	st.GoTo("due", "")
	before := st.pages["pots"].refreshed
	st.rename("Yard")
	if st.pages["pots"].refreshed != before {
		t.Error("a room out of sight was refreshed")
	}
	st.GoTo("pots", "")
	if st.pages["pots"].refreshed != before+1 {
		t.Errorf("refreshed %d times on coming back", st.pages["pots"].refreshed-before)
	}
}

func TestWorkingPanel(t *testing.T) {
	st := newStage(t)
	figure := st.pages["due"].figure
	st.Canvas().Focus(figure)
	st.press(fyne.KeyF1)
	if !st.WorkingOpen() {
		t.Fatal("F1 on a figure opened no working")
	}
	if got, want := st.panel.data.Inputs[0].Name, "Pots"; got != want {
		t.Errorf("the first input is %q", got)
	}
	if !st.panel.data.Soft || st.panel.data.Inputs[0].Soft || !st.panel.data.Inputs[1].Soft {
		t.Error("what is soft is not told from what is firm")
	}
	st.panel.data.Inputs[0].OnOpen()
	if st.panel.data.Title != "Pots" || len(st.panel.data.Path) != 1 || st.panel.data.Path[0].Title != "Feeding" {
		t.Errorf("the input opened as %q under %v", st.panel.data.Title, st.panel.data.Path)
	}
	st.panel.data.Path[0].OnOpen()
	if st.panel.data.Title != "Feeding" || len(st.panel.data.Path) != 0 {
		t.Errorf("the way back led to %q", st.panel.data.Title)
	}
	st.rename("Yard")
	if len(st.panel.data.Notes) != 1 {
		t.Errorf("an old working says %q", st.panel.data.Notes)
	}
	st.press(fyne.KeyEscape)
	if st.WorkingOpen() || st.Canvas().Focused() != figure {
		t.Errorf("Esc left the panel open %v and the focus at %v", st.WorkingOpen(), st.Canvas().Focused())
	}
	st.ShowWorking(planner.Figure{})
	if st.WorkingOpen() {
		t.Error("no figure opened a working")
	}
}

// The panel lies over the page where the window is too small for both, and then
// keeps clicks from what is under it.
func TestPanelNeverWidensTheWindow(t *testing.T) {
	st := newStage(t)
	before := st.content.MinSize()
	wide := widget.NewEntry()
	st.pages["due"].object.(*fyne.Container).Add(container.NewGridWrap(fyne.NewSize(700, 40), wide))
	st.ShowWorking(mixFigure())
	if after := st.content.MinSize(); after != before {
		t.Errorf("with the panel the window needs %v, without it %v", after, before)
	}
	pressed := false
	under := widget.NewButton("", func() { pressed = true })
	st.setPage(under)
	under.Resize(fyne.NewSize(2000, 2000))
	test.TapCanvas(st.Canvas(), st.panel.Position().AddXY(-40, 300))
	if !pressed {
		t.Fatal("the page beside the panel cannot be pressed")
	}
	pressed = false
	test.TapCanvas(st.Canvas(), st.panel.Position().AddXY(20, 300))
	if pressed {
		t.Error("a click on the panel went through it")
	}
}

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
	want := filepath.Join(folder, "Terrace.yaml")
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
	taken := filepath.Join(st.config.Folder, "taken.yaml")
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
	test.Tap(st.button("Bring in the changes"))
	st.settle()
	if p := st.session.Plan(); p.Title != "Roof" || p.Units != quantity.USCustomary {
		t.Errorf("merged into %q, %v", p.Title, p.Units)
	}
	if noticeText(st) != "" {
		t.Errorf("still says %q", noticeText(st))
	}
}

func TestUnsavedWorkComesBackAfterARestart(t *testing.T) {
	st := newStage(t)
	path := st.save("terrace.yaml")
	st.rename("Yard")
	st.session.Close() // as at the end of the program, without saving
	st.Shell.Close()
	st.start(st.config.App)
	st.OfferRecovery()
	test.Tap(st.button("Look at it…"))
	test.Tap(st.button("Bring it back"))
	st.until("the work", func() bool { return st.session.Plan().Title == "Yard" })
	if !st.session.Dirty() || st.session.Path() != path || noticeText(st) != "" {
		t.Errorf("unsaved %v, file %q, said %q", st.session.Dirty(), st.session.Path(), noticeText(st))
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

func TestUnitsAreAnEditOfThePlan(t *testing.T) {
	st := newStage(t)
	st.Perform("units_us")
	if got := st.undoLabel(); got != "Undo: change to US customary units" {
		t.Errorf("undo is called %q", got)
	}
	st.Perform("undo")
	if st.units() != quantity.Metric {
		t.Error("the units were not undone")
	}
	st.Perform("units_metric")
	if _, ok := st.session.UndoStep(); ok {
		t.Error("choosing the units that were there was an edit")
	}
}

func TestLookIsShownAndRemembered(t *testing.T) {
	st := newStage(t)
	for _, name := range []string{"page_dark", "high_contrast", "color_safe", "text_larger"} {
		if !st.Perform(name) {
			t.Fatalf("%s was not performed", name)
		}
	}
	want := theme.Options{Mode: theme.Dark, HighContrast: true, ColorSafe: true, TextScale: 1.15}
	shown := fyne.CurrentApp().Settings().Theme().(*theme.Theme).Options()
	remembered := NewSettings(st.config.App.Preferences()).Look()
	if diff := cmp.Diff([]theme.Options{want, want}, []theme.Options{shown, remembered}); diff != "" {
		t.Error(diff)
	}
	for range 20 {
		st.Perform("text_larger")
	}
	if got := st.settings.Look().TextScale; got != theme.MaxTextScale {
		t.Errorf("text grew to %v", got)
	}
	st.Perform("text_usual")
	if got := st.settings.Look().TextScale; got != 1 {
		t.Errorf("usual text is %v", got)
	}
}

func TestRecentPlans(t *testing.T) {
	s := NewSettings(test.NewTempApp(t).Preferences())
	for i := range 2 * recentKept {
		s.AddRecent(fmt.Sprintf("/plans/%d.yaml", i))
	}
	s.AddRecent("/plans/12.yaml")
	got := s.Recent()
	if len(got) != recentKept || got[0] != "/plans/12.yaml" || got[1] != "/plans/15.yaml" {
		t.Errorf("recent: %q", got)
	}
	if s.Started() || !s.Started() {
		t.Error("the first start is not told from the second")
	}
	s.SetWindow(fyne.NewSize(200, 3000))
	if got := s.Window(); got != fyne.NewSize(LeastWindow.Width, 3000) {
		t.Errorf("the window is %v", got)
	}
}

// Tab goes on as one reads: rail, page, panel.
func TestFocusGoesAsOneReads(t *testing.T) {
	st := newStage(t)
	st.ShowWorking(mixFigure())
	st.Canvas().Unfocus()
	page := st.pages["due"]
	for i, want := range []fyne.Focusable{st.rail, page.field, page.figure, st.panel, st.panel.card.CloseButton()} {
		test.FocusNext(st.Canvas())
		if got := st.Canvas().Focused(); got != want {
			t.Errorf("step %d: the focus is at %T, not %T", i+1, got, want)
		}
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
