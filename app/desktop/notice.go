package desktop

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// noticeBoard holds what has to be said above the page, one notice a subject, the
// newest last.
type noticeBoard struct {
	box      *fyne.Container
	list     *fyne.Container
	subjects []string
}

func newNoticeBoard() *noticeBoard {
	list := container.New(layout.NewCustomPaddedVBoxLayout(theme.Step))
	box := container.New(layout.NewCustomPaddedLayout(theme.Step, theme.Step, theme.Step2, theme.Step2), list)
	box.Hide()
	return &noticeBoard{box: box, list: list}
}

// put shows a notice on a subject, in the place of the one before it.
func (b *noticeBoard) put(subject string, data widgets.NoticeData) {
	if i := slices.Index(b.subjects, subject); i >= 0 {
		b.list.Objects[i].(*widgets.Notice).Set(data)
		return
	}
	b.subjects = append(b.subjects, subject)
	b.list.Add(widgets.NewNotice(data))
	b.box.Show()
}

// remove takes the notice on a subject away and reports whether there was one.
func (b *noticeBoard) remove(subject string) bool {
	i := slices.Index(b.subjects, subject)
	if i < 0 {
		return false
	}
	b.subjects = slices.Delete(b.subjects, i, i+1)
	b.list.Remove(b.list.Objects[i])
	if len(b.subjects) == 0 {
		b.box.Hide()
	}
	return true
}

// notice says something above the page until it is put away.
func (s *Shell) notice(subject string, data widgets.NoticeData) {
	data.Dismiss = s.words.T("desktop.put_away")
	if data.OnDismiss == nil {
		data.OnDismiss = func() { s.unnotice(subject) }
	}
	s.notices.put(subject, data)
	s.content.Refresh()
}

func (s *Shell) unnotice(subject string) {
	if s.notices.remove(subject) {
		s.content.Refresh()
	}
}
