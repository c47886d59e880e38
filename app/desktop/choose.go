package desktop

import (
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/session"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner/quantity"
)

// chooserSize is the room for a list of files in the smallest window.
var chooserSize = fyne.NewSize(560, 360)

// ChooseFile asks which plan to open.
func (s *Shell) ChooseFile() {
	s.whenSaved(func() {
		s.newFileDialog("", exists, s.OpenFile).show(s, "desktop.open_title", "desktop.open_accept")
	})
}

// AskSaveAs asks where to save the plan. then is that of [Shell.Save].
func (s *Shell) AskSaveAs(then func()) {
	if s.session.ReadOnly() {
		s.fail("desktop.not_saved", session.ErrReadOnly)
		return
	}
	named := func(path string) error {
		if fault := nameFault(filepath.Base(path)); fault != "" {
			return &words.Refusal{Text: s.words.T(fault)}
		}
		return nil
	}
	save := func(path string) { s.saveAs(withEnding(path), then) }
	s.newFileDialog(s.suggestedName(), named, save).show(s, "desktop.save_title", "desktop.save_accept")
}

// fileDialog asks for a file: a name, and the folder it is in. A whole path may be
// typed instead of a name.
type fileDialog struct {
	dialog  *widgets.Dialog
	browser *browser
	name    *nameEntry
	problem *widget.Label
	words   *words.Words
	check   func(path string) error
	choose  func(path string)
}

// newFileDialog returns a dialog that hands the chosen path to choose. A path that
// check refuses stays in the dialog with the reason under it.
func (s *Shell) newFileDialog(suggested string, check func(path string) error, choose func(path string)) *fileDialog {
	f := &fileDialog{
		browser: newBrowser(s.words, s.folder()), problem: widget.NewLabel(""), words: s.words,
		check: check, choose: choose,
	}
	f.name = newNameEntry(suggested, f.accept, func() { f.dialog.Cancel() })
	f.name.SetPlaceHolder(s.words.T("desktop.file_name"))
	f.problem.Importance = widget.DangerImportance
	f.problem.Wrapping = fyne.TextWrapWord
	f.problem.Hide()
	f.browser.onFail = f.refuse
	f.browser.onChange = func(name string) {
		if name != "" || suggested == "" {
			f.name.SetText(name)
		}
	}
	f.browser.onChoose = f.take
	return f
}

func (f *fileDialog) show(s *Shell, title, accept string) {
	content := container.NewBorder(nil, column(f.name, f.problem), nil, nil, f.browser.object)
	focus := f.browser.table.Body()
	if f.name.Text != "" {
		focus = f.name
	}
	f.dialog = widgets.ShowDialog(s.Canvas(), widgets.DialogData{
		Title: s.words.T(title), Content: content, Size: chooserSize, Focus: focus,
		Accept: s.words.T(accept), Cancel: s.words.T("desktop.cancel"),
		OnAccept: func() bool {
			f.accept()
			return false // closed by take, before another dialog may open
		},
	})
}

// accept takes what is typed, else what is selected in the list.
func (f *fileDialog) accept() {
	typed := strings.TrimSpace(f.name.Text)
	switch {
	case typed == "":
		f.browser.enter(f.browser.table.Selected())
	case filepath.IsAbs(typed):
		f.take(typed)
	default:
		f.take(filepath.Join(f.browser.folder, typed))
	}
}

// take hands over a path, or goes into it where it is a folder.
func (f *fileDialog) take(path string) {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		f.name.SetText("")
		f.browser.show(path)
		return
	}
	if err := f.check(path); err != nil {
		f.refuse(err)
		return
	}
	f.dialog.Close() // what choose may ask must not lie under it
	f.choose(path)
}

func (f *fileDialog) refuse(err error) {
	f.problem.SetText(cause(f.words, err, quantity.Metric))
	f.problem.Show()
}

// folder returns where to look first: beside the open plan, else beside the last
// one, else where plans are kept.
func (s *Shell) folder() string {
	if path := s.session.Path(); path != "" {
		return filepath.Dir(path)
	}
	if recent := s.settings.Recent(); len(recent) > 0 {
		if info, err := os.Stat(filepath.Dir(recent[0])); err == nil && info.IsDir() {
			return filepath.Dir(recent[0])
		}
	}
	return s.config.Folder
}

// saveAs saves to another file, and asks before it replaces one.
func (s *Shell) saveAs(path string, then func()) {
	s.session.SaveAs(path, false, func(err error) {
		if session.IsChangedElsewhere(err) {
			s.askReplace(path, then)
			return
		}
		s.saved(path, err, then)
	})
}

func (s *Shell) askReplace(path string, then func()) {
	widgets.ShowDialog(s.Canvas(), widgets.DialogData{
		Title:   s.words.T("desktop.replace_title", words.A{"file": filepath.Base(path)}),
		Content: widgets.NewText(s.words.T("desktop.replace_text")), Size: fyne.NewSize(440, 0),
		Accept: s.words.T("desktop.replace_accept"), Cancel: s.words.T("desktop.cancel"),
		OnAccept: func() bool {
			s.session.SaveAs(path, true, func(err error) { s.saved(path, err, then) })
			return true
		},
	})
}

// signsRefused are not allowed in names on Windows; plans travel.
const signsRefused = `/\:*?"<>|`

// suggestedName returns a name for the file of the plan.
func (s *Shell) suggestedName() string {
	if path := s.session.Path(); path != "" {
		return filepath.Base(path)
	}
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(signsRefused, r) || r < ' ' {
			return '-'
		}
		return r
	}, s.planName()) + planEnding
}

// nameFault returns the key of what is wrong with a name for a file, or "".
func nameFault(name string) string {
	switch {
	case name == "" || name == "." || name == "..":
		return "desktop.name_empty"
	case strings.ContainsAny(name, signsRefused):
		return "desktop.name_signs"
	}
	return ""
}

func withEnding(path string) string {
	if isPlanName(path) {
		return path
	}
	return path + planEnding
}

// nameEntry is an entry for a name in a dialog: Enter accepts, Esc cancels.
type nameEntry struct {
	widget.Entry
	onEscape func()
}

func newNameEntry(text string, onEnter, onEscape func()) *nameEntry {
	e := &nameEntry{onEscape: onEscape}
	e.Text = text
	e.OnSubmitted = func(string) { onEnter() }
	e.ExtendBaseWidget(e)
	return e
}

// TypedKey cancels on Esc and types all else.
func (e *nameEntry) TypedKey(ev *fyne.KeyEvent) {
	if ev.Name == fyne.KeyEscape {
		e.onEscape()
		return
	}
	e.Entry.TypedKey(ev)
}

// AccessibilityLabel returns what is asked for and what is typed.
func (e *nameEntry) AccessibilityLabel() string { return e.PlaceHolder + ": " + e.Text }

// AccessibilityRole is text, the nearest that the toolkit knows.
func (e *nameEntry) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// column puts parts of a dialog below each other.
func column(parts ...fyne.CanvasObject) fyne.CanvasObject {
	return container.New(layout.NewCustomPaddedVBoxLayout(theme.Step), parts...)
}

// leftAligned keeps a button as wide as it is.
func leftAligned(o fyne.CanvasObject) fyne.CanvasObject { return container.NewHBox(o) }
