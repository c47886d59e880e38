package desktop

import (
	"net/url"
	"path/filepath"

	"fyne.io/fyne/v2"

	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner/civil"
	"fourturn/planner/planfile"
)

// aboutRecovery is the subject of the notice on work of a session that ended
// without saving.
const aboutRecovery = "recovery"

// aboutCrash is the subject of the notice on a program that stopped unexpectedly.
const aboutCrash = "crash"

// OfferRecovery says that there is unsaved work of sessions that ended without
// saving it, and offers to bring back the newest.
func (s *Shell) OfferRecovery() {
	found, err := s.config.Store.Unsaved()
	if err != nil {
		s.fail("desktop.recovery_failed", err)
		return
	}
	if len(found) == 0 {
		s.unnotice(aboutRecovery)
		return
	}
	work := found[0]
	s.notice(aboutRecovery, widgets.NoticeData{
		Kind: widgets.NoticeNote, Title: s.words.T("desktop.recovery_title"),
		Text:   s.recoveryText(work, len(found)-1),
		Action: s.words.T("desktop.recovery_look"), OnAction: func() { s.askRecover(work) },
	})
}

// TellCrash says, once for each, that the program stopped unexpectedly and where it
// wrote down why; "" is no crash.
func (s *Shell) TellCrash(path string) {
	if path == "" || path == s.settings.ToldCrash() {
		return
	}
	s.settings.SetToldCrash(path)
	s.notice(aboutCrash, widgets.NoticeData{
		Kind: widgets.NoticeWarning, Title: s.words.T("desktop.crash_title"),
		Text:   s.words.T("desktop.crash_text", words.A{"path": path}),
		Action: s.words.T("desktop.crash_folder"), OnAction: func() {
			folder := &url.URL{Scheme: "file", Path: filepath.ToSlash(filepath.Dir(path))}
			if err := s.config.App.OpenURL(folder); err != nil {
				s.fail("desktop.not_done", err)
			}
		},
	})
}

func (s *Shell) recoveryText(work planfile.Found, more int) string {
	name := s.words.T("desktop.recovery_no_file")
	if work.Path != "" {
		name = filepath.Base(work.Path)
	}
	text := s.words.T("desktop.recovery_text", words.A{
		"plan": name, "date": s.words.LongDate(civil.Of(work.Written.Local())), "time": work.Written.Local().Format("15:04"),
	})
	if more > 0 {
		text += " " + s.words.T("desktop.recovery_more", words.A{"count": more})
	}
	return text
}

// askRecover asks what to do with unsaved work: bring it back, let it go, or
// neither for now.
func (s *Shell) askRecover(work planfile.Found) {
	var d *widgets.Dialog
	forget := widgets.NewButton(widgets.ButtonData{Label: s.words.T("desktop.recovery_forget"), Kind: widgets.ButtonQuiet, Icon: theme.IconRemove}, func() {
		d.Close()
		if err := s.config.Store.Forget(work); err != nil {
			s.fail("desktop.recovery_failed", err)
		}
		s.OfferRecovery()
	})
	d = widgets.ShowDialog(s.Canvas(), widgets.DialogData{
		Title:   s.words.T("desktop.recovery_title"),
		Content: column(widgets.NewText(s.recoveryText(work, 0)), widgets.NewText(s.words.T("desktop.recovery_how")), leftAligned(forget)),
		Size:    fyne.NewSize(460, 0),
		Accept:  s.words.T("desktop.recovery_accept"), Cancel: s.words.T("desktop.recovery_later"),
		OnAccept: func() bool {
			d.Close()
			s.whenSaved(func() { s.recover(work) })
			return false
		},
	})
	s.focusNothing()
}

func (s *Shell) recover(work planfile.Found) {
	s.session.Recover(work, func(err error) {
		if err != nil {
			s.fail("desktop.recovery_failed", err)
			return
		}
		s.unnotice(aboutRecovery)
		s.opened(s.words.T("session.recovered", words.A{"date": s.words.Date(civil.Of(work.Written.Local()))}))
	})
}
