package desktop

import (
	"testing"

	"fyne.io/fyne/v2"

	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/widgets/golden"
)

// The shell with a notice and a working, by day in the smallest window, where the
// panel lies over the page, and by lamplight in a larger one, where it stands
// beside it; and the question about unsaved work.
func TestPictures(t *testing.T) {
	for _, one := range []struct {
		file    string
		options theme.Options
		size    fyne.Size
		show    func(*stage)
	}{
		{"shell-light-900x600.png", theme.Options{Mode: theme.Light}, LeastWindow, showNoticeAndWorking},
		{"shell-dark-1280x800.png", theme.Options{Mode: theme.Dark}, FirstWindow, showNoticeAndWorking},
		{"shell-large-text-900x600.png", theme.Options{Mode: theme.Light, HighContrast: true, TextScale: theme.MaxTextScale}, LeastWindow, showNoticeAndWorking},
		{"keys-light-900x600.png", theme.Options{Mode: theme.Light}, LeastWindow, func(st *stage) { st.ShowKeys() }},
		{"unsaved-light-900x600.png", theme.Options{Mode: theme.Light}, LeastWindow, func(st *stage) {
			st.rename("Yard")
			st.Quit()
		}},
	} {
		st := newStage(t)
		st.changeLook(func(o *theme.Options) { *o = one.options })
		one.show(st)
		st.window.Resize(one.size.AddWidthHeight(1, 1)) // text that wraps needs a second layout
		st.window.Resize(one.size)
		golden.Picture(t, one.file, st.Canvas())
	}
}

func showNoticeAndWorking(st *stage) {
	st.notice(aboutFailure, widgets.NoticeData{
		Kind: widgets.NoticeError, Title: "Error: the plan was not opened",
		Text: "line 2, column 1: unknown key \"titel\"; did you mean \"title\"?\nThe file is as it was.",
	})
	st.ShowWorking(mixFigure())
}
