package plants

import (
	"regexp"
	"strings"

	"gopkg.in/yaml.v3"
)

// idPattern is what an id may look like: it stands in plan files and must need
// no quotes there.
var idPattern = regexp.MustCompile(`^[a-z][a-z0-9]*([-_][a-z0-9]+)*$`)

const maxID = 60

var idCodec = codec[string]{
	read: func(r *reader, n *yaml.Node) (string, bool) {
		text, ok := r.text(n)
		if !ok {
			return "", false
		}
		if len(text) > maxID || !idPattern.MatchString(text) {
			r.fault(n, "not_an_id", word("text", text))
			return "", false
		}
		return text, true
	},
	write: scalar,
}

// NewID makes an id from a name: lower case, accents folded, words joined by
// hyphens. It returns "" for a name without letters.
func NewID(name string) string {
	words := strings.FieldsFunc(fold(name), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9')
	})
	id := strings.TrimLeft(strings.Join(words, "-"), "0123456789-")
	if len(id) > maxID {
		id = strings.TrimRight(id[:maxID], "-")
	}
	return id
}
