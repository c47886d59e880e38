package desktop

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/widgets"
	"fourturn/app/words"
)

// About is what the program says of itself.
type About struct {
	Version string
	Sources []Source // of the climate data
	Plants  []string // cited by the plant book
	Fonts   []Source
}

// Source is one origin with its licence.
type Source struct{ Name, Licence string }

// pageKeys are the keys that the menus do not know: those of the parts of a page.
var pageKeys = []struct{ keys, does string }{
	{"desktop.keys_f1", "desktop.keys_f1_does"},
	{"desktop.keys_escape", "desktop.keys_escape_does"},
	{"desktop.keys_tab", "desktop.keys_tab_does"},
	{"desktop.keys_enter", "desktop.keys_enter_does"},
	{"desktop.keys_arrows", "desktop.keys_arrows_does"},
}

// KeyRow is one line of the page of keys.
type KeyRow struct{ Does, Keys string }

// Keys returns every key with what it does, in the order of the menus.
func (s *Shell) Keys() (rows []KeyRow) {
	for _, a := range s.Actions() {
		if len(a.Keys) == 0 {
			continue
		}
		written := make([]string, len(a.Keys))
		for i, keys := range a.Keys {
			written[i] = s.writeKeys(keys)
		}
		rows = append(rows, KeyRow{a.Label(), strings.Join(written, ", ")})
	}
	for _, k := range pageKeys {
		rows = append(rows, KeyRow{s.words.T(k.does), s.words.T(k.keys)})
	}
	return rows
}

// ShowKeys shows the page of keys.
func (s *Shell) ShowKeys() {
	rows := s.Keys()
	table := widgets.NewDataTable(widgets.TableData{
		Columns: []widgets.Column{
			{Label: s.words.T("desktop.keys_does"), Width: 280, Grow: 2},
			{Label: s.words.T("desktop.keys_key"), Width: 160, Grow: 1},
		},
		Rows: len(rows), Sorted: -1,
		Cell: func(row, column int) widgets.Cell {
			if column == 0 {
				return widgets.Cell{Text: rows[row].Does}
			}
			return widgets.Cell{Text: rows[row].Keys, Strong: true}
		},
	})
	widgets.ShowDialog(s.Canvas(), widgets.DialogData{
		Title: s.words.T("desktop.keys"), Content: table, Focus: table.Body(), Size: fyne.NewSize(560, 400),
		Cancel: s.words.T("desktop.close"),
	})
}

// ShowAbout says what the program is, where its data are from, and the cautions
// that hold everywhere.
func (s *Shell) ShowAbout() {
	parts := []fyne.CanvasObject{
		widgets.NewText(s.words.T("desktop.about_what", words.A{"version": s.config.About.Version})),
		widgets.NewText(s.words.T("desktop.about_caution")),
	}
	for _, source := range s.config.About.Sources {
		parts = append(parts, widgets.NewSection(source.Name, widgets.NewText(source.Licence)))
	}
	if cited := s.config.About.Plants; len(cited) > 0 {
		parts = append(parts, widgets.NewSection(s.words.T("desktop.about_plants"), widgets.NewText(strings.Join(cited, "\n"))))
	}
	for _, font := range s.config.About.Fonts {
		text := widget.NewLabel(font.Licence) // keeps the lines as they are
		text.Wrapping = fyne.TextWrapWord
		parts = append(parts, widgets.NewSection(s.words.T("desktop.about_font", words.A{"font": font.Name}), text))
	}
	scroll := container.NewVScroll(column(parts...))
	scroll.SetMinSize(fyne.NewSize(560, 380))
	widgets.ShowDialog(s.Canvas(), widgets.DialogData{
		Title: s.words.T("desktop.about"), Content: scroll, Size: fyne.NewSize(560, 380),
		Cancel: s.words.T("desktop.close"),
	})
}
