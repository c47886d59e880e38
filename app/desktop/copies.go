package desktop

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"fourturn/app/screen/versions"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/planfile"
)

// versionsSize is the room for a table of differences in the smallest window.
var versionsSize = fyne.NewSize(820, 400)

// ChooseCopy shows the earlier copies of the plan's file, each with what is different
// in it, to bring one back.
func (s *Shell) ChooseCopy() {
	s.session.Copies(func(copies []planfile.Copy, err error) {
		switch {
		case err != nil:
			s.fail("desktop.not_opened", err)
		case len(copies) == 0:
			s.Status(s.words.T("desktop.copies_none"))
		default:
			s.showCopies(copies)
		}
	})
}

// copyList is the dialog of earlier copies: the copies above, below them what would
// change if the chosen one were brought back.
type copyList struct {
	shell   *Shell
	copies  []planfile.Copy
	list    *widgets.DataTable
	preview *widgets.DataTable
	head    *heading
	asked   int // the copy that is being compared
}

func (s *Shell) showCopies(copies []planfile.Copy) {
	c := &copyList{shell: s, copies: copies, asked: -1, head: newHeading(s.words.T("desktop.copies_comparing"))}
	c.list = widgets.NewDataTable(widgets.TableData{
		Columns: []widgets.Column{{Label: s.words.T("desktop.copies_until"), Width: 150, Grow: 1}},
		Rows:    len(copies), Sorted: -1,
		Cell: func(row, _ int) widgets.Cell { return widgets.Cell{Text: c.made(copies[row])} },
	})
	c.preview = widgets.NewDataTable(widgets.TableData{Sorted: -1})
	c.list.OnSelect = c.show
	c.list.Select(0)
	content := container.NewBorder(nil, nil, container.New(&fixedWidth{230}, c.list), nil,
		container.NewBorder(c.head.object, nil, nil, nil, c.preview))
	widgets.ShowDialog(s.Canvas(), widgets.DialogData{
		Title: s.words.T("desktop.copies_title"), Size: versionsSize,
		Content: content, Focus: c.list.Body(),
		Accept: s.words.T("desktop.copies_accept"), Cancel: s.words.T("desktop.cancel"),
		OnAccept: func() bool {
			s.restore(copies[max(0, c.list.Selected())])
			return true
		},
	})
}

func (c *copyList) made(one planfile.Copy) string {
	at := one.Made.Local()
	return c.shell.words.T("desktop.at_time", words.A{"date": c.shell.words.Date(civil.Of(at)), "time": at.Format("15:04")})
}

// show compares a copy with the plan. What comes for a copy that is no longer the
// chosen one is passed over.
func (c *copyList) show(row int) {
	s := c.shell
	c.asked = row
	now := s.session.Plan()
	c.head.set(s.words.T("desktop.copies_comparing"))
	s.session.Preview(c.copies[row], func(then *planner.Plan, differences []planfile.Difference, err error) {
		if c.asked != row {
			return
		}
		if err != nil {
			c.head.set(Explain(s.words, err, s.units()))
			c.preview.Set(widgets.TableData{Sorted: -1})
			return
		}
		c.head.set(s.words.T("desktop.copies_places", words.A{"count": len(differences)}))
		c.preview.Set(s.differenceTable(versions.NewReader(s.words, s.config.PlantName, now, then), differences))
	})
}

// differenceTable shows differences: where, as it is now, as it would be.
func (s *Shell) differenceTable(r *versions.Reader, differences []planfile.Difference) widgets.TableData {
	return widgets.TableData{
		Columns: []widgets.Column{
			{Label: s.words.T("versions.column_place"), Width: 220, Grow: 2},
			{Label: s.words.T("desktop.copies_now"), Width: 140, Grow: 1},
			{Label: s.words.T("desktop.copies_then"), Width: 140, Grow: 1},
		},
		Rows: len(differences), Sorted: -1,
		Cell: func(row, column int) widgets.Cell {
			line := r.Line(differences[row])
			return widgets.Cell{Text: [...]string{line.Place, line.Before, line.After}[column], Soft: column == 1}
		},
	}
}

// restore makes the plan what a copy holds. It is an edit: it can be undone, and
// the file stays as it is until the plan is saved.
func (s *Shell) restore(c planfile.Copy) {
	s.session.Restore(c, func(err error) {
		if err != nil {
			s.fail("desktop.not_done", err)
			return
		}
		s.Status(s.words.T("desktop.restored"))
	})
}

// heading is explaining text that changes.
type heading struct{ object *fyne.Container }

func newHeading(text string) *heading {
	return &heading{container.NewStack(widgets.NewText(text))}
}

func (h *heading) set(text string) {
	h.object.Objects = []fyne.CanvasObject{widgets.NewText(text)}
	h.object.Refresh()
}

// fixedWidth gives its one child a width, and a gap behind it.
type fixedWidth struct{ width float32 }

func (l *fixedWidth) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(l.width, objects[0].MinSize().Height)
}

func (l *fixedWidth) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	const gap = 12
	objects[0].Move(fyne.Position{})
	objects[0].Resize(fyne.NewSize(size.Width-gap, size.Height))
}
