package words

import (
	"strings"

	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Finding writes what the planner found, with its numbers in the person's units.
// An argument named count chooses the plural form.
func (w *Words) Finding(f finding.Finding, s quantity.System) string {
	args := A{}
	for _, arg := range f.Args {
		if arg.Name == "count" && arg.Value.Unit == working.None && arg.Value.Text == "" {
			args["count"] = arg.Value.Number
			continue
		}
		args[arg.Name] = w.Named(arg.Name, arg.Value, s)
	}
	return w.T(f.Code, args)
}

// Severity writes the severity of a finding: "caution".
func (w *Words) Severity(s finding.Severity) string { return w.T("words.severity." + s.String()) }

// Place writes where in the plan a finding is: "pots › trough › length".
func (w *Words) Place(at finding.Where) string { return strings.Join(at, " › ") }
