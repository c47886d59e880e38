package main

import (
	"context"
	"crypto/rand"
	"os"
	"os/user"
	"path/filepath"
	"runtime"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"github.com/adrg/xdg"

	"fourturn/app/desktop"
	"fourturn/app/session"
	"fourturn/app/theme"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/planfile"
)

// openWindow opens the window, with a plan file if path is not "", and returns
// when it is closed.
func openWindow(t *terminal, path string) int {
	if headless {
		t.complain("desktop.no_window")
		return exitFault
	}
	if !hasDisplay(runtime.GOOS, os.Getenv) {
		t.complain("desktop.no_display")
		return exitFault
	}
	watch := newWatch(t)
	defer watch.book.Close()
	return watch.guard(func(closing func(func())) {
		app.SetMetadata(metadata())
		a := app.NewWithID(appID)
		w := newWiring(t, a, newStore(stateFolder(), t.now), fyne.Do)
		w.log = watch.book.Note
		closing(w.closeSession)
		w.window = a.NewWindow(appName)
		w.window.SetMaster()
		w.open()
		w.window.Resize(w.shell.Settings().Window())
		w.begin(path)
		w.shell.TellCrash(watch.book.LastCrash())
		day := t.today()
		a.Lifecycle().SetOnEnteredForeground(func() {
			w.shell.LookForChanges()
			if today := t.today(); today != day {
				day = today
				w.session.WorkOutAgain()
			}
		})
		w.window.ShowAndRun()
	})
}

// hasDisplay reports whether a window can be opened here. Windows and macOS always
// have a display for a person who is logged in.
func hasDisplay(system string, getenv func(string) string) bool {
	if system == "windows" || system == "darwin" {
		return true
	}
	return getenv("DISPLAY") != "" || getenv("WAYLAND_DISPLAY") != ""
}

// wiring is all that the window is made of.
type wiring struct {
	terminal *terminal
	app      fyne.App
	ref      planner.Reference
	store    *planfile.Store
	session  *desktop.Session
	window   fyne.Window
	shell    *desktop.Shell
	folder   string // where plans are kept
	log      func(event string, about ...string)
}

// patience is how long the end of the program waits for a plan file on a drive that
// hangs.
const patience = 5 * time.Second

// closeSession writes what is to be written; unsaved work goes into the journal.
func (w *wiring) closeSession() {
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	w.session.CloseContext(ctx)
}

// newWiring joins a session to the planner. The window is still missing.
func newWiring(t *terminal, a fyne.App, store *planfile.Store, post func(func())) *wiring {
	ref := reference(t)
	return &wiring{
		terminal: t, app: a, ref: ref, store: store, folder: xdg.UserDirs.Documents,
		session: session.New(session.Config[*planner.Outlook]{
			Store: store, Holder: holder(t.now()), WorkOut: workOutToday(ref, t.today), Post: post,
		}),
	}
}

// open fills the window in the chosen look and language.
func (w *wiring) open() {
	settings := desktop.NewSettings(w.app.Preferences())
	w.app.Settings().SetTheme(theme.New(settings.Look()))
	text := w.terminal.words
	if language := settings.Language(); language != "" {
		text = words.New(language)
	}
	if w.shell != nil {
		w.shell.Close()
	}
	w.shell = desktop.New(desktop.Config{
		App: w.app, Window: w.window, Session: w.session, Store: w.store, Words: text,
		Rooms:   rooms(w.session, text, w.ref.Book, w.terminal.bookFaults),
		NewPlan: newPlan, Example: examplePlan,
		Begin:   beginner(w.session, text, w.ref, w.terminal.today),
		Details: detailer(w.session, text),
		Find:    finder(w.session, text, w.ref.Book),
		Folder:  w.folder, About: about(w.ref), PlantName: plantName(w.ref), Reword: w.open, Log: w.log,
	})
}

// begin opens the plan to begin with: the one that was asked for, else the one
// that was open last, else, the first time, the example.
func (w *wiring) begin(path string) {
	settings := w.shell.Settings()
	started := settings.Started()
	recent := settings.Recent()
	switch {
	case path != "":
		if whole, err := filepath.Abs(path); err == nil {
			path = whole
		}
		w.shell.OpenFile(path)
	case len(recent) > 0:
		w.shell.OpenFile(recent[0])
	case !started:
		w.shell.Start(examplePlan())
	default:
		w.shell.Start(newPlan())
	}
	w.shell.OfferRecovery()
}

// newPlan returns the plan that a person begins with.
func newPlan() *planner.Plan { return &planner.Plan{ID: rand.Text(), Risk: planner.DefaultRisk} }

// newStore returns the store of plan files, with its copies and journals in a
// folder.
func newStore(folder string, now func() time.Time) *planfile.Store {
	return planfile.NewStore(folder, now, rand.Text)
}

// stateFolder returns where the system wants what a program keeps between starts.
func stateFolder() string { return filepath.Join(xdg.StateHome, "fourturn") }

// holder says who we are to others who open the same plan.
func holder(now time.Time) planfile.Holder {
	h := planfile.Holder{Process: os.Getpid(), Since: now}
	if u, err := user.Current(); err == nil {
		h.User = u.Username
	}
	h.Host, _ = os.Hostname()
	return h
}

// todayOf returns a clock that stands still at a day, for pictures that are the
// same every time.
func todayOf(day civil.Date) func() time.Time {
	return func() time.Time { return day.Time() }
}
