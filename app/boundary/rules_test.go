package boundary

import (
	"go/ast"
	"io/fs"
	"path"
	"slices"
	"strings"
)

// exception lets one room import another against the rule.
type exception struct {
	room, imports string
	reason        string
}

// exceptions are those of Fourturn itself.
var exceptions = []exception{
	{"app/theme/outline", "app/widgets/ink", "turns the strokes of icons into outlines with the pen that the widgets draw with"},
	{"app/view/pots", "planner/vessel", "draws the outlines by which the chapter describes a shape"},
	{"app/widgets/plantdraw", "plants", "paints what package plants/sketch draws of a plant of the book"},
	{"app/widgets/plantdraw", "plants/sketch", "paints what package plants/sketch draws of a plant of the book"},
}

// check applies every rule to a tree and returns what breaks them, sorted.
func check(root fs.FS, allowed []exception) ([]string, error) {
	sources, err := readSources(root)
	if err != nil {
		return nil, err
	}
	faults, err := checkTopLevel(root)
	if err != nil {
		return nil, err
	}
	used := map[exception]bool{}
	var windows []string
	for _, s := range sources {
		faults = append(faults, checkImports(s, allowed, used)...)
		faults = append(faults, checkLibraries(s)...)
		faults = append(faults, checkGoroutines(s)...)
		faults = append(faults, checkClock(s)...)
		for _, i := range s.imports() {
			if i.path == "fyne.io/fyne/v2/app" {
				windows = append(windows, s.fault(i.at, "only one file may import fyne.io/fyne/v2/app"))
			}
		}
	}
	if len(windows) > 1 {
		faults = append(faults, windows...)
	}
	faults = append(faults, checkPackages(sources)...)
	for _, e := range allowed {
		if !used[e] || e.reason == "" {
			faults = append(faults, "exceptions: "+e.room+" for "+e.imports+" is not needed or has no reason")
		}
	}
	slices.Sort(faults)
	return faults, nil
}

func checkTopLevel(root fs.FS) (faults []string, err error) {
	entries, err := fs.ReadDir(root, ".")
	for _, entry := range entries {
		if name := entry.Name(); !topLevel[name] && !built[name] {
			faults = append(faults, name+": does not belong at the top level")
		}
	}
	return faults, err
}

// checkImports holds a file to the packages of the module that its room may import.
func checkImports(s source, allowed []exception, used map[exception]bool) (faults []string) {
	may := mayImport(s.room)
	for _, i := range s.imports() {
		target, ok := strings.CutPrefix(i.path, module+"/")
		if !ok || allows(may, target) {
			continue
		}
		// A test outside its package, and a package that serves tests, stand beside what they test.
		if s.test && target == s.room || servesTests(target) && (s.test || servesTests(s.room)) {
			continue
		}
		if within(s.room, "app/view") && target == "planner" {
			if s.test { // a test makes the plan that the page shows
				continue
			}
			faults = append(faults, checkNames(s, target, viewNames)...)
			continue
		}
		at := slices.IndexFunc(allowed, func(e exception) bool { return e.room == s.room && e.imports == target })
		if at >= 0 {
			used[allowed[at]] = true
			continue
		}
		faults = append(faults, s.fault(i.at, "%s may not import %s", s.room, target))
	}
	return faults
}

// checkNames finds the names of a package that a file uses beyond the given ones.
func checkNames(s source, target string, names map[string]bool) (faults []string) {
	local := s.localName(module + "/" + target)
	ast.Inspect(s.syntax, func(n ast.Node) bool {
		selector, ok := n.(*ast.SelectorExpr)
		if ok && calls(selector, local, selector.Sel.Name) && !names[selector.Sel.Name] {
			faults = append(faults, s.fault(n.Pos(), "%s may not use %s.%s: ask the screen", s.room, target, selector.Sel.Name))
		}
		return true
	})
	return faults
}

// checkLibraries holds a file to the modules from outside that its room may use.
func checkLibraries(s source) (faults []string) {
	for _, i := range s.imports() {
		name, _, _ := strings.Cut(i.path, "/")
		standard := !strings.Contains(name, ".") && i.path != "C"
		if standard || within(i.path, module) {
			continue
		}
		if within(i.path, "fyne.io/fyne/v2") && !draws(s.room) {
			faults = append(faults, s.fault(i.at, "%s may not use the toolkit (%s)", s.room, i.path))
			continue
		}
		if !mayUse(s, i.path) {
			faults = append(faults, s.fault(i.at, "%s may not use %s", s.room, i.path))
		}
	}
	return faults
}

func mayUse(s source, library string) bool {
	if withinAny(library, testLibraries) {
		return s.test || servesTests(s.room)
	}
	for name, rooms := range libraries {
		if within(library, name) {
			// A test may read what another room wrote.
			return rooms == nil || s.test || withinAny(s.room, rooms)
		}
	}
	return false
}

// checkGoroutines finds work beside the interface goroutine. In app only the
// session does such work.
func checkGoroutines(s source) (faults []string) {
	if !within(s.room, "app") || within(s.room, "app/session") {
		return nil
	}
	clock := s.localName("time")
	ast.Inspect(s.syntax, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.GoStmt:
			faults = append(faults, s.fault(n.Pos(), "go statement: only app/session works beside the interface"))
		case *ast.CallExpr:
			called, ok := n.Fun.(*ast.SelectorExpr)
			if !ok {
				break
			}
			// The types are not known here; a Go of something else, such as a browser's,
			// is in a file that has no use for these packages.
			if called.Sel.Name == "Go" && (s.localName("sync") != "" || s.localName("golang.org/x/sync/errgroup") != "") {
				faults = append(faults, s.fault(n.Pos(), "call of Go: only app/session works beside the interface"))
			}
			if calls(called, clock, "AfterFunc") {
				faults = append(faults, s.fault(n.Pos(), "time.AfterFunc: only app/session works beside the interface"))
			}
		}
		return true
	})
	return faults
}

// checkClock finds uses of the clock. Today is an input, so that every day can be
// tried; only the wiring in app asks for it. A test may hold a stopwatch: a variable
// set by time.Now() that time.Since reads.
func checkClock(s source) (faults []string) {
	clock := s.localName("time")
	if clock == "" || s.room == "app" && !s.test {
		return nil
	}
	stopwatches := map[ast.Node]bool{}
	if s.test {
		stopwatches = findStopwatches(s.syntax, clock)
	}
	ast.Inspect(s.syntax, func(n ast.Node) bool {
		selector, ok := n.(*ast.SelectorExpr)
		if ok && calls(selector, clock, "Now", "Since", "Until") && !stopwatches[selector] {
			faults = append(faults, s.fault(n.Pos(), "time.%s: today is an input", selector.Sel.Name))
		}
		return true
	})
	return faults
}

// findStopwatches returns the uses of time.Now and time.Since that measure how long
// something takes.
func findStopwatches(file *ast.File, clock string) map[ast.Node]bool {
	found, read := map[ast.Node]bool{}, map[string]bool{}
	ast.Inspect(file, func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok || len(call.Args) != 1 {
			return true
		}
		name, isName := call.Args[0].(*ast.Ident)
		selector, ok := call.Fun.(*ast.SelectorExpr)
		if ok && isName && calls(selector, clock, "Since") {
			found[selector], read[name.Name] = true, true
		}
		return true
	})
	ast.Inspect(file, func(n ast.Node) bool {
		assigned, ok := n.(*ast.AssignStmt)
		if !ok || len(assigned.Lhs) != len(assigned.Rhs) {
			return true
		}
		for i, right := range assigned.Rhs {
			name, isName := assigned.Lhs[i].(*ast.Ident)
			call, isCall := right.(*ast.CallExpr)
			if isName && isCall && read[name.Name] {
				found[call.Fun] = true
			}
		}
		return true
	})
	return found
}

// calls reports whether a selector is one of the named functions of a package.
func calls(selector *ast.SelectorExpr, packageName string, names ...string) bool {
	x, ok := selector.X.(*ast.Ident)
	return ok && packageName != "" && x.Name == packageName && slices.Contains(names, selector.Sel.Name)
}

// checkPackages holds the names of packages to saying something and each chapter
// to a doc.go that describes it.
func checkPackages(sources []source) (faults []string) {
	described, seen := map[string]bool{}, map[string]bool{}
	for _, s := range sources {
		if !seen[s.room] && emptyNames[path.Base(s.room)] {
			faults = append(faults, s.room+": the name of the package says nothing about what is inside")
		}
		seen[s.room] = true
		doc := s.syntax.Doc.Text()
		if path.Base(s.path) == "doc.go" && strings.HasPrefix(doc, "Package "+path.Base(s.room)+" ") {
			described[s.room] = true
		}
	}
	for _, chapter := range chapters {
		if seen[chapter] && !described[chapter] {
			faults = append(faults, chapter+": a chapter has a doc.go with its method, source and limits")
		}
	}
	return faults
}
