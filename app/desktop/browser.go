package desktop

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner/civil"
)

// browser is a list of the folders and plans in a folder, to go through and choose
// from. Hidden ones, and files that are no plans, are left out.
type browser struct {
	words    *words.Words
	folder   string
	items    []browserItem
	place    *widget.Label
	none     fyne.CanvasObject // says that there is nothing to choose here
	table    *widgets.DataTable
	object   fyne.CanvasObject
	onChange func(name string) // the name of the selected plan, or "" for a folder
	onChoose func(path string) // Enter, or a second tap, on a plan
	onFail   func(error)
	takes    func(name string) bool // which files are listed, by name
}

// browserItem is a folder or a plan.
type browserItem struct {
	name   string
	folder bool
	date   string // of the last change, written out
}

func newBrowser(w *words.Words, folder string) *browser {
	b := &browser{words: w, place: widget.NewLabel(""), takes: isPlanName}
	b.none = container.NewCenter(widget.NewLabel(w.T("desktop.folder_empty")))
	b.place.Truncation = fyne.TextTruncateEllipsis
	b.table = widgets.NewDataTable(widgets.TableData{Sorted: -1})
	b.table.OnSelect = b.selected
	b.table.OnOpen = b.enter
	up := widgets.NewButton(widgets.ButtonData{Icon: theme.IconUp, Label: w.T("desktop.folder_up")}, func() { b.show(filepath.Dir(b.folder)) })
	b.object = container.NewBorder(container.NewBorder(nil, nil, nil, up, b.place), nil, nil, nil, container.NewStack(b.table, b.none))
	b.show(nearestFolder(folder))
	return b
}

// show lists a folder. One that cannot be read is reported, and the list stays.
func (b *browser) show(folder string) {
	items, err := listFolder(b.words, folder, b.takes)
	if err != nil {
		if b.onFail != nil {
			b.onFail(err)
		}
		if b.folder != "" {
			return
		}
	}
	b.folder, b.items = folder, items
	b.place.SetText(folder)
	if len(items) == 0 {
		b.none.Show()
	} else {
		b.none.Hide()
	}
	b.table.Set(widgets.TableData{
		Columns: []widgets.Column{
			{Label: b.words.T("desktop.folder_name"), Width: 260, Grow: 3},
			{Label: b.words.T("desktop.folder_changed"), Width: 120, Grow: 1},
		},
		Rows: len(items), Cell: b.cell, Sorted: -1,
	})
	b.table.Select(min(0, len(items)-1))
}

func (b *browser) cell(row, column int) widgets.Cell {
	item := b.items[row]
	switch {
	case column == 1:
		return widgets.Cell{Text: item.date, Soft: true}
	case item.folder:
		return widgets.Cell{Text: item.name, Icon: theme.IconOpen}
	}
	return widgets.Cell{Text: item.name, Icon: theme.IconPots}
}

func (b *browser) selected(row int) {
	if b.onChange == nil || row < 0 || row >= len(b.items) {
		return
	}
	if b.items[row].folder {
		b.onChange("")
		return
	}
	b.onChange(b.items[row].name)
}

// enter goes into a folder, or chooses a plan.
func (b *browser) enter(row int) {
	if row < 0 || row >= len(b.items) {
		return
	}
	path := filepath.Join(b.folder, b.items[row].name)
	if b.items[row].folder {
		b.show(path)
	} else if b.onChoose != nil {
		b.onChoose(path)
	}
}

// nearestFolder returns a folder, or the nearest one above it that is there.
func nearestFolder(folder string) string {
	for {
		if info, err := os.Stat(folder); err == nil && info.IsDir() {
			return folder
		}
		above := filepath.Dir(folder)
		if above == folder {
			return folder
		}
		folder = above
	}
}

// listFolder returns the folders, and the files that are taken, in a folder, folders first, each by
// name.
func listFolder(w *words.Words, folder string, takes func(name string) bool) ([]browserItem, error) {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return nil, err
	}
	var items []browserItem
	for _, e := range entries {
		if strings.HasPrefix(e.Name(), ".") {
			continue
		}
		info, err := os.Stat(filepath.Join(folder, e.Name())) // through links
		if err != nil || !info.IsDir() && !takes(e.Name()) {
			continue
		}
		items = append(items, browserItem{name: e.Name(), folder: info.IsDir(), date: changed(w, info)})
	}
	slices.SortStableFunc(items, func(a, b browserItem) int {
		switch {
		case a.folder && !b.folder:
			return -1
		case b.folder && !a.folder:
			return 1
		}
		return strings.Compare(strings.ToLower(a.name), strings.ToLower(b.name))
	})
	return items, nil
}

func changed(w *words.Words, info fs.FileInfo) string { return w.Date(civil.Of(info.ModTime())) }

// planEnding is how the name of a plan file ends if nobody says otherwise; the desktop
// knows plans by it (assets/linux).
const planEnding = ".fourturn.yaml"

// planEndings are how the names of plan files may end.
var planEndings = []string{".yaml", ".yml"}

func isPlanName(name string) bool {
	return slices.Contains(planEndings, strings.ToLower(filepath.Ext(name)))
}
