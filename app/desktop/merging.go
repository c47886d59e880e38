package desktop

import (
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"fourturn/app/screen/versions"
	"fourturn/app/session"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner/planfile"
)

// aboutBeside is the subject of the notice on a second copy beside the file.
const aboutBeside = "beside"

// CompareFile shows what someone else wrote into the file, to bring it in.
func (s *Shell) CompareFile() { s.session.CompareFile(s.compared) }

// ChooseSecondCopy asks for another copy of the plan, to bring in what is in it.
func (s *Shell) ChooseSecondCopy() {
	bring := func(path string) { s.session.CompareCopy(path, s.compared) }
	s.newFileDialog("", exists, bring).show(s, "desktop.bring_in_title", "desktop.open_accept")
}

// compared asks the person about another version, once it is compared.
func (s *Shell) compared(m *session.Merging, err error) {
	switch {
	case err != nil:
		s.fail("desktop.not_merged", err)
	case m.Nothing():
		s.bringIn(m, nil) // so that the next save goes by the file as it is now
	case s.dialogOpen():
		s.fail("desktop.not_merged", session.ErrMeanwhile)
	default:
		s.askMerge(m)
	}
}

// mergeDialog lets a person choose between the plan and another version of it, place
// by place.
type mergeDialog struct {
	shell  *Shell
	merge  *versions.Merge
	table  *widgets.DataTable
	side   *widgets.Segments
	detail *heading
}

func (s *Shell) askMerge(m *session.Merging) {
	d := &mergeDialog{shell: s, merge: versions.NewMerge(m, versions.NewReader(s.words, s.config.PlantName, m.Mine, m.Theirs)), detail: newHeading("")}
	w := s.words
	d.table = widgets.NewDataTable(d.data())
	d.table.OnSelect = func(int) { d.refresh() }
	d.table.OnOpen = func(row int) {
		d.merge.Turn(row)
		d.refresh()
	}
	d.side = widgets.NewSegments(w.T("versions.choice"), []string{w.T("versions.kept_mine"), w.T("versions.kept_theirs")}, func(i int) {
		d.merge.Take(d.table.Selected(), planfile.Side(i))
		d.refresh()
	})
	all := func(key string, side planfile.Side) fyne.CanvasObject {
		return widgets.NewButton(widgets.ButtonData{Label: w.T(key), Kind: widgets.ButtonQuiet}, func() {
			d.merge.TakeAll(side)
			d.refresh()
		})
	}
	choices := container.NewHBox(d.side, all("versions.all_mine", planfile.Mine), all("versions.all_theirs", planfile.Theirs))
	if d.merge.Questions() == 0 {
		choices.Hide()
	}
	d.table.Select(0)
	widgets.ShowDialog(s.Canvas(), widgets.DialogData{
		Title: w.T(d.title(m)), Size: versionsSize, Focus: d.table.Body(),
		Content: container.NewBorder(widgets.NewText(d.merge.Summary(w)), column(d.detail.object, choices), nil, nil, d.table),
		Accept:  w.T("versions.accept"), Cancel: w.T("desktop.cancel"),
		OnAccept: func() bool {
			s.bringIn(m, d.merge.Chooser())
			return true
		},
	})
	d.refresh()
}

func (d *mergeDialog) title(m *session.Merging) string {
	if m.Copy {
		return "desktop.merge_copy_title"
	}
	return "desktop.merge_title"
}

func (d *mergeDialog) data() widgets.TableData {
	w := d.shell.words
	rows := d.merge.Rows()
	return widgets.TableData{
		Columns: []widgets.Column{
			{Label: w.T("versions.column_place"), Width: 260, Grow: 2},
			{Label: w.T("versions.column_was"), Width: 120, Grow: 1},
			{Label: w.T("versions.column_mine"), Width: 140, Grow: 1},
			{Label: w.T("versions.column_theirs"), Width: 140, Grow: 1},
		},
		Rows: len(rows), Sorted: -1,
		Cell: func(row, column int) widgets.Cell {
			r := rows[row]
			cell := widgets.Cell{Text: [...]string{r.Place, r.Was, r.Mine, r.Theirs}[column], Soft: column == 1 || column > 1 && !r.Choice}
			if column == 2 && r.Taken == planfile.Mine || column == 3 && r.Taken == planfile.Theirs {
				cell.Icon, cell.Strong, cell.Soft = theme.IconTick, true, false
			}
			return cell
		},
	}
}

// refresh shows the choices, and the selected row in full.
func (d *mergeDialog) refresh() {
	d.table.Set(d.data())
	rows := d.merge.Rows()
	i := d.table.Selected()
	if i < 0 || i >= len(rows) || d.side == nil {
		return
	}
	row := rows[i]
	if row.Choice {
		d.side.SetChoice(int(row.Taken))
	}
	text := d.shell.words.T("versions.detail", words.A{"place": row.Place, "was": row.Was, "mine": row.Mine, "theirs": row.Theirs})
	if row.Remark != "" {
		text += "\n" + row.Remark
	}
	d.detail.set(text)
}

// bringIn makes the other version part of the plan, as one edit.
func (s *Shell) bringIn(m *session.Merging, choose func(planfile.Conflict) planfile.Side) {
	s.session.BringIn(m, choose, func(_ *planfile.Merged, err error) {
		if err != nil {
			s.fail("desktop.not_merged", err)
			return
		}
		subject, said := aboutChange, "desktop.merged"
		if m.Copy {
			subject, said = aboutBeside, "desktop.merged_copy"
		}
		if m.Nothing() {
			said = "desktop.merged_nothing"
		}
		s.unnotice(subject)
		s.succeed(s.words.T(said, words.A{"file": filepath.Base(m.Path)}))
	})
}

// lookBeside offers a second copy of the plan that lies beside its file, such as a
// sync service drops.
func (s *Shell) lookBeside() {
	s.session.FindBeside(func(found []planfile.Beside) {
		for _, b := range found {
			if !s.beside[b.Path] {
				s.offerBeside(b)
				return
			}
		}
		s.unnotice(aboutBeside)
	})
}

func (s *Shell) offerBeside(b planfile.Beside) {
	s.notice(aboutBeside, widgets.NoticeData{
		Kind:   widgets.NoticeWarning,
		Title:  s.words.T("desktop.beside_title", words.A{"file": filepath.Base(b.Path)}),
		Text:   s.words.T("desktop.beside_text"),
		Action: s.words.T("desktop.beside_look"), OnAction: func() { s.askBeside(b) },
		OnDismiss: func() {
			if s.beside == nil {
				s.beside = map[string]bool{}
			}
			s.beside[b.Path] = true
			s.unnotice(aboutBeside)
			s.lookBeside()
		},
	})
}

// askBeside asks whether a file is a second copy of the plan, or something else that
// is not to be offered again.
func (s *Shell) askBeside(b planfile.Beside) {
	var d *widgets.Dialog
	none := widgets.NewButton(widgets.ButtonData{Label: s.words.T("desktop.beside_none"), Kind: widgets.ButtonQuiet, Icon: theme.IconRemove}, func() {
		d.Close()
		s.session.Settle(b)
		s.unnotice(aboutBeside)
		s.lookBeside()
	})
	d = widgets.ShowDialog(s.Canvas(), widgets.DialogData{
		Title:   s.words.T("desktop.beside_title", words.A{"file": filepath.Base(b.Path)}),
		Content: column(widgets.NewText(s.words.T("desktop.beside_how")), leftAligned(none)), Size: fyne.NewSize(460, 0),
		Accept: s.words.T("desktop.beside_compare"), Cancel: s.words.T("desktop.cancel"),
		OnAccept: func() bool {
			d.Close()
			s.session.CompareCopy(b.Path, s.compared)
			return false
		},
	})
	s.focusNothing()
}
