package pots

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/widgets"
	"fourturn/app/words"
)

// askAlike asks how many pots like the chosen one to add.
func (v *View) askAlike() {
	if v.screen.Chosen() == nil {
		return
	}
	typed := "1"
	count := widgets.NewMeasureField(v.words.T("pots.how_many"), "", func(text string) error {
		typed = text
		return nil
	})
	count.SetValue(typed)
	widgets.ShowDialog(v.shell.Canvas(), widgets.DialogData{
		Title: v.words.T("pots.duplicate_title"), Content: count, Accept: v.words.T("pots.duplicate"), Cancel: v.words.T("pots.cancel"),
		Size: fyne.NewSize(280, 0), Focus: count.Entry(),
		OnAccept: func() bool {
			count.Commit()
			n, err := strconv.Atoi(typed)
			if err != nil {
				n = 0
			}
			if err := v.screen.Duplicate(n); err != nil {
				count.SetError(err.Error())
				return false
			}
			v.Refresh()
			v.bench.reveal()
			return true
		},
	})
}

// listEntry is a place for many lines whose Esc cancels the dialog around it.
type listEntry struct {
	widget.Entry
	onEscape func()
}

func newListEntry() *listEntry {
	e := &listEntry{}
	e.MultiLine = true
	e.ExtendBaseWidget(e)
	return e
}

// TypedKey cancels on Esc, which the toolkit's entry keeps to itself.
func (e *listEntry) TypedKey(ev *fyne.KeyEvent) {
	if ev.Name == fyne.KeyEscape && e.onEscape != nil {
		e.onEscape()
		return
	}
	e.Entry.TypedKey(ev)
}

// listSize is the place for the rows of a list: a dozen, each with its five columns.
var listSize = fyne.NewSize(560, 220)

// askList asks for the rows of a spreadsheet. What is pasted is read at once, so that
// a fault is said before anything is added.
func (v *View) askList() {
	w := v.words
	rows := newListEntry()
	rows.PlaceHolder = w.T("pots.paste_example")
	rows.Wrapping = fyne.TextWrapOff
	said := container.NewStack(widgets.NewText(" "))
	say := func(text string) {
		said.Objects = []fyne.CanvasObject{widgets.NewText(text)}
		said.Refresh()
	}
	rows.OnChanged = func(text string) {
		pots, err := v.screen.ReadList(text)
		switch {
		case text == "":
			say(" ")
		case err != nil:
			say(err.Error())
		default:
			say(w.T("pots.paste_ready", words.A{"count": len(pots)}))
		}
	}
	content := container.NewBorder(widgets.NewText(w.T("pots.paste_text")), said, nil, nil, rows)
	asked := widgets.ShowDialog(v.shell.Canvas(), widgets.DialogData{
		Title: w.T("pots.paste_title"), Content: content, Accept: w.T("pots.paste_add"), Cancel: w.T("pots.cancel"),
		Size: listSize, Focus: rows,
		OnAccept: func() bool {
			if err := v.screen.AddList(rows.Text); err != nil {
				say(err.Error())
				return false
			}
			v.Refresh()
			v.bench.reveal()
			return true
		},
	})
	rows.onEscape = asked.Cancel
}
