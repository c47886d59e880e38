package plants

import (
	"slices"
	"strings"
)

// genusOf returns the genus of a botanical name: its first word, the × of a
// hybrid genus left out.
func genusOf(name string) string {
	for _, w := range strings.Fields(name) {
		w = strings.TrimPrefix(w, "×")
		if w != "" && w != "x" {
			return w
		}
	}
	return ""
}

// Genera returns the genera of all botanical names of the plant, each once.
func (p *Plant) Genera() []string {
	var genera []string
	for _, name := range p.Botanical {
		genus := genusOf(name)
		if genus != "" && !slices.Contains(genera, genus) {
			genera = append(genera, genus)
		}
	}
	return genera
}
