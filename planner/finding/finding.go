// Package finding holds what the planner has to say about a plan: a code, a
// severity, the place and the numbers. The words are added at the surface.
package finding

import "fourturn/planner/working"

// Severity orders findings.
type Severity int

// The severities, mildest first.
const (
	Note    Severity = iota // worth knowing
	Caution                 // somebody or something can be hurt; the words of caution are shown
	Warning                 // the plan will probably disappoint
	Error                   // the plan cannot be worked out here
)

// String returns the severity as the command line prints it.
func (s Severity) String() string {
	switch s {
	case Note:
		return "note"
	case Caution:
		return "caution"
	case Warning:
		return "warning"
	case Error:
		return "error"
	}
	panic("finding: unknown severity")
}

// Where names the part of the plan that a finding is about. Each part is a path
// in the plan as its file shows it, such as {"pots", "trough", "length"}; list
// items are named by their id.
type Where []string

// Arg is one number, date or word that the message needs.
type Arg struct {
	Name  string
	Value working.Value
}

// Finding is one remark. Code is a key such as "nutrition.spent_early"; its text
// names the Args.
type Finding struct {
	Code     string
	Severity Severity
	Where    Where
	Args     []Arg
}
