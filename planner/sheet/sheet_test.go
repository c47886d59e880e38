package sheet_test

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"fourturn/planner/sheet"
)

// book makes a workbook.
func book(tb testing.TB, fill func(f *excelize.File) error) []byte {
	tb.Helper()
	f := excelize.NewFile()
	defer f.Close()
	if err := fill(f); err != nil {
		tb.Fatal(err)
	}
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		tb.Fatal(err)
	}
	return out.Bytes()
}

func pots(f *excelize.File) error {
	return errors.Join(
		f.SetSheetName("Sheet1", "Pots"),
		f.SetSheetRow("Pots", "A1", &[]any{"Name", "Shape", "Sizes", "Spot", "How many"}),
		f.SetSheetRow("Pots", "A2", &[]any{"Gate pot", "round", "45 x 32 x 40 cm", "bench", 2}),
		f.SetSheetRow("Pots", "A4", &[]any{"Step\ntrough", "trough", `18" x 7"`, "", 1.5}),
		f.SetSheetRow("Pots", "A9", &[]any{"", ""}),
	)
}

func TestRowsOfAWorkbook(t *testing.T) {
	l, err := sheet.Read("pots.xlsx", book(t, pots))
	if err != nil {
		t.Fatal(err)
	}
	want := "Name\tShape\tSizes\tSpot\tHow many\nGate pot\tround\t45 x 32 x 40 cm\tbench\t2\n\nStep trough\ttrough\t\"18\"\" x 7\"\"\"\t\t1.5\n"
	if l.Sheet != "Pots" || l.File != "pots.xlsx" || l.Text != want {
		t.Errorf("sheet %q of %q holds\n%q\nwant\n%q", l.Sheet, l.File, l.Text, want)
	}
}

// A formula gives the value that the spreadsheet stored, or nothing; it is not run.
func TestFormulasAreNotRun(t *testing.T) {
	data := book(t, func(f *excelize.File) error {
		return errors.Join(pots(f), f.SetCellFormula("Pots", "E2", "1+1"), f.SetCellFormula("Pots", "A3", `HYPERLINK("http://example.org","x")`))
	})
	l, err := sheet.Read("pots.xlsx", data)
	if err != nil {
		t.Fatal(err)
	}
	if lines := strings.Split(l.Text, "\n"); strings.Contains(l.Text, "HYPERLINK") || strings.Contains(lines[2], "x") {
		t.Errorf("the rows are %q", lines)
	}
}

func TestTheSheetOnTopIsRead(t *testing.T) {
	data := book(t, func(f *excelize.File) error {
		_, one := f.NewSheet("Notes")
		top, other := f.NewSheet("Empty")
		_, third := f.NewSheet("List")
		f.SetActiveSheet(top)
		return errors.Join(one, other, third, f.SetCellStr("Notes", "A1", "remember"), f.SetCellStr("List", "B2", "here"))
	})
	l, err := sheet.Read("book.xlsx", data)
	if err != nil || l.Sheet != "List" || l.Text != "\n\there\n" {
		t.Errorf("%+v, %v", l, err)
	}
}

func TestTextInItsEncodings(t *testing.T) {
	const want = "Käse;½\nx;y"
	for name, data := range map[string]string{
		"utf-8":         want,
		"with a mark":   "\ufeff" + want,
		"windows":       "K\xe4se;\xbd\r\nx;y",
		"utf-16":        "\xff\xfeK\x00\xe4\x00s\x00e\x00;\x00\xbd\x00\n\x00x\x00;\x00y\x00",
		"old macs":      "Käse;½\rx;y",
		"big end first": "\xfe\xff\x00K\x00\xe4\x00s\x00e\x00;\x00\xbd\x00\n\x00x\x00;\x00y",
	} {
		l, err := sheet.Read("pots.csv", []byte(data))
		if err != nil || l.Text != want || l.Sheet != "" {
			t.Errorf("%s: %+v, %v", name, l, err)
		}
	}
}

// packed makes a zip file of parts.
func packed(tb testing.TB, parts map[string]io.Reader) []byte {
	tb.Helper()
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for name, content := range parts {
		part, err := w.Create(name)
		if err == nil {
			_, err = io.Copy(part, content)
		}
		if err != nil {
			tb.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		tb.Fatal(err)
	}
	return out.Bytes()
}

// zeros is a reader without end.
type zeros struct{}

func (zeros) Read(p []byte) (int, error) {
	clear(p)
	return len(p), nil
}

// withPart replaces a part of a workbook.
func withPart(tb testing.TB, data []byte, name, content string) []byte {
	tb.Helper()
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		tb.Fatal(err)
	}
	parts := map[string]io.Reader{name: strings.NewReader(content)}
	for _, f := range archive.File {
		if f.Name == name {
			continue
		}
		part, err := f.Open()
		if err != nil {
			tb.Fatal(err)
		}
		parts[f.Name] = part
	}
	return packed(tb, parts)
}

const sheetHead = `<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>`

const sheetPart = "xl/worksheets/sheet1.xml"

// hostile are files that mean harm, or are broken, with what is said of them.
func hostile(tb testing.TB) map[string]struct {
	data []byte
	kind sheet.FaultKind
} {
	plain := book(tb, pots)
	many := map[string]io.Reader{}
	for i := range sheet.MaxParts + 1 {
		many[fmt.Sprint(i)] = strings.NewReader("")
	}
	var rows, columns strings.Builder
	for i := range sheet.MaxRows + 1 {
		fmt.Fprintf(&rows, `<row r="%d"><c r="A%d" t="inlineStr"><is><t>x</t></is></c></row>`, i+1, i+1)
	}
	for range sheet.MaxColumns + 1 {
		columns.WriteString(`<c t="inlineStr"><is><t>x</t></is></c>`)
	}
	long := strings.Repeat("x", 32_000)
	var text strings.Builder
	for range sheet.MaxText/len(long) + 1 {
		text.WriteString(`<row><c t="s"><v>0</v></c></row>`)
	}
	shared := `<?xml version="1.0"?><sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><si><t>` + long + `</t></si></sst>`
	type file = struct {
		data []byte
		kind sheet.FaultKind
	}
	return map[string]file{
		"huge":                  {make([]byte, sheet.MaxBytes+1), sheet.TooBig},
		"empty":                 {nil, sheet.Nothing},
		"blank":                 {[]byte(" \n\n"), sheet.Nothing},
		"no list":               {[]byte("\x00\x01\x02"), sheet.NotWorkbook},
		"older kind":            {[]byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1 and more"), sheet.Locked},
		"cut off":               {plain[:len(plain)/2], sheet.NotWorkbook},
		"only the mark":         {[]byte("PK\x03\x04"), sheet.NotWorkbook},
		"zip of no book":        {packed(tb, map[string]io.Reader{"a.txt": strings.NewReader("x")}), sheet.NotWorkbook},
		"bomb":                  {packed(tb, map[string]io.Reader{sheetPart: io.LimitReader(zeros{}, sheet.MaxUnpacked+1)}), sheet.Unpacks},
		"bomb in parts":         {packed(tb, map[string]io.Reader{"a": io.LimitReader(zeros{}, 40<<20), "b": io.LimitReader(zeros{}, 40<<20)}), sheet.Unpacks},
		"many parts":            {packed(tb, many), sheet.Unpacks},
		"many rows":             {withPart(tb, plain, sheetPart, sheetHead+rows.String()+"</sheetData></worksheet>"), sheet.TooManyRows},
		"row far down":          {withPart(tb, plain, sheetPart, sheetHead+`<row r="1048576"><c r="A1048576" t="inlineStr"><is><t>x</t></is></c></row></sheetData></worksheet>`), sheet.TooManyRows},
		"wide":                  {withPart(tb, plain, sheetPart, sheetHead+"<row>"+columns.String()+"</row></sheetData></worksheet>"), sheet.TooManyCols},
		"cell far right":        {withPart(tb, plain, sheetPart, sheetHead+`<row r="1"><c r="XFD1" t="inlineStr"><is><t>x</t></is></c></row></sheetData></worksheet>`), sheet.TooManyCols},
		"one text thrown about": {withPart(tb, withPart(tb, plain, "xl/sharedStrings.xml", shared), sheetPart, sheetHead+text.String()+"</sheetData></worksheet>"), sheet.TooMuchText},
		"long text":             {[]byte(strings.Repeat("x", sheet.MaxText+1)), sheet.TooMuchText},
		"many lines":            {[]byte(strings.Repeat("x\n", sheet.MaxRows+1)), sheet.TooManyRows},
	}
}

func TestHostileFilesAreRefused(t *testing.T) {
	for name, file := range hostile(t) {
		t.Run(name, func(t *testing.T) {
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			_, err := sheet.Read("list", file.data)
			runtime.ReadMemStats(&after)
			var fault *sheet.Fault
			if !errors.As(err, &fault) || fault.Kind != file.kind {
				t.Errorf("%v, want %s", err, file.kind)
			}
			const most = 1 << 30
			if used := after.TotalAlloc - before.TotalAlloc; used > most {
				t.Errorf("it took %d MB", used>>20)
			}
		})
	}
}

// Entities that grow, deep nesting and references that point nowhere end in rows or in
// a fault, never in a crash.
func TestWorkbooksOfStrangeParts(t *testing.T) {
	plain := book(t, pots)
	for name, part := range map[string]string{
		"entities":       `<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;">]><worksheet><sheetData><row><c t="inlineStr"><is><t>&b;</t></is></c></row></sheetData></worksheet>`,
		"outside entity": `<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]><worksheet><sheetData><row><c t="inlineStr"><is><t>&a;</t></is></c></row></sheetData></worksheet>`,
		"deep":           sheetHead + strings.Repeat("<row>", 100_000),
		"no such text":   sheetHead + `<row><c t="s"><v>999999999</v></c></row></sheetData></worksheet>`,
		"negative text":  sheetHead + `<row><c t="s"><v>-1</v></c></row></sheetData></worksheet>`,
		"strange place":  sheetHead + `<row r="-5"><c r="A0"><v>1</v></c></row></sheetData></worksheet>`,
		"huge number":    sheetHead + `<row><c><v>1e999999</v></c></row></sheetData></worksheet>`,
		"other root":     `<html><body>x</body></html>`,
		"nothing":        ``,
	} {
		l, err := sheet.Read("list.xlsx", withPart(t, plain, sheetPart, part))
		var fault *sheet.Fault
		if err != nil && !errors.As(err, &fault) {
			t.Errorf("%s: %v", name, err)
		}
		if l != nil && strings.Contains(l.Text, "root:") {
			t.Errorf("%s: a file of the machine was read", name)
		}
	}
}

// A name in a workbook that points outside writes nothing anywhere.
func TestPartsAreNotWrittenToTheDisk(t *testing.T) {
	folder := t.TempDir()
	t.Setenv("TMPDIR", folder)
	data := withPart(t, book(t, pots), "../../../../../../../"+filepath.Join(folder, "escaped"), "x")
	if _, err := sheet.Read("list.xlsx", data); err != nil {
		var fault *sheet.Fault
		if !errors.As(err, &fault) {
			t.Fatal(err)
		}
	}
	if entries, err := os.ReadDir(folder); err != nil || len(entries) != 0 {
		t.Errorf("written: %v, %v", entries, err)
	}
}

func TestOpenTellsOfTheFileSystem(t *testing.T) {
	folder := t.TempDir()
	if _, err := sheet.Open(filepath.Join(folder, "gone.xlsx")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a file that is not there: %v", err)
	}
	if _, err := sheet.Open(folder); err == nil {
		t.Error("a folder was read")
	}
	path := filepath.Join(folder, "pots.xlsx")
	if err := os.WriteFile(path, book(t, pots), 0o600); err != nil {
		t.Fatal(err)
	}
	if l, err := sheet.Open(path); err != nil || l.File != "pots.xlsx" || l.Sheet != "Pots" {
		t.Errorf("%+v, %v", l, err)
	}
}

// Whatever the file holds, it gives rows within the limits or a fault.
func FuzzRead(f *testing.F) {
	plain := book(f, pots)
	f.Add(plain)
	f.Add(withPart(f, plain, sheetPart, sheetHead+`<row r="3"><c r="B3" t="b"><v>1</v></c><c t="s"><v>0</v></c><c t="e"><v>#REF!</v></c></row></sheetData></worksheet>`))
	f.Add(withPart(f, plain, "xl/workbook.xml", `<workbook/>`))
	for name, file := range hostile(f) {
		if len(file.data) < 64<<10 && name != "many parts" {
			f.Add(file.data)
		}
	}
	f.Add([]byte("a;b\n\"c\n"))
	f.Add([]byte("\xff\xfea\x00"))
	f.Fuzz(func(t *testing.T, data []byte) {
		l, err := sheet.Read("list", data)
		if err != nil {
			var fault *sheet.Fault
			if !errors.As(err, &fault) {
				t.Fatalf("the error is %v", err)
			}
			return
		}
		if len(l.Text) > 2*sheet.MaxText || strings.Count(l.Text, "\n") > sheet.MaxRows {
			t.Fatalf("%d bytes in %d lines", len(l.Text), strings.Count(l.Text, "\n"))
		}
	})
}

// FuzzSheetPart feeds the XML of one sheet, which a change of packed bytes seldom
// reaches.
func FuzzSheetPart(f *testing.F) {
	plain := book(f, pots)
	f.Add(sheetHead + `<row r="3" spans="1:2"><c r="B3" t="inlineStr"><is><t>x</t></is></c></row></sheetData></worksheet>`)
	f.Add(sheetHead + `<row><c t="s"><v>7</v></c><c t="str"><f>1+1</f><v>2</v></c></row></sheetData></worksheet>`)
	f.Add(sheetHead + `<row r="1048576"><c r="XFD1"/></row>`)
	f.Fuzz(func(t *testing.T, part string) {
		_, err := sheet.Read("list.xlsx", withPart(t, plain, sheetPart, part))
		var fault *sheet.Fault
		if err != nil && !errors.As(err, &fault) {
			t.Fatalf("the error is %v", err)
		}
	})
}
