package words

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
)

// usage is what the sources say about keys.
type usage struct {
	keys     map[string]string // a whole key and the first place that mentions it
	prefixes map[string]string // the head of a key that is put together, such as "words.status."
}

var (
	wholeKey = regexp.MustCompile(`^[a-z][a-z0-9_]*(\.[a-z0-9_]+)+$`)
	// A head ends in a point, or goes on with a verb of fmt.
	headOfKey = regexp.MustCompile(`^([a-z][a-z0-9_]*\.(?:[a-z0-9_]+\.)*[a-z0-9_]*)(?:%[a-z].*)?$`)
	fileName  = regexp.MustCompile(`\.(csv|json|ya?ml|png|svg|txt|txtar|md|go|pdf|ics|xlsx|ttf|toml|test)$`)
)

// keysInSources reads every Go file but tests and collects the string literals
// shaped like keys of the given areas.
func keysInSources(root fs.FS, areas map[string]bool) (usage, error) {
	found := usage{keys: map[string]string{}, prefixes: map[string]string{}}
	err := fs.WalkDir(root, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			if base := path.Base(name); base == "testdata" || len(base) > 1 && strings.HasPrefix(base, ".") {
				return fs.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return nil
		}
		source, err := fs.ReadFile(root, name)
		if err != nil {
			return err
		}
		return found.addFile(name, source, areas)
	})
	return found, err
}

func (u usage) addFile(name string, source []byte, areas map[string]bool) error {
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, name, source, parser.SkipObjectResolution)
	if err != nil {
		return err
	}
	ast.Inspect(file, func(n ast.Node) bool {
		if _, ok := n.(*ast.ImportSpec); ok {
			return false
		}
		literal, ok := n.(*ast.BasicLit)
		if !ok || literal.Kind != token.STRING {
			return true
		}
		text, err := strconv.Unquote(literal.Value)
		if err != nil {
			return true
		}
		area, _, _ := strings.Cut(text, ".")
		if !areas[area] || fileName.MatchString(text) {
			return true
		}
		at := files.Position(literal.Pos()).String()
		if strings.HasSuffix(text, "_") && wholeKey.MatchString(text) {
			u.prefixes[text] = at // such as "climate.reason_" + why
		} else if wholeKey.MatchString(text) {
			u.keys[text] = at
		} else if m := headOfKey.FindStringSubmatch(text); m != nil && (strings.HasSuffix(text, ".") || strings.Contains(text, "%")) {
			u.prefixes[m[1]] = at
		}
		return true
	})
	return nil
}

func (u usage) mentions(key string) bool {
	if _, ok := u.keys[key]; ok {
		return true
	}
	for prefix := range u.prefixes {
		if strings.HasPrefix(key, prefix) {
			return true
		}
	}
	return false
}

// base takes the plural form off a key.
func base(key string) string {
	key, _, _ = strings.Cut(key, "#")
	return key
}

// faultsOfUse lists the keys in the sources without a text and the texts that no
// source mentions.
func faultsOfUse(texts catalogue, used usage) (faults []string) {
	have := map[string]bool{}
	for key := range texts {
		have[base(key)] = true
	}
	for key, at := range used.keys {
		_, isHead := used.prefixes[key+"."]
		if !have[key] && !isHead {
			faults = append(faults, at+": key "+key+" has no text")
		}
	}
	for key := range have {
		if !used.mentions(key) {
			faults = append(faults, "the text of "+key+" is used nowhere")
		}
	}
	for prefix, at := range used.prefixes {
		if !slices.ContainsFunc(keysOf(texts), func(key string) bool { return strings.HasPrefix(key, prefix) }) {
			faults = append(faults, at+": no key begins with "+prefix)
		}
	}
	slices.Sort(faults)
	return faults
}

func keysOf(texts catalogue) (keys []string) {
	for key := range texts {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	return keys
}

// faultsOfTranslation lists what a language lacks, has too much, or says with
// other placeholders than English, and the plural forms that are missing.
func faultsOfTranslation(all map[string]catalogue, language string) (faults []string) {
	english, own := formsByKey(all[fallbackLanguage]), formsByKey(all[language])
	for key, forms := range english {
		if own[key] == nil {
			faults = append(faults, language+" lacks "+key)
			continue
		}
		// One form, such as "a single pot", may leave the number out.
		if diff := cmp.Diff(placeholdersOf(forms), placeholdersOf(own[key])); diff != "" {
			faults = append(faults, language+" has other placeholders for "+key+" than English: "+diff)
		}
	}
	w := newWords(all, language)
	for key, forms := range own {
		if english[key] == nil {
			faults = append(faults, language+" has "+key+", which English lacks")
		}
		_, plain := forms[""]
		if plain && len(forms) > 1 {
			faults = append(faults, language+" has "+key+" with and without plural forms")
		}
		for _, category := range w.categories() {
			if _, ok := forms[category]; !ok && !plain {
				faults = append(faults, language+" lacks "+key+"#"+category)
			}
		}
	}
	slices.Sort(faults)
	return faults
}

// formsByKey groups texts by key and plural form; a key without forms has the form "".
func formsByKey(texts catalogue) map[string]map[string]string {
	keys := map[string]map[string]string{}
	for key, text := range texts {
		name, form, _ := strings.Cut(key, "#")
		if keys[name] == nil {
			keys[name] = map[string]string{}
		}
		keys[name][form] = text
	}
	return keys
}

func placeholdersOf(forms map[string]string) []string {
	var all strings.Builder
	for _, text := range forms {
		all.WriteString(text)
	}
	return placeholders(all.String())
}

// categories returns the plural categories that counts to a thousand take in the
// language.
func (w *Words) categories() (names []string) {
	for n := range 1000 {
		names = append(names, w.category(n), w.category(float64(n)+0.5))
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// placeholders returns the names in a text, sorted, each once.
func placeholders(text string) []string {
	var names []string
	fill(text, func(name string) (string, bool) {
		names = append(names, name)
		return "", true
	})
	slices.Sort(names)
	return slices.Compact(names)
}

func TestEveryKeyHasATextAndEveryTextAUse(t *testing.T) {
	texts := embedded()[fallbackLanguage]
	areas := map[string]bool{}
	for key := range texts {
		area, _, _ := strings.Cut(key, ".")
		areas[area] = true
	}
	used, err := keysInSources(os.DirFS("../.."), areas)
	if err != nil {
		t.Fatal(err)
	}
	if len(used.keys) < 50 {
		t.Errorf("only %d keys were found in the sources", len(used.keys))
	}
	for _, fault := range faultsOfUse(texts, used) {
		t.Error(fault)
	}
}

// finished are the languages that must have a text for every key. The others are being
// translated and are not offered yet.
var finished = []string{"en"}

func TestTranslationsAgreeWithEnglish(t *testing.T) {
	for language, texts := range written() {
		done := slices.Contains(finished, language)
		for _, fault := range faultsOfTranslation(written(), language) {
			if done || !strings.HasPrefix(fault, language+" lacks ") || strings.Contains(fault, "#") {
				t.Error(fault)
			}
		}
		if lacks := missing(written()[fallbackLanguage], texts); lacks > 0 {
			t.Logf("%s lacks %d texts", language, lacks)
		}
	}
	for _, language := range finished {
		if !slices.Contains(Languages(), language) {
			t.Errorf("%s is not offered", language)
		}
	}
}

func TestLanguagesInWorkAreNotOffered(t *testing.T) {
	all := map[string]catalogue{
		"en": {"a.b": "full", "a.c#one": "one", "a.c#other": "many"},
		"de": {"a.b": "voll", "a.c#other": "viele"},
		"es": {"a.b": "lleno"},
	}
	offered := whole(all)
	if len(offered) != 2 || offered["es"] != nil || offered["de"] == nil {
		t.Errorf("offered: %v", offered)
	}
}

func TestFaultsOfUseAreFound(t *testing.T) {
	sources := fstest.MapFS{
		"app/x.go": {Data: []byte(`package x
			import _ "mix.import"
			var _ = w.T("mix.fill") + w.T("mix.gone") + w.T("mix.kind." + k) + w.T("mix.lost." + k)
			var _ = fmt.Sprintf("mix.%s_bag", size) // any key may be meant
			var _ = "mix.csv" + "other.key" + "mix. A sentence"`)},
		"app/x_test.go":     {Data: []byte(`package x; var _ = "mix.test"`)},
		"app/testdata/y.go": {Data: []byte(`package y; var _ = "mix.data"`)},
	}
	used, err := keysInSources(sources, map[string]bool{"mix": true})
	if err != nil {
		t.Fatal(err)
	}
	delete(used.prefixes, "mix.") // found, and would hide the next check
	texts := catalogue{"mix.fill": "fill", "mix.kind.bark": "bark", "mix.bags#one": "bag", "mix.bags#other": "bags"}
	want := []string{
		"app/x.go:3:34: key mix.gone has no text",
		"app/x.go:3:75: no key begins with mix.lost.",
		"the text of mix.bags is used nowhere",
	}
	if diff := cmp.Diff(want, faultsOfUse(texts, used)); diff != "" {
		t.Error(diff)
	}
}

func TestFaultsOfTranslationAreFound(t *testing.T) {
	all := map[string]catalogue{
		"en": {"a.b": "{pot} is full", "a.c#one": "one pot", "a.c#other": "{count} pots", "a.d": "done"},
		"de": {"a.b": "{topf} ist voll", "a.c#other": "{count} Töpfe", "a.e": "zu viel"},
	}
	got := faultsOfTranslation(all, "de")
	for _, want := range []string{"other placeholders for a.b", "de lacks a.c#one", "de lacks a.d", "de has a.e, which English lacks"} {
		if !slices.ContainsFunc(got, func(fault string) bool { return strings.Contains(fault, want) }) {
			t.Errorf("%q was not found in %q", want, got)
		}
	}
	if faults := faultsOfTranslation(all, "en"); len(faults) != 0 {
		t.Errorf("sound texts have faults: %q", faults)
	}
}

// TestNoKeyStandsTwiceInAFile reads the files as a stream, since decoding keeps
// only the last of two equal keys.
func TestNoKeyStandsTwiceInAFile(t *testing.T) {
	quoted := regexp.MustCompile(`(?m)^\s*("(?:[^"\\]|\\.)*")\s*:`)
	names, err := fs.Glob(files, "translations/*/*.json")
	if err != nil || len(names) == 0 {
		t.Fatal("no catalogues", err)
	}
	for _, name := range names {
		data, err := fs.ReadFile(files, name)
		if err != nil {
			t.Fatal(err)
		}
		seen := map[string]bool{}
		for _, m := range quoted.FindAllSubmatch(data, -1) {
			if key := string(m[1]); seen[key] {
				t.Errorf("%s: key %s stands twice", name, key)
			}
			seen[string(m[1])] = true
		}
		texts, err := readArea(files, name)
		if err != nil {
			t.Fatal(err)
		}
		if len(seen) != len(texts) {
			t.Errorf("%s: write one key a line; %d keys on %d lines", name, len(texts), len(seen))
		}
	}
}

func TestFaultyCataloguesAreRefused(t *testing.T) {
	for name, data := range map[string]string{
		"no JSON":      `{"mix.fill": `,
		"nested":       `{"mix.fill": {"one": "fill"}}`,
		"foreign area": `{"water.use": "use"}`,
	} {
		if _, err := readCatalogues(fstest.MapFS{"en/mix.json": {Data: []byte(data)}}); err == nil {
			t.Errorf("%s was read", name)
		}
	}
}
