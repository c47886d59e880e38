package planfile

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// parse turns a file into nodes. It refuses what a plan never needs and a
// hostile file would misuse, before and after the YAML library sees it.
func parse(data []byte) (*yaml.Node, error) {
	if p, bad := refuseBytes(data); bad {
		return nil, &Problems{List: []Problem{p}}
	}
	var document yaml.Node
	decoder := yaml.NewDecoder(bytes.NewReader(data))
	if err := guarded(func() error { return decoder.Decode(&document) }); err != nil {
		if err.Error() == "EOF" {
			return nil, fileProblem("planfile.no_plan", 1, 1)
		}
		return nil, syntaxProblem(data, err)
	}
	var second yaml.Node
	if err := guarded(func() error { return decoder.Decode(&second) }); err == nil {
		return nil, fileProblem("planfile.two_documents", second.Line, second.Column)
	} else if err.Error() != "EOF" {
		return nil, syntaxProblem(data, err)
	}
	root := document.Content[0]
	if root.Kind != yaml.MappingNode {
		return nil, fileProblem("planfile.no_plan", root.Line, root.Column)
	}
	problems := &Problems{}
	refuseNodes(problems, nil, root, 0)
	if err := problems.orNil(); err != nil {
		return nil, err
	}
	return root, nil
}

// guarded turns a panic of the YAML library into an error: a damaged file must
// never take the program down.
func guarded(decode func() error) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("yaml: %v", r)
		}
	}()
	return decode()
}

func fileProblem(code string, line, column int, args ...string) error {
	p := problem(code, nil, args...)
	p.Line, p.Column = line, column
	return &Problems{List: []Problem{p}}
}

// refuseBytes looks at what can be seen without parsing: size, encoding and a
// bound on the number of nodes and the depth of brackets.
func refuseBytes(data []byte) (Problem, bool) {
	if len(data) > MaxBytes {
		return problem("planfile.too_big", nil, "limit", strconv.Itoa(MaxBytes>>20)), true
	}
	if at := invalidByte(data); at >= 0 {
		p := problem("planfile.not_utf8", nil)
		p.Line = 1 + bytes.Count(data[:at], []byte{'\n'})
		p.Column = 1 + utf8.RuneCount(data[bytes.LastIndexByte(data[:at], '\n')+1:at])
		return p, true
	}
	if atMostNodes(data) > MaxNodes {
		return problem("planfile.too_many_nodes", nil), true
	}
	return Problem{}, false
}

// atMostNodes bounds the number of nodes and comments of a text without parsing
// it: each begins after an indicator of YAML, a colon stands between two.
func atMostNodes(data []byte) int {
	count := 1
	for i, b := range data {
		switch b {
		case ',', '[', '{', '#':
			count++
		case '%': // a directive
			if i == 0 || data[i-1] == '\n' || data[i-1] == '\r' {
				count++
			}
		case '-', '?':
			if i+1 == len(data) || data[i+1] <= ' ' {
				count++
			}
		case ':':
			// In brackets a colon may stand right after a quote or before a bracket.
			if i+1 == len(data) || data[i+1] <= ' ' || data[i-min(i, 1)] == '"' || data[i-min(i, 1)] == '\'' || bytes.IndexByte([]byte(",[]{}"), data[i+1]) >= 0 {
				count += 2
			}
		}
	}
	return count
}

// invalidByte returns the index of the first byte that no plan file may hold:
// not UTF-8, or a control character. -1 means none.
func invalidByte(data []byte) int {
	for i := 0; i < len(data); {
		b := data[i]
		if b < utf8.RuneSelf {
			if b < ' ' && b != '\n' && b != '\r' && b != '\t' || b == 0x7F {
				return i
			}
			i++
			continue
		}
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return -1
}

var yamlLine = regexp.MustCompile(`line (\d+): (.*)`)

// parserSays matches the messages of the library's parser, which count lines from
// 0, unlike those of its scanner (yaml.v3 v3.0.1, decode.go, parser.fail).
var parserSays = regexp.MustCompile(`^(did not find expected (<|node content|'-' indicator|key|',')|found (duplicate %YAML|undefined tag|incompatible YAML))`)

// syntaxProblem names the place of a YAML error. The library gives the line; the
// column is that of the first character on it.
func syntaxProblem(data []byte, err error) error {
	line, said := 1, strings.TrimPrefix(err.Error(), "yaml: ")
	if m := yamlLine.FindStringSubmatch(said); m != nil {
		line, _ = strconv.Atoi(m[1])
		said = m[2]
		if parserSays.MatchString(said) {
			line++
		}
	}
	lines := splitLines(data)
	line = max(1, min(line, len(lines)))
	column := 1
	if len(lines) > 0 {
		text := lines[line-1].text(data)
		column += len(text) - len(strings.TrimLeft(text, " \t"))
	}
	return fileProblem("planfile.not_yaml", line, column, "said", said)
}

// refuseNodes refuses depth, aliases, anchors and tags.
func refuseNodes(problems *Problems, at *place, n *yaml.Node, depth int) {
	refuse := func(code string) {
		p := problem(code, at)
		p.Line, p.Column = n.Line, n.Column
		problems.add(p)
	}
	switch {
	case depth > MaxDepth:
		refuse("planfile.too_deep")
		return
	case n.Kind == yaml.AliasNode, n.Anchor != "":
		refuse("planfile.alias")
		return
	case n.Style&yaml.TaggedStyle != 0:
		refuse("planfile.tag")
	}
	for i, c := range n.Content {
		inside := at
		if n.Kind == yaml.MappingNode {
			inside = at.in(n.Content[i-i%2].Value)
		}
		refuseNodes(problems, inside, c, depth+1)
	}
}
