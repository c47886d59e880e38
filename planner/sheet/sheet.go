package sheet

import (
	"encoding/csv"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"
)

// What a file may hold. A list of 5,000 pots takes less than a megabyte.
const (
	MaxBytes    = 8 << 20  // of a file
	MaxUnpacked = 64 << 20 // of all parts of a workbook
	MaxParts    = 1000     // files in a workbook; a plain one has about a dozen
	MaxRows     = 20_000
	MaxColumns  = 100
	MaxText     = 4 << 20 // bytes of all cells together
)

// List is what a file holds, as text.
type List struct {
	File  string // its name without the folder
	Sheet string // of a workbook; "" for text
	// Text holds the rows, one a line, so that line n is row n of the sheet. The
	// columns of a workbook are parted by tabs and quoted as in RFC 4180; text is as
	// the file has it.
	Text string
}

// FaultKind says what is wrong with a file.
type FaultKind string

// What can be wrong with a file. The words for them are under "sheet.".
const (
	TooBig      FaultKind = "too_big"      // more bytes than MaxBytes
	Unpacks     FaultKind = "unpacks"      // a small file that unpacks to more than MaxUnpacked
	NotWorkbook FaultKind = "not_workbook" // not a workbook that can be read
	Locked      FaultKind = "locked"       // a workbook with a password, or of the older kind
	Nothing     FaultKind = "nothing"      // no sheet holds anything
	TooManyRows FaultKind = "too_many_rows"
	TooManyCols FaultKind = "too_many_columns"
	TooMuchText FaultKind = "too_much_text"
)

// Fault is what is wrong with a file, and where.
type Fault struct {
	Kind   FaultKind
	File   string
	Sheet  string // "" where it is not about one sheet
	Row    int    // from 1; 0 where it is not about one row
	Detail error  // what the reader of workbooks said, or nil
}

// Error says the fault in English.
func (f *Fault) Error() string {
	text := "sheet: " + f.File + ": " + string(f.Kind)
	if f.Sheet != "" {
		text += fmt.Sprintf(", sheet %q", f.Sheet)
	}
	if f.Row > 0 {
		text += fmt.Sprintf(", row %d", f.Row)
	}
	if f.Detail != nil {
		text += ": " + f.Detail.Error()
	}
	return text
}

// Unwrap returns what the reader of workbooks said.
func (f *Fault) Unwrap() error { return f.Detail }

// Open reads a file. The error is a [Fault], or that of the file system.
func Open(path string) (*List, error) {
	if info, err := os.Stat(path); err != nil {
		return nil, err
	} else if !info.Mode().IsRegular() { // a pipe would block for ever
		return nil, &fs.PathError{Op: "read", Path: path, Err: fs.ErrInvalid}
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, MaxBytes+1))
	if err != nil {
		return nil, err
	}
	return Read(filepath.Base(path), data)
}

// Read reads the contents of a file with a name. A workbook is known by its contents,
// whatever the name. The error is a [Fault].
func Read(name string, data []byte) (*List, error) {
	r := &reader{file: name}
	switch {
	case len(data) > MaxBytes:
		return nil, r.fault(TooBig, "", 0, nil)
	case strings.HasPrefix(string(data[:min(len(data), 4)]), "PK\x03\x04"):
		return r.workbook(data)
	case strings.HasPrefix(string(data[:min(len(data), 4)]), "\xd0\xcf\x11\xe0"): // a compound file: MS-CFB, section 2.2
		return nil, r.fault(Locked, "", 0, nil)
	}
	text := decoded(data)
	if strings.ContainsRune(text, 0) {
		return nil, r.fault(NotWorkbook, "", 0, nil)
	}
	return r.limited(&List{File: name, Text: text})
}

// reader reads one file.
type reader struct{ file string }

func (r *reader) fault(kind FaultKind, sheet string, row int, detail error) error {
	return &Fault{Kind: kind, File: r.file, Sheet: sheet, Row: row, Detail: detail}
}

// limited refuses text with too many rows or too much in it.
func (r *reader) limited(l *List) (*List, error) {
	switch {
	case strings.TrimSpace(l.Text) == "":
		return nil, r.fault(Nothing, "", 0, nil)
	case len(l.Text) > MaxText:
		return nil, r.fault(TooMuchText, l.Sheet, 0, nil)
	case strings.Count(l.Text, "\n") > MaxRows:
		return nil, r.fault(TooManyRows, l.Sheet, MaxRows+1, nil)
	}
	return l, nil
}

// joined writes rows as lines parted by tabs. White space inside a cell, such as the
// end of a line, becomes a blank, so that a row stays one line.
func joined(rows [][]string) (string, error) {
	var text strings.Builder
	w := csv.NewWriter(&text)
	w.Comma = '\t'
	for _, row := range rows {
		cells := make([]string, len(row))
		for i, cell := range row {
			cells[i] = strings.Join(strings.Fields(strings.ToValidUTF8(cell, "\uFFFD")), " ")
		}
		if len(cells) == 0 {
			cells = []string{""}
		}
		if len(cells) == 1 && cells[0] == "" { // the writer would quote it
			w.Flush()
			text.WriteByte('\n')
			continue
		}
		if err := w.Write(cells); err != nil {
			return "", err
		}
	}
	w.Flush()
	return text.String(), w.Error()
}

func isUTF8(data []byte) bool { return utf8.Valid(data) }
