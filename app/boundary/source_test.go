package boundary

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"strconv"
	"strings"
)

// module is the path of the module in go.mod.
const module = "fourturn"

// source is one Go file.
type source struct {
	path   string // from the top of the project, such as "app/view/year/bars.go"
	room   string // the folder, such as "app/view/year"
	test   bool
	syntax *ast.File
	tokens *token.FileSet
}

// built names what is made by a build and not part of the sources.
var built = map[string]bool{".git": true, "dist": true, "out": true, "gallery": true}

// readSources parses every Go file of the tree but those in testdata folders,
// which Go itself does not build.
func readSources(root fs.FS) ([]source, error) {
	var all []source
	err := fs.WalkDir(root, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			if built[name] || path.Base(name) == "testdata" {
				return fs.SkipDir
			}
			return nil
		}
		if path.Ext(name) != ".go" {
			return nil
		}
		text, err := fs.ReadFile(root, name)
		if err != nil {
			return err
		}
		tokens := token.NewFileSet()
		syntax, err := parser.ParseFile(tokens, name, text, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		all = append(all, source{
			path: name, room: path.Dir(name), test: strings.HasSuffix(name, "_test.go"),
			syntax: syntax, tokens: tokens,
		})
		return nil
	})
	return all, err
}

// fault names a place and the rule that it breaks.
func (s source) fault(at token.Pos, format string, args ...any) string {
	return fmt.Sprintf("%s:%d: %s", s.path, s.tokens.Position(at).Line, fmt.Sprintf(format, args...))
}

// imported is one import of a file.
type imported struct {
	path string
	at   token.Pos
}

func (s source) imports() []imported {
	var all []imported
	for _, spec := range s.syntax.Imports {
		name, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			panic("boundary: " + err.Error()) // the parser has read it already
		}
		all = append(all, imported{name, spec.Pos()})
	}
	return all
}

// localName returns the name by which a file calls an imported package, or "".
func (s source) localName(packagePath string) string {
	for _, spec := range s.syntax.Imports {
		if spec.Path.Value != strconv.Quote(packagePath) {
			continue
		}
		if spec.Name != nil {
			return spec.Name.Name
		}
		return path.Base(packagePath)
	}
	return ""
}

// within reports whether a room is the given one or lies in it.
func within(room, outer string) bool {
	return room == outer || strings.HasPrefix(room, outer+"/")
}

// withinAny reports whether a room lies in one of several.
func withinAny(room string, outers []string) bool {
	for _, outer := range outers {
		if within(room, outer) {
			return true
		}
	}
	return false
}
