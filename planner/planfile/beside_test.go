package planfile_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fourturn/planner/planfile"
)

func besideStore(t *testing.T) *planfile.Store {
	t.Helper()
	n := 0
	return planfile.NewStore(t.TempDir(), func() time.Time { return time.Date(2027, 5, 1, 9, n, 0, 0, time.UTC) }, func() string {
		n++
		return "n" + strings.Repeat("x", n)
	})
}

func writeFile(t *testing.T, path, text string, changed time.Time) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(path, changed, changed); err != nil {
		t.Fatal(err)
	}
}

// A second copy is known by its name and by what is in it, whatever words the
// service that dropped it puts behind the name.
func TestSecondCopiesAreFound(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "terrace.yaml")
	const plan = "fourturn: 1\ntitle: Terrace\npots:\n  urn: {name: Urn}\n  tub: {name: Tub}\n"
	day := time.Date(2027, 5, 1, 0, 0, 0, 0, time.UTC)
	for i, f := range []struct{ name, text string }{
		{"terrace.yaml", plan},
		{"terrace (second copy 2027-05-01).yaml", strings.Replace(plan, "Urn", "Vase", 1)},
		{"terrace-WORKSHOP.yaml", strings.Replace(plan, "tub: {name: Tub}", "jar: {name: Jar}", 1)},
		{"terrace same.yaml", "# by hand\n" + plan},
		{"terrace other.yaml", "fourturn: 1\ntitle: Terrace\npots:\n  box: {name: Box}\n  pan: {name: Pan}\n  can: {name: Can}\n"},
		{"terrace broken.yaml", "fourturn: 1\npots: ["},
		{"terrace newer.yaml", strings.Replace(plan, "fourturn: 1", "fourturn: 99", 1)},
		{"terrace.txt", strings.Replace(plan, "Urn", "Vase", 1)},
		{"roof terrace.yaml", strings.Replace(plan, "Urn", "Vase", 1)},
		{".terrace.yaml.x.tmp", strings.Replace(plan, "Urn", "Vase", 1)},
	} {
		writeFile(t, filepath.Join(folder, f.name), f.text, day.AddDate(0, 0, i))
	}
	if err := os.Mkdir(filepath.Join(folder, "terrace folder.yaml"), 0o700); err != nil {
		t.Fatal(err)
	}
	store := besideStore(t)
	names := func() string {
		found, err := store.Beside(path, decode(t, plan))
		if err != nil {
			t.Fatal(err)
		}
		var names []string
		for _, b := range found {
			names = append(names, filepath.Base(b.Path))
		}
		return strings.Join(names, "|")
	}
	if got, want := names(), "terrace-WORKSHOP.yaml|terrace (second copy 2027-05-01).yaml"; got != want {
		t.Fatalf("found %s, want %s", got, want)
	}
	found, err := store.Beside(path, decode(t, plan))
	if err != nil {
		t.Fatal(err)
	}
	if err := store.Settle(path, found[0].Sum); err != nil {
		t.Fatal(err)
	}
	if got := names(); strings.Contains(got, "WORKSHOP") {
		t.Errorf("a settled copy is offered again: %s", got)
	}
	// Once it holds something else it is another copy.
	writeFile(t, found[0].Path, strings.Replace(plan, "Tub", "Bucket", 1), day)
	if got := names(); !strings.Contains(got, "WORKSHOP") {
		t.Errorf("a new second copy is not offered: %s", got)
	}
}

func TestManyFilesBesideAreNotAllRead(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "p.yaml")
	const plan = "fourturn: 1\npots:\n  urn: {name: Urn}\n"
	day := time.Date(2027, 5, 1, 0, 0, 0, 0, time.UTC)
	for i := range 100 {
		writeFile(t, filepath.Join(folder, "p"+strings.Repeat("i", i)+".yaml"), strings.Replace(plan, "Urn", strings.Repeat("v", i+1), 1), day.AddDate(0, 0, i))
	}
	found, err := besideStore(t).Beside(path, decode(t, plan))
	if err != nil || len(found) == 0 || len(found) > 20 {
		t.Fatalf("%d found, %v", len(found), err)
	}
	if want := "p" + strings.Repeat("i", 99) + ".yaml"; filepath.Base(found[0].Path) != want {
		t.Errorf("first comes %s, not the newest", found[0].Path)
	}
}

func TestAncestorIsTheCopyThatDiffersLeast(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "p.yaml")
	store := besideStore(t)
	stamp := planfile.Stamp{}
	var err error
	for _, title := range []string{"A", "B", "C"} {
		text := "fourturn: 1\ntitle: " + title + "\npots:\n  urn: {name: Urn" + title + "}\n"
		if stamp, err = store.Save(path, []byte(text), stamp); err != nil {
			t.Fatal(err)
		}
	}
	other := decode(t, "fourturn: 1\ntitle: A\ncurrency: EUR\npots:\n  urn: {name: UrnA}\n")
	if was := store.Ancestor(path, other); was == nil || was.Title != "A" {
		t.Errorf("the ancestor is %+v", was)
	}
	if was := store.Ancestor(filepath.Join(folder, "new.yaml"), other); was != nil {
		t.Errorf("a file without copies has the ancestor %+v", was)
	}
}
