package planfile

import (
	"fmt"
	"slices"
	"sort"
	"strings"
	"unicode/utf8"

	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// Problem is one thing that is wrong with a plan or its file: a finding with the
// place in the file. Line and Column count from 1; both are 0 for a plan that
// was not read from a file.
type Problem struct {
	finding.Finding
	Line   int
	Column int
}

// Error says the problem in one English line, with its place.
func (p Problem) Error() string {
	var b strings.Builder
	if p.Line > 0 {
		fmt.Fprintf(&b, "line %d, column %d: ", p.Line, p.Column)
	}
	if len(p.Where) > 0 {
		b.WriteString(strings.Join(p.Where, "."))
		b.WriteString(": ")
	}
	b.WriteString(p.Message())
	return b.String()
}

// Message says the problem in English without its place.
func (p Problem) Message() string { return fill(texts[p.Code], p.Args) }

// fill puts the arguments into the {named} places of a text.
func fill(text string, args []finding.Arg) string {
	pairs := make([]string, 0, 2*len(args))
	for _, a := range args {
		pairs = append(pairs, "{"+a.Name+"}", a.Value.Text)
	}
	return strings.NewReplacer(pairs...).Replace(text)
}

// Problems are all that is wrong with a plan file, in the order of the file. It
// is the error of [Decode] and [Check].
type Problems struct {
	List []Problem
	More int // further problems that were counted but not kept
}

// Error lists every problem, one a line.
func (p *Problems) Error() string {
	lines := make([]string, 0, len(p.List)+1)
	for _, one := range p.List {
		lines = append(lines, one.Error())
	}
	if p.More > 0 {
		lines = append(lines, fmt.Sprintf("and %d more", p.More))
	}
	return strings.Join(lines, "\n")
}

func (p *Problems) add(one Problem) {
	if len(p.List) >= MaxProblems {
		p.More++
		return
	}
	p.List = append(p.List, one)
}

// orNil returns p as an error, or nil where there is nothing wrong.
func (p *Problems) orNil() error {
	if p == nil || len(p.List) == 0 {
		return nil
	}
	sort.SliceStable(p.List, func(i, j int) bool {
		a, b := p.List[i], p.List[j]
		if a.Line != b.Line {
			return a.Line < b.Line
		}
		return a.Column < b.Column
	})
	return p
}

// problem makes a problem from a code and pairs of argument names and words.
func problem(code string, at *place, args ...string) Problem {
	if _, ok := texts[code]; !ok {
		panic("planfile: no text for " + code)
	}
	p := Problem{Finding: finding.Finding{Code: code, Severity: finding.Error, Where: at.where()}}
	for i := 0; i+1 < len(args); i += 2 {
		word := args[i+1]
		if args[i] != "words" { // those are ours; the rest may be as long as a file
			word = shortened(word)
		}
		p.Args = append(p.Args, finding.Arg{Name: args[i], Value: working.Text(word)})
	}
	return p
}

// longestArgument is how much of a text from a file a message repeats.
const longestArgument = 80

func shortened(s string) string {
	if !longText(s, longestArgument) {
		return s
	}
	runes := []rune(s[:min(len(s), longestArgument*utf8.UTFMax)])
	return string(runes[:longestArgument]) + "…"
}

// place is a path in the plan, built from its end so that walking down a large
// plan costs nothing until a problem needs the path.
type place struct {
	above *place
	key   string
	item  bool // an item of a table or list
}

func (p *place) in(key string) *place { return &place{above: p, key: key} }

func (p *place) itemIn(key string) *place { return &place{above: p, key: key, item: true} }

// steps returns the way from the top of the plan.
func (p *place) steps() []Step {
	var steps []Step
	for at := p; at != nil; at = at.above {
		steps = append(steps, Step{at.key, at.item})
	}
	slices.Reverse(steps)
	return steps
}

func (p *place) where() finding.Where {
	depth := 0
	for at := p; at != nil; at = at.above {
		depth++
	}
	where := make(finding.Where, depth)
	for at := p; at != nil; at = at.above {
		depth--
		where[depth] = at.key
	}
	return where
}
