package plants

import (
	"embed"
	"fmt"
	"path"
	"strings"
	"sync"

	"fourturn/planner/working"
)

//go:embed data/*.yaml
var data embed.FS

var builtin = sync.OnceValues(readBuiltin)

// Builtin returns the plant book that comes with the program. It is read once,
// the first time it is asked for.
func Builtin() (*Book, error) { return builtin() }

func readBuiltin() (*Book, error) {
	entries, err := data.ReadDir("data")
	if err != nil {
		return nil, fmt.Errorf("plant book: %w", err)
	}
	var files []contents
	for _, e := range entries {
		name := path.Join("data", e.Name())
		text, err := data.ReadFile(name)
		if err != nil {
			return nil, fmt.Errorf("plant book: %w", err)
		}
		group := strings.TrimSuffix(e.Name(), ".yaml")
		files = append(files, readFile(name, group, text, working.Memory))
	}
	return assemble(nil, files...)
}
