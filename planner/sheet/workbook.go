package sheet

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"

	"github.com/xuri/excelize/v2"
)

// workbook reads the sheet on top of a workbook.
func (r *reader) workbook(data []byte) (list *List, err error) {
	if err := r.unpacks(data); err != nil {
		return nil, err
	}
	// The library reads files of strangers here: a slip of it is a bad file.
	defer func() {
		if slip := recover(); slip != nil {
			list, err = nil, r.fault(NotWorkbook, "", 0, fmt.Errorf("%v", slip))
		}
	}()
	book, err := excelize.OpenReader(bytes.NewReader(data), excelize.Options{
		RawCellValue: true, // a number as it is, not as a format of the sheet rounds it
		// Nothing is put aside in a folder: all was measured by unpacks.
		UnzipSizeLimit: MaxUnpacked + 1, UnzipXMLSizeLimit: MaxUnpacked + 1,
	})
	switch {
	case errors.Is(err, excelize.ErrWorkbookFileFormat), errors.Is(err, excelize.ErrWorkbookPassword):
		return nil, r.fault(Locked, "", 0, err)
	case err != nil:
		return nil, r.fault(NotWorkbook, "", 0, err)
	}
	defer book.Close()
	names := book.GetSheetList()
	for _, name := range onTop(names, book.GetActiveSheetIndex()) {
		rows, err := r.rows(book, name)
		if err != nil {
			return nil, err
		}
		if len(rows) == 0 {
			continue
		}
		text, err := joined(rows)
		if err != nil {
			return nil, r.fault(NotWorkbook, name, 0, err)
		}
		return &List{File: r.file, Sheet: name, Text: text}, nil
	}
	return nil, r.fault(Nothing, "", 0, nil)
}

// unpacks makes sure that the parts of a workbook are not larger than they may be, by
// unpacking them: what the file says of their sizes may be a lie.
func (r *reader) unpacks(data []byte) error {
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return r.fault(NotWorkbook, "", 0, err)
	}
	if len(archive.File) > MaxParts {
		return r.fault(Unpacks, "", 0, nil)
	}
	left := int64(MaxUnpacked)
	for _, part := range archive.File {
		if part.UncompressedSize64 > MaxUnpacked {
			return r.fault(Unpacks, "", 0, nil)
		}
		content, err := part.Open()
		if err != nil {
			return r.fault(NotWorkbook, "", 0, err)
		}
		n, err := io.Copy(io.Discard, io.LimitReader(content, left+1))
		content.Close()
		if left -= n; left < 0 {
			return r.fault(Unpacks, "", 0, nil)
		}
		if err != nil {
			return r.fault(NotWorkbook, "", 0, err)
		}
	}
	return nil
}

// onTop orders sheets: the one on top, those after it, those before it.
func onTop(names []string, active int) []string {
	if active < 0 || active >= len(names) {
		return names
	}
	return append(append([]string(nil), names[active:]...), names[:active]...)
}

// rows returns the rows of a sheet without the empty ones at its end.
func (r *reader) rows(book *excelize.File, name string) ([][]string, error) {
	each, err := book.Rows(name)
	if err != nil {
		return nil, nil // a sheet of another kind, such as a chart
	}
	defer each.Close()
	var all [][]string
	filled, room := 0, MaxText
	for number := 1; each.Next(); number++ {
		if number > MaxRows {
			return nil, r.fault(TooManyRows, name, number, nil)
		}
		cells, err := each.Columns()
		if err != nil {
			return nil, r.fault(NotWorkbook, name, number, err)
		}
		for len(cells) > 0 && cells[len(cells)-1] == "" {
			cells = cells[:len(cells)-1]
		}
		if len(cells) > MaxColumns {
			return nil, r.fault(TooManyCols, name, number, nil)
		}
		for _, cell := range cells {
			room -= len(cell) + 1
		}
		if room < 0 {
			return nil, r.fault(TooMuchText, name, number, nil)
		}
		all = append(all, cells)
		if len(cells) > 0 {
			filled = number
		}
	}
	if err := each.Error(); err != nil {
		return nil, r.fault(NotWorkbook, name, len(all)+1, err)
	}
	return all[:filled], nil
}
