package pots

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/pots"
	"fourturn/app/widgets"
	"fourturn/app/words"
)

// picker is a shell that can ask for a file.
type picker interface {
	PickFile(title string, takes func(name string) bool, choose func(path string))
}

// mostShown is how many lines of a file stand in the entry; one with more is slow.
const mostShown = 40

// listDialog asks for the rows of a spreadsheet. They are read at once, so that a
// fault is said before anything is added.
type listDialog struct {
	view *View
	rows *widgets.RowsEntry
	said *fyne.Container
	file screen.ListFile // where the rows are from; zero for typed or pasted ones
	all  string          // the rows, where more than the entry shows; or ""
}

// askList asks for a list of pots: pasted, typed, or out of a file.
func (v *View) askList() {
	w := v.words
	d := &listDialog{view: v, rows: widgets.NewRowsEntry(w.T("pots.paste_example")), said: container.NewStack(widgets.NewText(" "))}
	d.rows.OnChanged = d.typed
	foot := fyne.CanvasObject(d.said)
	if shell, ok := v.shell.(picker); ok {
		open := widgets.NewButton(widgets.ButtonData{Label: w.T("pots.list_file")}, func() {
			shell.PickFile("pots.list_file_title", screen.IsListFile, d.open)
		})
		foot = container.NewVBox(d.said, container.NewHBox(open))
	}
	widgets.ShowDialog(v.shell.Canvas(), widgets.DialogData{
		Title: w.T("pots.paste_title"), Content: container.NewBorder(widgets.NewText(w.T("pots.paste_text")), foot, nil, nil, d.rows),
		Accept: w.T("pots.paste_add"), Cancel: w.T("pots.cancel"), Size: listSize, Focus: d.rows,
		OnAccept: d.add,
	})
}

func (d *listDialog) say(text string) {
	d.said.Objects = []fyne.CanvasObject{widgets.NewText(text)}
	d.said.Refresh()
}

// text returns the rows.
func (d *listDialog) text() string {
	if d.all != "" {
		return d.all
	}
	return d.rows.Text
}

// open takes the rows of a file.
func (d *listDialog) open(path string) {
	file, err := d.view.screen.OpenList(path)
	if err != nil {
		d.say(err.Error())
		return
	}
	shown := file.Text
	lines := strings.SplitN(file.Text, "\n", mostShown+1)
	d.all = ""
	if len(lines) > mostShown {
		shown = strings.Join(lines[:mostShown], "\n") + "\n…"
		d.all = file.Text
	}
	d.rows.OnChanged = nil // what comes from a file is not typed
	d.rows.SetText(shown)
	d.rows.OnChanged = d.typed
	if d.all != "" {
		d.rows.Disable() // only its beginning is here
	} else {
		d.rows.Enable()
	}
	d.file = file
	d.read()
}

// typed takes what a person typed or pasted.
func (d *listDialog) typed(text string) {
	if text == "" {
		d.file = screen.ListFile{}
		d.say(" ")
		return
	}
	d.read()
}

// read says how many pots there are, or what is wrong and where.
func (d *listDialog) read() {
	v := d.view
	pots, err := v.screen.ReadList(d.text())
	what := v.words.T("pots.paste_ready", words.A{"count": len(pots)})
	if err != nil {
		what = err.Error()
	}
	d.say(v.screen.Says(d.file, what))
}

func (d *listDialog) add() bool {
	v := d.view
	if err := v.screen.AddList(d.text()); err != nil {
		d.say(v.screen.Says(d.file, err.Error()))
		return false
	}
	v.Refresh()
	v.bench.reveal()
	return true
}
