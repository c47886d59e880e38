package desktop

import (
	"errors"
	"io/fs"
	"path/filepath"

	"fyne.io/fyne/v2"

	"fourturn/app/session"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/planfile"
)

// Subjects of notices.
const (
	aboutFailure = "failure"
	aboutFile    = "file"    // who else has it, what was passed over, that it is newer
	aboutJournal = "journal" // unsaved work is not being kept
	aboutChange  = "change"  // someone else changed the file
)

// fail says that something did not work, why, and what is still safe.
func (s *Shell) fail(titleKey string, err error) {
	s.log("failure", append([]string{titleKey}, logged(err)...)...)
	s.notice(aboutFailure, widgets.NoticeData{
		Kind: widgets.NoticeError, Title: s.words.T(titleKey), Text: Explain(s.words, err, s.units()),
	})
}

// logged is what the log may hold of an error: what failed at which file, without
// the folders that it lies in.
func logged(err error) []string {
	var file *planfile.FileError
	if errors.As(err, &file) {
		return []string{file.TextKey(), filepath.Base(file.Path)}
	}
	return nil
}

// succeed takes away what was said of an earlier failure.
func (s *Shell) succeed(status string) {
	s.unnotice(aboutFailure)
	if status == "" {
		s.status.SetText("", "")
		return
	}
	s.status.SetText(theme.IconTick, status)
}

// whenSaved goes on once there is no unsaved work: at once, after saving, or after
// letting it go. It does not go on if the person would rather stay.
func (s *Shell) whenSaved(goOn func()) {
	if !s.session.Dirty() {
		goOn()
		return
	}
	s.askUnsaved(goOn)
}

func (s *Shell) askUnsaved(goOn func()) {
	if s.asked != nil {
		s.asked.Close() // asked once more, as by the button of the window
	}
	var d *widgets.Dialog
	discard := widgets.NewButton(widgets.ButtonData{Label: s.words.T("desktop.unsaved_discard"), Kind: widgets.ButtonQuiet, Icon: theme.IconRemove}, func() {
		d.Close()
		s.session.Discard()
		goOn()
	})
	content := column(
		widgets.NewText(s.words.T("desktop.unsaved_text", words.A{"plan": s.planName()})),
		leftAligned(discard),
	)
	d = widgets.ShowDialog(s.Canvas(), widgets.DialogData{
		Title: s.words.T("desktop.unsaved_title"), Content: content, Size: fyne.NewSize(440, 0),
		Accept: s.words.T("desktop.unsaved_save"), Cancel: s.words.T("desktop.cancel"),
		OnAccept: func() bool {
			d.Close()
			s.Save(goOn)
			return false // closed already, before another dialog may open
		},
	})
	s.focusNothing()
	s.asked = d
}

// focusNothing takes the focus from the first button of the dialog on top, which
// lets work go. Enter then accepts and Esc cancels, as in every dialog.
func (s *Shell) focusNothing() { s.Canvas().Unfocus() }

// NewPlan asks the questions that make a new plan, or begins an empty one where
// nobody asks.
func (s *Shell) NewPlan() {
	if s.config.Begin == nil {
		s.Empty()
		return
	}
	s.config.Begin(s)
}

// Empty begins an empty plan.
func (s *Shell) Empty() { s.whenSaved(func() { s.Start(s.config.NewPlan()) }) }

// Replace puts another plan in the place of the open one, by start, once there is no
// unsaved work, and shows a room of it. Who would rather stay loses nothing.
func (s *Shell) Replace(start func() error, room string) {
	s.whenSaved(func() {
		if err := start(); err != nil {
			s.fail("desktop.not_done", err)
			return
		}
		s.opened("")
		s.GoTo(room, "")
	})
}

// OpenExample opens the example plan, as a plan without a file.
func (s *Shell) OpenExample() {
	s.whenSaved(func() { s.Start(s.config.Example()) })
}

// Start shows a plan that has no file. There must be no unsaved work.
func (s *Shell) Start(plan *planner.Plan) {
	if err := s.session.Start(plan); err != nil {
		s.fail("desktop.not_opened", err)
		return
	}
	s.opened("")
}

// opened begins at the first room with another plan.
func (s *Shell) opened(status string) {
	s.CloseWorking()
	s.unnotice(aboutChange)
	s.unnotice(aboutBeside)
	s.succeed(status)
	s.history = history{}
	s.history.visit(place{room: s.rooms[0].Key})
	s.rail.Select(0)
	s.refreshPages()
	s.refreshMenus()
}

// OpenFile opens a plan file. A file that cannot be read is reported and left
// alone, and the plan that was open stays.
func (s *Shell) OpenFile(path string) {
	s.whenSaved(func() {
		s.session.Open(path, func(err error) {
			if err != nil {
				if errors.Is(err, fs.ErrNotExist) {
					s.settings.ForgetRecent(path)
				}
				s.fail("desktop.not_opened", err)
				s.refreshMenus()
				return
			}
			s.settings.AddRecent(path)
			s.log("opened", filepath.Base(path))
			s.opened(s.words.T("desktop.opened", words.A{"path": path}))
			s.lookBeside()
		})
	})
}

// Dropped opens the first file that was dropped on the window.
func (s *Shell) Dropped(dropped []fyne.URI) {
	for _, uri := range dropped {
		if uri.Scheme() == "file" {
			s.OpenFile(uri.Path())
			return
		}
	}
}

// Save saves the plan, asking for a place where it has none yet. then may be nil;
// it is called once the plan is saved, and not at all if it could not be.
func (s *Shell) Save(then func()) {
	if s.session.Path() == "" {
		s.AskSaveAs(then)
		return
	}
	s.session.Save(func(err error) { s.saved(s.session.Path(), err, then) })
}

// saved says how a save went.
func (s *Shell) saved(path string, err error, then func()) {
	var file *planfile.FileError
	kept := errors.As(err, &file) && (file.Safe == planfile.NewInPlace || file.Safe == planfile.SavedNoCopy)
	switch {
	case session.IsChangedElsewhere(err):
		s.noteChange(planfile.Edited)
		return
	case err != nil && !kept:
		s.fail("desktop.not_saved", err)
		return
	}
	s.settings.AddRecent(path)
	s.log("saved", filepath.Base(path))
	s.unnotice(aboutChange)
	s.succeed(s.words.T("desktop.saved", words.A{"path": path}))
	if err != nil { // the plan is in its file, but not as safely as usual
		s.fail("desktop.saved_less_safely", err)
		return
	}
	s.refreshMenus()
	if then != nil {
		then()
	}
}

// Quit closes the window, once there is no unsaved work.
func (s *Shell) Quit() {
	s.whenSaved(func() {
		s.settings.SetWindow(s.Canvas().Size())
		s.window.Close()
	})
}

// LookForChanges finds out whether someone else changed the file, as when the
// window comes to the fore.
func (s *Shell) LookForChanges() {
	s.session.Look(func(change planfile.Change) {
		if change == planfile.Unchanged {
			s.unnotice(aboutChange)
		} else {
			s.noteChange(change)
		}
		s.lookBeside()
	})
}

// noteChange says what happened to the file, and offers to bring in what someone
// else wrote there.
func (s *Shell) noteChange(change planfile.Change) {
	data := widgets.NoticeData{
		Kind: widgets.NoticeWarning, Title: s.words.T("planfile.change." + string(change)),
		Text: s.words.T("desktop.change_text"),
	}
	if change == planfile.Edited {
		data.Action, data.OnAction = s.words.T("desktop.merge"), s.CompareFile
	}
	s.notice(aboutChange, data)
}

// noteFile says what has to be known about the file that is open.
func (s *Shell) noteFile() {
	if err := s.session.JournalError(); err != nil && s.session.Dirty() {
		s.notice(aboutJournal, widgets.NoticeData{
			Kind: widgets.NoticeWarning, Title: s.words.T("desktop.journal_title"), Text: Explain(s.words, err, s.units()),
		})
	} else {
		s.unnotice(aboutJournal)
	}
	text := s.fileRemark()
	if text == s.fileSaid { // said already, and perhaps put away
		return
	}
	s.fileSaid = text
	if text == "" {
		s.unnotice(aboutFile)
		return
	}
	s.notice(aboutFile, widgets.NoticeData{Kind: widgets.NoticeNote, Title: text})
}

// fileRemark returns what has to be known about the open file, or "".
func (s *Shell) fileRemark() string {
	holder := s.session.OpenElsewhere()
	switch {
	case s.session.ReadOnly():
		return s.words.T("planfile.newer")
	case holder != nil && holder.User == "":
		return s.words.T("planfile.held.unknown")
	case holder != nil:
		return s.words.T("planfile.held", words.A{
			"user": holder.User, "host": holder.Host, "since": s.words.Date(civil.Of(holder.Since)),
		})
	case len(s.session.Warnings()) > 0:
		return s.words.T("desktop.passed_over", words.A{"count": len(s.session.Warnings())})
	}
	return ""
}
