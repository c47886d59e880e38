package pots

import (
	"errors"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"

	"fourturn/app/words"
	"fourturn/planner/sheet"
)

// ListFile is a list of pots out of a file, before it is read as pots.
type ListFile struct {
	Text  string // for [Screen.ReadList]; line n is row n of the sheet
	file  string
	sheet string
}

// IsListFile reports whether a file may hold a list, by its name.
func IsListFile(name string) bool {
	return slices.Contains([]string{".xlsx", ".xlsm", ".csv", ".tsv", ".tab", ".txt"}, strings.ToLower(filepath.Ext(name)))
}

// OpenList reads a file that a spreadsheet wrote. The error says in words what is
// wrong, with sheet and row.
func (s *Screen) OpenList(path string) (ListFile, error) {
	list, err := sheet.Open(path)
	if err != nil {
		return ListFile{}, errors.New(s.sheetFault(path, err))
	}
	return ListFile{Text: list.Text, file: list.File, sheet: list.Sheet}, nil
}

// Says puts the sheet, or the file, before what is said of its rows.
func (s *Screen) Says(l ListFile, what string) string {
	name := l.sheet
	if name == "" {
		name = l.file
	}
	if name == "" {
		return what
	}
	return s.words.T("sheet.at_sheet", words.A{"sheet": name, "what": what})
}

func (s *Screen) sheetFault(path string, err error) string {
	w := s.words
	var fault *sheet.Fault
	if !errors.As(err, &fault) {
		cause := err.Error()
		var place *fs.PathError
		switch {
		case errors.Is(err, fs.ErrNotExist):
			cause = w.T("sheet.missing")
		case errors.Is(err, fs.ErrPermission):
			cause = w.T("sheet.not_allowed")
		case errors.As(err, &place):
			cause = place.Err.Error()
		}
		return w.T("sheet.cannot_read", words.A{"file": filepath.Base(path), "cause": cause})
	}
	most := map[sheet.FaultKind]string{
		sheet.TooBig: w.Count(sheet.MaxBytes>>20) + " MB", sheet.TooManyRows: w.Count(sheet.MaxRows), sheet.TooManyCols: w.Count(sheet.MaxColumns),
	}[fault.Kind]
	what := w.T("sheet."+string(fault.Kind), words.A{"file": fault.File, "most": most})
	switch {
	case fault.Sheet == "":
		return what
	case fault.Row == 0:
		return w.T("sheet.at_sheet", words.A{"sheet": fault.Sheet, "what": what})
	}
	return w.T("sheet.at_row", words.A{"sheet": fault.Sheet, "row": fault.Row, "what": what})
}
