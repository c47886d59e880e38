package plants_test

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fourturn/plants"
)

func texts(t *testing.T) map[string]string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "app", "words", "translations", "en", "plants.json"))
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]string{}
	if err := json.Unmarshal(data, &all); err != nil {
		t.Fatal(err)
	}
	return all
}

type keyed interface{ Key() string }

func keysOf[T keyed](words []T) []string {
	keys := make([]string, len(words))
	for i, w := range words {
		keys[i] = w.Key()
	}
	return keys
}

func TestEveryWordHasAText(t *testing.T) {
	keys := slices.Concat(
		keysOf(plants.Kinds[:]), keysOf(plants.Seasons[:]), keysOf(plants.Roles[:]), keysOf(plants.Lights[:]),
		keysOf(plants.Levels[:]), keysOf(plants.Feeders[:]), keysOf(plants.FrostClasses[:]), keysOf(plants.TemperatureClasses[:]),
		keysOf(plants.Colours[:]), keysOf(plants.Textures[:]), keysOf(plants.Scents[:]), keysOf(plants.Pollinators[:]),
		keysOf(plants.EdibleParts[:]), keysOf(plants.Listings[:]), keysOf(plants.Creatures[:]), keysOf(plants.Hazards[:]),
		keysOf(plants.Habits[:]), keysOf(plants.LeafForms[:]), keysOf(plants.LeafEdges[:]), keysOf(plants.LeafPatterns[:]),
		keysOf(plants.FlowerForms[:]), keysOf(plants.Arrangements[:]), keysOf(plants.Eyes[:]), keysOf(plants.Ways[:]),
		keysOf(plants.Scopes[:]), keysOf(plants.Clearings[:]), keysOf(plants.WaitReasons[:]), keysOf(plants.Grades[:]),
		keysOf(plants.Orders[:]), keysOf(plants.Fields()),
	)
	for _, h := range plants.Hazards {
		keys = append(keys, h.HandlingKey())
	}
	have := texts(t)
	for _, key := range keys {
		if have[key] == "" {
			t.Errorf("no text for %s", key)
		}
	}
	for key := range have {
		part := strings.Split(key, ".")[1]
		if !slices.Contains(keys, key) && !slices.Contains([]string{"fault", "caution", "lily_and_cats", "invasive", "wait", "wait_years", "wait_usual", "wait_stays", "wait_note_healthy", "wait_note_new_mix"}, part) {
			t.Errorf("%s is the text of no word", key)
		}
	}
}

var placeholder = regexp.MustCompile(`\{(\w+)\}`)

// TestEveryFaultHasAText reads the codes and the names of their arguments out of
// the sources: each code has a text that asks for no other arguments.
func TestEveryFaultHasAText(t *testing.T) {
	have := texts(t)
	codes := faultCodes(t)
	for _, measure := range []string{"empty", "not_a_number", "unknown_unit", "no_unit", "not_finite", "ambiguous"} {
		codes["measure_"+measure] = []string{"text", "unit"}
	}
	if len(codes) < 45 {
		t.Errorf("only %d codes were found in the sources", len(codes))
	}
	for code, args := range codes {
		text, ok := have["plants.fault."+code]
		if !ok {
			t.Errorf("no text for the fault %s", code)
		}
		for _, m := range placeholder.FindAllStringSubmatch(text, -1) {
			if !slices.Contains(args, m[1]) {
				t.Errorf("the text of %s asks for %s, which it does not get: %v", code, m[1], args)
			}
		}
	}
	for key := range have {
		code, isFault := strings.CutPrefix(key, "plants.fault.")
		if _, known := codes[code]; isFault && !known {
			t.Errorf("%s is a text for no fault", key)
		}
	}
}

func faultCodes(t *testing.T) map[string][]string {
	t.Helper()
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	codes := map[string][]string{}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				if f, ok := n.Fun.(*ast.SelectorExpr); ok && f.Sel.Name == "fault" {
					collect(codes, n.Args)
				}
			case *ast.CompositeLit:
				switch f := n.Type.(type) {
				case *ast.Ident:
					if f.Name == "broken" {
						collect(codes, n.Elts)
					}
				case *ast.ArrayType:
					if of, ok := f.Elt.(*ast.Ident); ok && of.Name == "broken" {
						for _, e := range n.Elts {
							collect(codes, e.(*ast.CompositeLit).Elts)
						}
					}
				}
			}
			return true
		})
	}
	return codes
}

// collect notes the first text among the arguments as a code, and the first texts
// of the calls among them as names of its arguments.
func collect(codes map[string][]string, args []ast.Expr) {
	code := ""
	names := []string{}
	for _, arg := range args {
		if s := literal(arg); s != "" && code == "" {
			code = s
		}
		ast.Inspect(arg, func(n ast.Node) bool {
			if call, ok := n.(*ast.CallExpr); ok && len(call.Args) > 0 {
				if s := literal(call.Args[0]); s != "" {
					names = append(names, s)
				}
			}
			return true
		})
	}
	if code != "" && !strings.HasSuffix(code, "_") {
		codes[code] = append(codes[code], names...)
	}
}

func literal(e ast.Expr) string {
	lit, ok := e.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return ""
	}
	s, err := strconv.Unquote(lit.Value)
	if err != nil {
		return ""
	}
	return s
}
