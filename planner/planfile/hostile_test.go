package planfile_test

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"fourturn/planner/planfile"
)

// Files that are made to take the machine down are refused with a few words and
// without taking more memory than the limits promise. (How long it takes is the
// test's own timeout.)
func TestHostileFiles(t *testing.T) {
	if planfile.UnderRace {
		t.Skip("large inputs")
	}
	const head = "fourturn: 1\n"
	deep := func(open, shut string, n int) string { return strings.Repeat(open, n) + "x" + strings.Repeat(shut, n) }
	bomb := "a: &a [x,x,x,x,x,x,x,x,x]\n"
	for c := 'b'; c < 'z'; c++ {
		last := string(c - 1)
		bomb += string(c) + ": &" + string(c) + " [" + strings.Repeat("*"+last+",", 9) + "]\n"
	}
	for name, text := range map[string]string{
		"alias bomb":       head + bomb,
		"brackets":         head + "sites: " + deep("[", "]", 9_000),
		"braces":           head + "sites: " + deep("{a: ", "}", 9_000),
		"unclosed":         head + "sites: " + strings.Repeat("[", 1_000_000),
		"dashes":           head + "sites:\n" + strings.Repeat("- ", 9_000) + "x",
		"questions":        head + strings.Repeat("? ", 9_000) + "x",
		"deep indentation": head + strings.Repeat(" ", 0) + staircase(2_000),
		"many keys":        head + strings.Repeat("k: 1\n", planfile.MaxNodes/2-2),
		"many items":       head + "log: [" + strings.Repeat("a,", planfile.MaxNodes/8) + "]",
		"too many":         head + "log: [" + strings.Repeat("a,", planfile.MaxNodes) + "]",
		"long text":        head + "title: " + strings.Repeat("a", 10<<20),
		"long number":      head + "risk: " + strings.Repeat("9", 10<<20),
		"long key":         head + strings.Repeat("k", 1<<20) + ": 1\n",
		"too big":          head + strings.Repeat("# comment\n", planfile.MaxBytes/10),
		"directives":       strings.Repeat("%a\n", 9<<20),
		"NUL":              head + "title: a\x00b",
		"UTF-16":           "\xff\xfef\x00o\x00",
		"binary":           string(bytes.Repeat([]byte{0x1f, 0x8b, 0x08, 0xff}, 1000)),
	} {
		t.Run(name, func(t *testing.T) {
			var before, after runtime.MemStats
			runtime.GC()
			runtime.ReadMemStats(&before)
			_, err := planfile.Decode([]byte(text))
			runtime.ReadMemStats(&after)
			if err == nil {
				t.Fatal("the file was read")
			}
			if len(err.Error()) > 200*planfile.MaxProblems {
				t.Errorf("the error has %d bytes", len(err.Error()))
			}
			// All that was ever allocated, collected or not.
			if got := (after.TotalAlloc - before.TotalAlloc) >> 20; got > 900 {
				t.Errorf("%d MB were allocated", got)
			}
		})
	}
}

func staircase(steps int) string {
	var b strings.Builder
	for i := range steps {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

// seeds gives the fuzzers every case of the other tests to start from.
func seeds(f *testing.F) {
	for _, folder := range []string{filepath.Join(plans, "rewrite"), filepath.Join(plans, "bad"), migrations} {
		paths, err := filepath.Glob(filepath.Join(folder, "*.txtar"))
		if err != nil || len(paths) == 0 {
			f.Fatal("no seeds", err)
		}
		for _, path := range paths {
			archive, err := txtar.ParseFile(path)
			if err != nil {
				f.Fatal(err)
			}
			for _, file := range archive.Files {
				f.Add(file.Data)
			}
		}
	}
	kept, err := txtar.ParseFile(filepath.Join("testdata", "fuzz_corpus.txtar"))
	if err != nil {
		f.Fatal(err)
	}
	for _, file := range kept.Files {
		f.Add(file.Data)
	}
	paths, err := filepath.Glob(filepath.Join(plans, "*.yaml"))
	if err != nil {
		f.Fatal(err)
	}
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
}

// Any bytes either are refused or are a plan that can be written and read back,
// unchanged in its own text.
func FuzzDecode(f *testing.F) {
	seeds(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := planfile.Decode(data)
		if err != nil {
			return
		}
		if d.ReadOnly() {
			return
		}
		same, err := d.Encode(d.Plan())
		if err != nil {
			t.Fatalf("a plan that was read cannot be written: %v", err)
		}
		if d.FileVersion() == planfile.Version && !bytes.Equal(same, data) {
			t.Errorf("an unchanged plan changes its text to %q", same)
		}
		text, err := planfile.Encode(d.Plan())
		if err != nil {
			t.Fatal(err)
		}
		back, err := planfile.Decode(text)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if diff := equalPlans(d.Plan(), back.Plan()); diff != "" {
			t.Errorf("%s\n%s", diff, text)
		}
	})
}

// Any plan can be written into the text of any other.
func FuzzRewrite(f *testing.F) {
	f.Add([]byte("fourturn: 1\n# c\ntitle: A\n"), []byte("fourturn: 1\nrisk: 5 %\n"))
	f.Add([]byte("fourturn: 1\npots:\n  a: {name: A}\n  # b\n  b:\n    notes: |\n      x\n"), []byte("fourturn: 1\npots: {b: {}, c: {name: x}}\n"))
	f.Add([]byte("{fourturn: 1}"), []byte("fourturn: 1\nlog:\n- id: a\n  date: 2027-01-01\n  kind: fed\n"))
	f.Fuzz(func(t *testing.T, first, second []byte) {
		d, err := planfile.Decode(first)
		if err != nil || d.ReadOnly() {
			return
		}
		other, err := planfile.Decode(second)
		if err != nil {
			return
		}
		text, err := d.Encode(other.Plan())
		if err != nil {
			t.Fatal(err)
		}
		back, err := planfile.Decode(text)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if diff := equalPlans(other.Plan(), back.Plan()); diff != "" {
			t.Errorf("%s\n%s", diff, text)
		}
	})
}
