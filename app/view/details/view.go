// Package details draws what holds for the whole plan as a dialog. Nothing is changed
// until it is kept, and undo takes that back.
package details

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	screen "fourturn/app/screen/details"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
)

// Shell is what the details need of the window.
type Shell interface {
	Canvas() fyne.Canvas
}

// size is the width for two fields beside each other.
var size = fyne.NewSize(560, 0)

// Open opens the details over the window.
func Open(s *screen.Screen, w *words.Words, shell Shell) {
	now := s.Now()
	title := widgets.NewMeasureField(w.T("details.title_field"), "", func(typed string) error {
		now.Title = typed
		return nil
	})
	title.SetValue(now.Title)
	units := widgets.NewSegments(w.T("details.units"), s.Units(), func(i int) { now.Units = i })
	units.SetChoice(now.Units)
	money := widgets.NewMeasureField(w.T("details.currency"), w.T("details.currency_help"), func(typed string) error {
		now.Currency = typed
		return s.CheckCurrency(typed)
	})
	money.SetValue(now.Currency)
	risk := widgets.NewMeasureField(w.T("details.risk"), w.T("details.risk_help"), func(typed string) error {
		now.Risk = typed
		return s.CheckRisk(typed)
	})
	risk.SetValue(now.Risk)
	cats := check(w, "details.cats", &now.Household.Cats)
	dogs := check(w, "details.dogs", &now.Household.Dogs)
	children := check(w, "details.children", &now.Household.Children)
	content := container.New(layout.NewCustomPaddedVBoxLayout(theme.Step),
		title,
		container.New(layout.NewCustomPaddedHBoxLayout(theme.Step2), widgets.NewText(w.T("details.units")), units),
		money, risk,
		widgets.NewSection(w.T("details.household"), container.NewHBox(cats, dogs, children)),
		widgets.NewText(w.T("details.household_text")))
	fields := []*widgets.MeasureField{title, money, risk}
	data := widgets.DialogData{
		Title: w.T("details.title"), Content: content, Size: size, Focus: title.Entry(),
		Accept: w.T("details.keep"), Cancel: w.T("details.cancel"),
		OnAccept: func() bool {
			for _, f := range fields {
				if f.Commit(); f.Error() != "" {
					return false
				}
			}
			if err := s.Keep(now); err != nil {
				title.SetError(err.Error())
				return false
			}
			return true
		},
	}
	if s.ReadOnly() {
		data.Accept = ""
	}
	widgets.ShowDialog(shell.Canvas(), data)
}

func check(w *words.Words, key string, on *bool) *widgets.Check {
	c := widgets.NewCheck(w.T(key), w.T("details.yes"), func(now bool) { *on = now })
	c.Set(*on)
	return c
}
