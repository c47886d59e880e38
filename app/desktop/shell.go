package desktop

import (
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"fourturn/app/session"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/planfile"
	"fourturn/planner/quantity"
)

// Session is the open plan with its outlook.
type Session = session.Session[*planner.Outlook]

// Config is what a shell needs from the program around it.
type Config struct {
	App     fyne.App
	Window  fyne.Window
	Session *Session
	Store   *planfile.Store
	Words   *words.Words
	Rooms   []Room
	// NewPlan returns the plan that a person begins with.
	NewPlan func() *planner.Plan
	// Example returns the built-in example plan.
	Example func() *planner.Plan
	// Folder is where the first plan is saved if nobody says otherwise.
	Folder string
	// About says what the page about the program shows.
	About About
	// PlantName returns what a plant of the book is called; nil leaves ids.
	PlantName func(id string) string
	// Begin asks the questions that make a new plan; nil begins an empty one.
	Begin func(*Shell)
	// Details opens what holds for the whole plan; nil where there is nothing.
	Details func(*Shell)
	// Find opens the search for everything; nil where there is none.
	Find func(*Shell)
	// Log keeps what was done, for who has to find out why the program stopped: a
	// word for the event and names of actions, edits or files. It may be nil.
	Log func(event string, about ...string)
	// Reword makes the shell anew after another language was chosen; nil hides the
	// choice.
	Reword func()
}

// Shell is the content of the window and all that surrounds the rooms.
type Shell struct {
	config   Config
	session  *Session
	words    *words.Words
	settings *Settings
	window   fyne.Window

	rooms    []roomState
	history  history
	menus    []menu
	shown    string // what the menus show, to leave them alone while it stays so
	fileSaid string // what was last said about the file

	content *fyne.Container
	rail    *widgets.NavRail
	page    *fyne.Container
	busy    *widgets.Busy
	panel   *panel
	notices *noticeBoard
	status  *widgets.StatusLine

	asked  *widgets.Dialog // what was last asked about unsaved work
	beside map[string]bool // second copies that the person put away until the next start, by path
	cancel func()          // ends listening to the session
}

// New returns a shell and makes it the content of the window.
func New(config Config) *Shell {
	if len(config.Rooms) == 0 {
		panic("desktop: no rooms")
	}
	s := &Shell{
		config: config, session: config.Session, words: config.Words, window: config.Window,
		settings: NewSettings(config.App.Preferences()),
	}
	for _, room := range config.Rooms {
		s.rooms = append(s.rooms, roomState{Room: room})
	}
	s.rail = widgets.NewNavRail(s.railItems(), func(i int) { s.GoTo(s.rooms[i].Key, "") })
	s.page = container.NewStack()
	s.busy = widgets.NewBusy(widgets.BusyData{Title: s.words.T("desktop.working_out"), Done: -1}, nil)
	s.notices = newNoticeBoard()
	s.panel = newPanel(s.workingWords(), s.CloseWorking)
	s.status = widgets.NewStatusLine()
	s.content = container.New(&shellLayout{page: s.page}, s.railWithFind(), s.notices.box, container.NewScroll(s.page), s.panel, s.status)
	s.history.visit(place{room: s.rooms[0].Key})
	s.menus = s.table()
	s.cancel = s.session.Subscribe(s.heard)
	s.window.SetPadded(false)
	s.window.SetContent(s.content)
	s.window.SetCloseIntercept(s.Quit)
	s.window.SetOnDropped(func(_ fyne.Position, dropped []fyne.URI) { s.Dropped(dropped) })
	s.window.Canvas().SetOnTypedKey(s.typedKey)
	s.showPage()
	s.refreshFile()
	s.refreshMenus()
	return s
}

// railWithFind returns the rail with the way to the search at its foot.
func (s *Shell) railWithFind() fyne.CanvasObject {
	if s.config.Find == nil {
		return s.rail
	}
	find := widgets.NewButton(widgets.ButtonData{Icon: theme.IconSearch, Label: s.words.T("desktop.find_short"), Kind: widgets.ButtonQuiet, Name: s.words.T("desktop.find")}, s.Find)
	find.OnHint = s.Hint
	return container.New(railLayout{}, s.rail, find)
}

// Close ends listening to the session, as before another shell takes over.
func (s *Shell) Close() { s.cancel() }

// Canvas returns the canvas of the window, for dialogs.
func (s *Shell) Canvas() fyne.Canvas { return s.window.Canvas() }

// Settings returns what is remembered between starts.
func (s *Shell) Settings() *Settings { return s.settings }

// Status says something in the line at the foot, such as what was just done.
func (s *Shell) Status(text string) { s.status.SetText("", text) }

// Hint says what the thing under the pointer does; "" ends it. It fits
// widgets.Button.OnHint.
func (s *Shell) Hint(text string) { s.status.SetHint(text) }

// heard is called after every change of the session.
func (s *Shell) heard(event session.Event) {
	if step, ok := s.session.UndoStep(); ok && event.Has(session.PlanChanged) {
		s.log("edit", step.Name)
	}
	if event.Has(session.PlanChanged) || event.Has(session.OutlookChanged) {
		s.refreshPages()
		s.renewWorking()
	}
	s.refreshFile()
	s.refreshMenus()
}

// log keeps a line of what was done.
func (s *Shell) log(event string, about ...string) {
	if s.config.Log != nil {
		s.config.Log(event, about...)
	}
}

// refreshFile shows the state of the plan's file: the title of the window, the
// right end of the line at the foot, and what has to be said about the file.
func (s *Shell) refreshFile() {
	name, mark := s.planName(), ""
	if s.session.Dirty() {
		mark = "• "
	}
	s.window.SetTitle(mark + name + " – Fourturn")
	s.status.SetRight(s.words.T("desktop.file_state", words.A{"plan": name, "state": s.words.T(s.fileState())}))
	s.noteFile()
}

// planName returns what the plan is called: its title, else its file.
func (s *Shell) planName() string {
	if title := s.session.Plan().Title; title != "" {
		return title
	}
	if path := s.session.Path(); path != "" {
		return filepath.Base(path)
	}
	return s.words.T("desktop.untitled")
}

// fileState returns the key of the words for what is going on with the file.
func (s *Shell) fileState() string {
	_, current := s.session.Outlook()
	switch {
	case s.session.Busy(session.OpeningFile):
		return "session.opening"
	case s.session.Busy(session.SavingFile):
		return "session.saving"
	case !current:
		return "session.working_out"
	case s.session.ReadOnly():
		return "desktop.state_read_only"
	case s.session.Dirty() && s.session.JournalError() != nil:
		return "desktop.state_unsafe"
	case s.session.Dirty():
		return "desktop.state_unsaved"
	case s.session.Path() == "":
		return "desktop.state_no_file"
	}
	return "desktop.state_saved"
}

// units returns what the person reads.
func (s *Shell) units() quantity.System { return s.session.Plan().Units }

// typedKey takes the keys that nothing with the focus takes.
func (s *Shell) typedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyEscape:
		s.CloseWorking()
	case fyne.KeyF1:
		s.ShowKeys()
	}
}

// shellLayout places rail, notices, page, panel and the line at the foot. The
// panel stands beside the page while the page keeps the room it needs, and lies
// over its right part in a smaller window. A page that needs more room than there
// is scrolls; a room of its own accord scrolls what is long in it.
type shellLayout struct {
	page fyne.CanvasObject // what scrolls
}

// railLayout gives the rail all the height and puts a button on its foot.
type railLayout struct{}

func (railLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	rail, button := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(max(rail.Width, button.Width+theme.Step), rail.Height+button.Height)
}

func (railLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	high := objects[1].MinSize().Height
	put(objects[0], 0, 0, size.Width, size.Height)
	put(objects[1], theme.Half, size.Height-high-theme.Step, size.Width-theme.Step-theme.Half, high)
}

// leastContent is the smallest window without its frame of menus, which is one
// line of text high.
var leastContent = LeastWindow.SubtractWidthHeight(0, 40)

// panelWidth is wide enough for a formula and its inputs: about 45 letters.
const panelWidth float32 = 360

func (*shellLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	rail, notices, status := objects[0].MinSize(), objects[1].MinSize(), objects[4].MinSize()
	return leastContent.Max(fyne.NewSize(rail.Width+notices.Width, rail.Height+status.Height))
}

func (l *shellLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	rail, notices, page, panel, status := objects[0], objects[1], objects[2], objects[3], objects[4]
	foot := status.MinSize().Height
	height := size.Height - foot
	put(status, 0, height, size.Width, foot)
	left := rail.MinSize().Width
	put(rail, 0, 0, left, height)
	width := size.Width - left
	wide := min(panelWidth, width-theme.Step4)
	if panel.Visible() {
		put(panel, size.Width-wide, 0, wide, height)
		if width-wide >= max(l.page.MinSize().Width+2*theme.Step2, notices.MinSize().Width) {
			width -= wide
		}
	}
	notices.Resize(fyne.NewSize(width, notices.MinSize().Height)) // text that wraps needs its width first
	top := notices.MinSize().Height
	put(notices, left, 0, width, top)
	put(page, left+theme.Step2, top, width-2*theme.Step2, height-top)
}

func put(o fyne.CanvasObject, x, y, width, height float32) {
	o.Move(fyne.NewPos(x, y))
	o.Resize(fyne.NewSize(width, height))
}
