package planfile_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"fourturn/planner/planfile"
	"fourturn/planner/planfile/plantest"
)

// The schema is checked by programs that are not ours: PyYAML reads the files and
// python3-jsonschema validates them. It must accept every plan that we write and
// every good example, and refuse the bad ones whose fault a schema can see.
func TestSchemaAgainstAnotherValidator(t *testing.T) {
	python, err := exec.LookPath("/usr/bin/python3")
	if err == nil {
		err = exec.Command(python, "-c", "import jsonschema, yaml").Run()
	}
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("python3-jsonschema and python3-yaml are needed here:", err)
		}
		t.Skip("python3-jsonschema and python3-yaml are not installed:", err)
	}
	folder := t.TempDir()
	var list strings.Builder
	count := 0
	add := func(want, name string, text []byte) {
		count++
		path := filepath.Join(folder, fmt.Sprintf("%d-%s.yaml", count, name))
		if err := os.WriteFile(path, text, 0o600); err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&list, "%s %s\n", want, path)
	}
	examples, _ := filepath.Glob(filepath.Join(plans, "*.yaml"))
	for _, path := range examples {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		add("accepts", filepath.Base(path), text)
	}
	for _, folder := range []string{"rewrite", "bad"} {
		paths, _ := filepath.Glob(filepath.Join(plans, folder, "*.txtar"))
		for _, path := range paths {
			archive, err := txtar.ParseFile(path)
			if err != nil {
				t.Fatal(err)
			}
			addArchive(t, archive, filepath.Base(path), add)
		}
	}
	add("accepts", "large", mustEncode(t, bigPlan(20)))
	generator := plantest.Plan()
	for seed := range 60 {
		add("accepts", "random", mustEncode(t, generator.Example(seed)))
	}
	listPath := filepath.Join(folder, "list")
	if err := os.WriteFile(listPath, []byte(list.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	schemaPath := filepath.Join(folder, "schema.json")
	if err := os.WriteFile(schemaPath, []byte(planfile.Schema()), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(python, "testdata/validate.py", schemaPath, listPath).CombinedOutput()
	if want := fmt.Sprintf("%d files\n", count); err != nil || string(out) != want {
		t.Errorf("%v\n%s", err, out)
	}
}

// addArchive adds the files of a case. Bad ones say in their first lines whether a
// schema can see the fault.
func addArchive(t *testing.T, archive *txtar.Archive, name string, add func(want, name string, text []byte)) {
	for _, f := range archive.Files {
		switch {
		case f.Name == "before" || f.Name == "plan" || f.Name == "want":
			add("accepts", name, f.Data)
		case f.Name == "problems":
		case strings.Contains(string(archive.Comment), "Schema: accepts"):
			add("accepts", name, f.Data)
		case strings.Contains(string(archive.Comment), "Schema: refuses"), strings.Contains(string(archive.Comment), "Schema: unreadable"):
			add("refuses", name, f.Data)
		default:
			t.Errorf("%s does not say what the schema does", name)
		}
	}
}
