package site

import (
	"errors"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/site"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
)

// recordEndings are how the names of daily records end.
var recordEndings = []string{".csv", ".txt", ".dly", ".tsv", ".tab", ".dat"}

func isRecordName(name string) bool {
	return slices.Contains(recordEndings, strings.ToLower(filepath.Ext(name)))
}

// recordPart is a person's own daily record: what the plan keeps of it, and the way to
// take one in.
type recordPart struct {
	view              *View
	open, paste, away *widgets.Button
	content           *fyne.Container
	box               *fyne.Container
}

func newRecordPart(v *View) *recordPart {
	w := v.words
	p := &recordPart{view: v, content: container.NewVBox()}
	p.open = widgets.NewButton(widgets.ButtonData{Icon: theme.IconOpen, Label: w.T("site.record_open")}, p.choose)
	p.paste = widgets.NewButton(widgets.ButtonData{Icon: theme.IconDuplicate, Label: w.T("site.record_paste")}, p.askPaste)
	p.away = widgets.NewButton(widgets.ButtonData{Icon: theme.IconRemove, Label: w.T("site.record_drop"), Kind: widgets.ButtonQuiet}, func() { v.try(v.screen.DropRecord()) })
	p.box = container.NewVBox(widgets.NewSection(w.T("site.own_record"), p.content, p.away, p.paste, p.open))
	return p
}

func (p *recordPart) refresh() {
	w, s := p.view.words, p.view.screen
	facts, seasons, ok := s.Record()
	p.content.Objects = []fyne.CanvasObject{widgets.NewText(w.T("site.record_note"))}
	p.away.Hide()
	if ok {
		p.away.Show()
		p.content.Objects = []fyne.CanvasObject{factList(w, facts), seasonTable(w, seasons)}
	}
	ready := s.CanRead()
	for _, button := range []*widgets.Button{p.open, p.paste} {
		if ready {
			button.Enable()
		} else {
			button.Disable()
		}
	}
	if !ready {
		p.content.Add(widgets.NewText(w.T("site.record_needs_place")))
	}
	p.content.Refresh()
}

// factList lists what was understood, the names at the left.
func factList(w *words.Words, facts []screen.Fact) fyne.CanvasObject {
	box := container.NewVBox()
	for _, f := range facts {
		value := f.Value
		if f.Doubtful {
			value += " ⚠ " + w.T("site.record_check")
		}
		box.Add(container.New(askedLayout{wide: 130}, widgets.NewStrong(f.Label), widgets.NewText(value)))
	}
	return box
}

// seasonTable lists the cold seasons of a record.
func seasonTable(w *words.Words, rows []screen.SeasonRow) fyne.CanvasObject {
	table := widgets.NewDataTable(widgets.TableData{
		Columns: []widgets.Column{
			{Label: w.T("site.season_column"), Width: 90, Grow: 1},
			{Label: w.T("site.missing_column"), Width: 100, Right: true},
			{Label: w.T("site.counts_column"), Width: 60},
			{Label: w.T("site.lowest_column"), Width: 80, Right: true},
			{Label: w.T("site.last_column"), Width: 90, Right: true},
			{Label: w.T("site.first_column"), Width: 90, Right: true},
		},
		Rows: len(rows), Sorted: -1,
		Cell: func(r, c int) widgets.Cell {
			row := rows[r]
			counts := w.T("site.counts_yes")
			if !row.Counts {
				counts = w.T("site.counts_no")
			}
			return widgets.Cell{Text: [...]string{row.Name, row.Missing, counts, row.Lowest, row.Last, row.First}[c], Soft: !row.Counts, Late: c == 2 && !row.Counts}
		},
	})
	const most = 6
	return tall(table, len(rows), most)
}

// choose asks for a file and shows what was understood of it.
func (p *recordPart) choose() {
	p.view.shell.PickFile("site.record_choose", isRecordName, p.read)
}

// read reads a file in the background.
func (p *recordPart) read(path string) {
	v := p.view
	var stop func()
	busy := widgets.ShowDialog(v.shell.Canvas(), widgets.DialogData{
		Title: v.words.T("site.record_choose"), Cancel: v.words.T("site.cancel"), Size: fyne.NewSize(320, 0),
		Content: widgets.NewBusy(widgets.BusyData{Title: v.words.T("site.reading_record"), Done: -1}, nil),
		OnCancel: func() {
			if stop != nil {
				stop()
			}
		},
	})
	stop = v.screen.ReadFile(path, func(preview *screen.Preview, err error) {
		var said *words.Refusal
		busy.Close()
		switch {
		case err == nil:
			p.show(preview)
		case errors.As(err, &said):
			v.shell.Status(said.Text)
		}
	})
}

// askPaste asks for the rows of a table.
func (p *recordPart) askPaste() {
	v, w := p.view, p.view.words
	rows := widgets.NewRowsEntry(w.T("site.record_paste_example"))
	var dialog *widgets.Dialog
	dialog = widgets.ShowDialog(v.shell.Canvas(), widgets.DialogData{
		Title: w.T("site.record_paste_title"), Content: container.NewBorder(widgets.NewText(w.T("site.record_paste_text")), nil, nil, nil, rows),
		Accept: w.T("site.record_read"), Cancel: w.T("site.cancel"), Size: fyne.NewSize(560, 260), Focus: rows,
		OnAccept: func() bool {
			dialog.Close() // what was understood must not lie over it
			p.show(v.screen.ReadPasted(rows.Text))
			return false
		},
	})
}
