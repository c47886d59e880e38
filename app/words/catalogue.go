package words

import (
	"embed"
	"encoding/json"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"
)

// fallbackLanguage is the one that holds every key.
const fallbackLanguage = "en"

//go:embed translations/*/*.json
var files embed.FS

// catalogue holds the texts of one language by key.
type catalogue map[string]string

// written reads the catalogues inside the program once. They are part of the
// program, so that a fault in them is a programmer's.
var written = sync.OnceValue(func() map[string]catalogue {
	root, err := fs.Sub(files, "translations")
	if err != nil {
		panic("words: " + err.Error())
	}
	all, err := readCatalogues(root)
	if err != nil {
		panic("words: " + err.Error())
	}
	return all
})

// embedded holds the catalogues that are whole. One that is still being translated is
// not offered: a page half in one language and half in another helps nobody.
var embedded = sync.OnceValue(func() map[string]catalogue { return whole(written()) })

// whole returns the catalogues that have a text for every key of English.
func whole(all map[string]catalogue) map[string]catalogue {
	complete := map[string]catalogue{}
	for language, texts := range all {
		if missing(all[fallbackLanguage], texts) == 0 {
			complete[language] = texts
		}
	}
	return complete
}

// missing counts the keys of English without a text. Plural forms differ between
// languages, and count as one.
func missing(english, texts catalogue) int {
	has := map[string]bool{}
	for key := range texts {
		name, _, _ := strings.Cut(key, "#")
		has[name] = true
	}
	lacks := map[string]bool{}
	for key := range english {
		if name, _, _ := strings.Cut(key, "#"); !has[name] {
			lacks[name] = true
		}
	}
	return len(lacks)
}

// Languages returns the languages that have a whole catalogue, in alphabetical order.
func Languages() []string {
	var names []string
	for name := range embedded() {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// readCatalogues reads <language>/<area>.json and joins the areas of each language.
func readCatalogues(root fs.FS) (map[string]catalogue, error) {
	names, err := fs.Glob(root, "*/*.json")
	if err != nil {
		return nil, err
	}
	all := map[string]catalogue{}
	for _, name := range names {
		texts, err := readArea(root, name)
		if err != nil {
			return nil, err
		}
		language := path.Dir(name)
		if all[language] == nil {
			all[language] = catalogue{}
		}
		for key, text := range texts {
			all[language][key] = text
		}
	}
	return all, nil
}

// readArea reads one file and holds it to its area, so that no two files of a
// language can carry the same key.
func readArea(root fs.FS, name string) (map[string]string, error) {
	data, err := fs.ReadFile(root, name)
	if err != nil {
		return nil, err
	}
	texts := map[string]string{}
	if err := json.Unmarshal(data, &texts); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	area := strings.TrimSuffix(path.Base(name), ".json")
	for key := range texts {
		if !strings.HasPrefix(key, area+".") {
			return nil, fmt.Errorf("%s: key %q does not begin with %q", name, key, area+".")
		}
	}
	return texts, nil
}
