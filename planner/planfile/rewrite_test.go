package planfile_test

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"
	"pgregory.net/rapid"

	"fourturn/planner"
	"fourturn/planner/planfile"
)

const plans = "../../testdata/plans"

// part returns a file of an archive.
func part(t testing.TB, a *txtar.Archive, name string) []byte {
	t.Helper()
	for _, f := range a.Files {
		if f.Name == name {
			return f.Data
		}
	}
	t.Fatalf("no part %q", name)
	return nil
}

// Each archive has a text before, the plan to write into it, and the text that is
// wanted. The same must hold with other line breaks.
func TestRewriteKeepsWhatDidNotChange(t *testing.T) {
	paths, err := filepath.Glob(filepath.Join(plans, "rewrite", "*.txtar"))
	if err != nil || len(paths) == 0 {
		t.Fatal("no cases", err)
	}
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			archive, err := txtar.ParseFile(path)
			if err != nil {
				t.Fatal(err)
			}
			for name, eol := range map[string]string{"LF": "\n", "CR LF": "\r\n"} {
				ends := func(part []byte) []byte { return bytes.ReplaceAll(part, []byte("\n"), []byte(eol)) }
				d, err := planfile.Decode(ends(part(t, archive, "before")))
				if err != nil {
					t.Fatal(err)
				}
				got, err := d.Encode(decode(t, string(part(t, archive, "plan"))))
				if err != nil {
					t.Fatal(err)
				}
				if want := ends(part(t, archive, "want")); !bytes.Equal(got, want) {
					t.Errorf("with %s:\n%s\nwant\n%s", name, got, want)
				}
			}
		})
	}
}

// Into a text with comments and empty lines anywhere, a new name for one pot is
// written by changing the lines of that name and no other.
func TestOneEditChangesOneLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := manyPots(t)
		plan.Pots[0].Name = "Old name"
		text, err := planfile.Encode(plan)
		if err != nil {
			t.Fatal(err)
		}
		text = sprinkle(t, text)
		d, err := planfile.Decode(text)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		changed := *d.Plan()
		changed.Pots = append([]planner.Pot(nil), changed.Pots...)
		changed.Pots[0].Name = "New name"
		got, err := d.Encode(&changed)
		if err != nil {
			t.Fatal(err)
		}
		if want := strings.Replace(string(text), "    name: Old name", "    name: New name", 1); string(got) != want {
			t.Fatalf("got\n%s\nwant\n%s", got, want)
		}
	})
}

// sprinkle adds comments and empty lines before the keys of a text that was
// written by Encode.
func sprinkle(t *rapid.T, text []byte) []byte {
	var b strings.Builder
	inText := -1 // indentation of the key of a literal block
	for row := range strings.Lines(string(text)) {
		indent := len(row) - len(strings.TrimLeft(row, " "))
		if strings.TrimSpace(row) == "" || inText >= 0 && indent > inText {
			b.WriteString(row)
			continue
		}
		inText = -1
		switch rapid.IntRange(0, 5).Draw(t, "sprinkle") {
		case 0:
			b.WriteString(strings.Repeat(" ", rapid.IntRange(0, 8).Draw(t, "indent")) + "# remark: [x] 'y'\n")
		case 1:
			b.WriteString("\n")
		case 2:
			if indent > 0 {
				b.WriteString(strings.Repeat(" ", indent) + "# above\n")
			}
		}
		if strings.HasSuffix(strings.TrimRight(row, "-\n"), " |") {
			inText = indent
		}
		b.WriteString(row)
	}
	return []byte(b.String())
}

func TestEditsKeepTheMark(t *testing.T) {
	const mark = "\ufeff"
	d, err := planfile.Decode([]byte(mark + "fourturn: 1\ntitle: A\n"))
	if err != nil {
		t.Fatal(err)
	}
	got, err := d.Encode(decode(t, "fourturn: 1\ntitle: B\nrisk: 5 %"))
	if want := mark + "fourturn: 1\ntitle: B\nrisk: 5 %\n"; err != nil || string(got) != want {
		t.Errorf("%v, %q, want %q", err, got, want)
	}
}
