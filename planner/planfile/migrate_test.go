package planfile_test

import (
	"path/filepath"
	"testing"

	"golang.org/x/tools/txtar"

	"fourturn/planner/planfile"
)

const migrations = "../../testdata/migrations"

func TestOlderVersionsStillOpen(t *testing.T) {
	paths, err := filepath.Glob(filepath.Join(migrations, "*.txtar"))
	if err != nil || len(paths) == 0 {
		t.Fatal("no cases", err)
	}
	opened := map[int]bool{}
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) {
			archive, err := txtar.ParseFile(path)
			if err != nil {
				t.Fatal(err)
			}
			d, err := planfile.Decode(part(t, archive, "old.yaml"))
			if want := string(part(t, archive, "problems")); want != "" {
				if err == nil || err.Error()+"\n" != want {
					t.Errorf("Decode = %v, want\n%s", err, want)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			opened[d.FileVersion()] = true
			if diff := equalPlans(decode(t, string(part(t, archive, "plan.yaml"))), d.Plan()); diff != "" {
				t.Error(diff)
			}
			saved, err := d.Encode(d.Plan())
			if err != nil {
				t.Fatal(err)
			}
			if want := string(part(t, archive, "saved.yaml")); string(saved) != want {
				t.Errorf("saved as\n%s\nwant\n%s", saved, want)
			}
			if line, column, ok := d.Position([]string{"pots", "urn", "top_diameter"}); !ok || line != 27 || column != 5 {
				t.Errorf("the diameter is said to be at %d:%d", line, column)
			}
		})
	}
	for version := range planfile.Version {
		if !opened[version] {
			t.Errorf("no file of version %d is opened", version)
		}
	}
}
