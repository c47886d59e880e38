package pots_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fourturn/app/screen/pots"
	"fourturn/app/screen/screentest"
)

func TestAListOutOfAWorkbook(t *testing.T) {
	d, s := open(t, screentest.Example(t))
	file, err := s.OpenList("testdata/pots.xlsx")
	if err != nil {
		t.Fatal(err)
	}
	before := len(d.Plan().Pots)
	read, err := s.ReadList(file.Text)
	if err != nil || len(read) != 3 || len(d.Plan().Pots) != before {
		t.Fatalf("read %d pots, %v; the plan has %d", len(read), err, len(d.Plan().Pots))
	}
	if err := s.AddList(file.Text); err != nil {
		t.Fatal(err)
	}
	if len(d.Plan().Pots) != before+3 || d.Plan().Pot("step-trough") == nil {
		t.Errorf("the plan has %d pots", len(d.Plan().Pots))
	}
}

func TestAFaultInAWorkbookNamesSheetRowAndColumn(t *testing.T) {
	_, s := open(t, screentest.Example(t))
	file, err := s.OpenList("testdata/faulty.xlsx")
	if err != nil {
		t.Fatal(err)
	}
	_, err = s.ReadList(file.Text)
	if err == nil {
		t.Fatal("a sphere was read")
	}
	said := s.Says(file, err.Error())
	for _, part := range []string{"Sheet “Faulty”", "Line 5, column 2 (shape)", "“sphere” is no shape"} {
		if !strings.Contains(said, part) {
			t.Errorf("%q does not say %q", said, part)
		}
	}
}

func TestFilesThatHoldNoListAreRefusedInWords(t *testing.T) {
	_, s := open(t, screentest.Example(t))
	folder := t.TempDir()
	for name, one := range map[string]struct{ text, says string }{
		"old.xls":     {"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "Save it as .xlsx or .csv"},
		"broken.xlsx": {"PK\x03\x04broken", "neither a workbook"},
		"empty.csv":   {"", "holds nothing"},
		"many.csv":    {strings.Repeat("x\n", 20_001), "more than 20,000 rows"},
		"huge.csv":    {strings.Repeat("x", 8<<20+1), "larger than 8 MB"},
	} {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(one.text), 0o600); err != nil {
			t.Fatal(err)
		}
		_, err := s.OpenList(path)
		if err == nil || !strings.Contains(err.Error(), one.says) || !strings.Contains(err.Error(), name) || strings.Contains(err.Error(), "⟦") {
			t.Errorf("%s: %v, want that it says %q", name, err, one.says)
		}
	}
	if _, err := s.OpenList(filepath.Join(folder, "gone.csv")); err == nil || !strings.Contains(err.Error(), "it is not there") {
		t.Errorf("a file that is not there: %v", err)
	}
	if _, err := s.OpenList(folder); err == nil {
		t.Error("a folder was read")
	}
}

func TestFilesThatAreOffered(t *testing.T) {
	for name, want := range map[string]bool{"a.xlsx": true, "A.CSV": true, "a.tsv": true, "a.yaml": false, "xlsx": false} {
		if pots.IsListFile(name) != want {
			t.Errorf("%s: %v", name, !want)
		}
	}
}
