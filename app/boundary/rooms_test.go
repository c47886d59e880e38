package boundary

import "strings"

// foundations are the packages of the planner that everything stands on.
var foundations = []string{"planner/civil", "planner/quantity", "planner/working", "planner/finding"}

// chapters take numbers and units and know no plan.
var chapters = []string{
	"planner/vessel", "planner/mix", "planner/climate", "planner/nutrition", "planner/rotation",
	"planner/arrange", "planner/water", "planner/work", "planner/costing",
}

// viewNames are all that a view may name of the plan: a figure, so that a click on
// it can ask for its working.
var viewNames = map[string]bool{"Figure": true}

// everything stands for any package of the module in a list of imports.
const everything = ""

// mayImport returns the packages of the module that the files of a room may
// import; each stands for the packages inside it too, but for "planner" and "app",
// which stand for themselves alone.
func mayImport(room string) []string {
	own := []string{room}
	switch {
	case room == "app":
		return []string{everything}
	case within(room, "app/session"):
		return join([]string{"app/session", "planner", "plants", "planner/planfile"}, foundations, chapters)
	case within(room, "app/screen"):
		return join([]string{first(room, 3), "app/session", "app/words", "planner", "planner/planfile", "planner/sheet", "planner/export", "plants"}, foundations, chapters)
	case within(room, "app/view"):
		screen := strings.Replace(first(room, 3), "app/view", "app/screen", 1)
		return join([]string{first(room, 3), screen, "app/widgets", "app/theme", "app/words", "assets"}, foundations)
	case within(room, "app/widgets"):
		return join([]string{"app/widgets", "app/theme", "assets"}, foundations)
	case within(room, "app/theme"):
		return []string{"app/theme", "assets"}
	case within(room, "app/desktop"):
		return join([]string{"app/desktop", "app/session", "app/screen", "app/view", "app/widgets", "app/theme", "app/words", "assets", "planner", "planner/planfile", "planner/export", "plants"}, foundations, chapters)
	case within(room, "app/words"):
		return join([]string{"app/words"}, foundations)
	case room == "planner":
		return join([]string{"planner", "plants"}, foundations, chapters)
	case withinAny(room, foundations):
		return foundations
	case withinAny(room, chapters):
		return join([]string{first(room, 2)}, foundations)
	case within(room, "planner/planfile"):
		return join([]string{"planner/planfile", "planner"}, foundations, chapters)
	case within(room, "planner/export"):
		return join([]string{first(room, 3), "planner", "plants"}, foundations, chapters)
	case within(room, "plants"):
		return join([]string{"plants"}, foundations)
	}
	return own
}

// allows reports whether a list of imports holds a package.
func allows(list []string, imported string) bool {
	for _, one := range list {
		switch {
		case one == everything, imported == one:
			return true
		case one != "planner" && one != "app" && within(imported, one):
			return true
		}
	}
	return false
}

// first returns the first n parts of a folder.
func first(folder string, n int) string {
	parts := strings.Split(folder, "/")
	return strings.Join(parts[:min(n, len(parts))], "/")
}

func join(lists ...[]string) (all []string) {
	for _, list := range lists {
		all = append(all, list...)
	}
	return all
}

// draws reports whether the files of a room may use the toolkit.
func draws(room string) bool {
	return room == "app" || withinAny(room, []string{"app/view", "app/widgets", "app/theme", "app/desktop"})
}

// libraries are the modules from outside and the rooms that may use them; none
// named means any. A library in few rooms can be replaced.
var libraries = map[string][]string{
	"fyne.io/fyne/v2":               {"app"}, // more closely by draws
	"github.com/adrg/xdg":           {"app"},
	"gopkg.in/yaml.v3":              {"planner/planfile", "plants"},
	"github.com/gofrs/flock":        {"planner/planfile"},
	"codeberg.org/go-pdf/fpdf":      {"planner/export"},
	"github.com/arran4/golang-ical": {"planner/export"},
	"github.com/xuri/excelize/v2":   {"planner/export", "planner/sheet"},
	"gonum.org/v1/gonum":            {"planner", "plants"},
	"golang.org/x/text":             nil,
}

// testLibraries are only for tests and for packages that serve tests.
var testLibraries = []string{"pgregory.net/rapid", "github.com/google/go-cmp", "golang.org/x/tools/txtar"}

// servesTests reports whether a package exists for tests alone, by its name.
func servesTests(room string) bool {
	return strings.HasSuffix(room, "test") || strings.HasSuffix(room, "/golden")
}

// topLevel is all that may stand at the top of the project.
var topLevel = map[string]bool{
	"app": true, "planner": true, "plants": true, "assets": true, "testdata": true,
	"README.md": true, "DEVELOPERS.md": true, "LICENSE": true, "NOTICE": true,
	"go.mod": true, "go.sum": true, "FyneApp.toml": true, "Makefile": true,
	".gitignore": true, ".ci": true,
}

// emptyNames are names of packages that say nothing about what is inside.
var emptyNames = map[string]bool{
	"util": true, "utils": true, "common": true, "helper": true, "helpers": true,
	"model": true, "models": true, "misc": true, "base": true, "shared": true, "lib": true, "types": true,
}
