package main

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"

	"github.com/adrg/xdg"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/quantity"
	"fourturn/plants"
)

// maxOwnBook is far beyond any book that a person writes: ten thousand plants take
// some 20 MB.
const maxOwnBook = 64 << 20

// ownBookFile returns where a person's own plant book lies. It may not exist.
func ownBookFile() string { return filepath.Join(xdg.DataHome, "fourturn", "plants.yaml") }

// openBook returns the plant book with the person's own on top. Where theirs is
// faulty, the built-in book is given, with what is wrong and where, one line each.
func openBook(path string, w *words.Words) (book *plants.Book, faults []string) {
	book, err := plants.Builtin()
	if err != nil {
		panic("fourturn: the built-in plant book: " + err.Error())
	}
	if path == "" {
		return book, nil
	}
	text, err := readAtMost(path, maxOwnBook+1)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return book, nil
	case err != nil:
		return book, []string{w.T("command.cannot_read", words.A{"file": path, "cause": cause(err)})}
	case len(text) > maxOwnBook:
		return book, []string{w.T("plant_book.own_too_large", words.A{"file": path})}
	}
	_, whole, err := plants.ReadOwn(path, text, book)
	if err == nil {
		return whole, nil
	}
	var list plants.Faults
	if !errors.As(err, &list) {
		return book, []string{fmt.Sprintf("%s: %v", path, err)}
	}
	for _, f := range list {
		faults = append(faults, fmt.Sprintf("%s:%d:%d: %s", f.File, f.Line, f.Column, w.Finding(f.Finding(), quantity.Metric)))
	}
	return book, faults
}

// reference returns what the program knows of the world: its plant book, with the
// person's own. Faults in that are written to the standard error, and kept for the
// plant book's page.
func reference(t *terminal) planner.Reference {
	book, faults := openBook(t.ownBook, t.words)
	for _, fault := range faults {
		fmt.Fprintln(t.err, fault)
	}
	t.bookFaults = faults
	return planner.Reference{Book: book, Years: new(planner.YearMemory)}
}
