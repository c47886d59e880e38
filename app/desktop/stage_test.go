package desktop

import (
	"context"
	"fmt"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/session"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/planfile"
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
func mixFigure() planner.Figure { return mixFigureOf(38) }

func mixFigureOf(litres float64) planner.Figure {
	volume := working.Trace{
		Name: "pots.title", Formula: "V = a × b × h", Result: working.Number(31, working.Litre),
		Source: working.Source{Status: working.Definition},
		Inputs: []working.Input{{Symbol: "a", Name: "due.title", Value: working.Number(0.8, working.Metre), Source: working.Source{Status: working.Entered}}},
	}
	return planner.NewFigure(working.Number(litres, working.Litre), func() working.Trace {
		return working.Trace{
			Name: "feeding.title", Formula: "B = V × (1 + s)", Result: working.Number(litres, working.Litre),
			Source: working.Source{Status: working.CommonPractice},
			Inputs: []working.Input{
				{Symbol: "V", Name: "pots.title", Value: working.Number(31, working.Litre), From: &volume},
				{Symbol: "s", Name: "desktop.back", Value: working.Number(0.2, working.Share), Source: working.Source{Status: working.Judgement}},
			},
		}
	})
}

// workOut gives every plan one figure, which grows with its title; an empty title
// has none.
func workOut(_ context.Context, p *planner.Plan) *planner.Outlook {
	o := &planner.Outlook{Plan: p}
	if p.Title != "" {
		o.Buying = []planner.Buying{{Product: "mix", Need: mixFigureOf(38 + float64(len(p.Title)-len("Terrace")))}}
	}
	return o
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
		WorkOut: workOut,
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
			p.figure = widgets.NewFigure(widgets.FigureData{Value: "38 L"}, func() {
				outlook, _ := s.session.Outlook()
				s.ShowWorking(outlook.Buying[0].Need)
			})
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
