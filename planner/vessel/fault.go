package vessel

import (
	"fmt"
	"strings"

	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// FaultCode says what is wrong with a field.
type FaultCode string

// The faults. Each is the key of its text.
const (
	FaultMissing  FaultCode = "vessel.fault.missing"   // a dimension that the kind needs is not given
	FaultRange    FaultCode = "vessel.fault.range"     // outside what is allowed
	FaultUnknown  FaultCode = "vessel.fault.unknown"   // a word that is not known
	FaultNoHollow FaultCode = "vessel.fault.no_hollow" // walls and bottom leave no room inside
	FaultNoRoom   FaultCode = "vessel.fault.no_room"   // rim, false bottom and layer leave no room for mix
	FaultOrder    FaultCode = "vessel.fault.order"     // a ring is not above the one before
	FaultLiner    FaultCode = "vessel.fault.liner"     // the liner does not go into the pot
	FaultNested   FaultCode = "vessel.fault.nested"    // a liner within a liner
	FaultTogether FaultCode = "vessel.fault.together"  // given without the other that belongs to it
	FaultShape    FaultCode = "vessel.fault.shape"     // the stave bends in through the axis
)

// Fault is one thing that is wrong with a Spec, with its field and what is
// allowed there. Lowest and Highest are set for FaultRange, FaultNoHollow,
// FaultNoRoom and FaultLiner.
type Fault struct {
	Code    FaultCode
	Field   Field
	Index   int  // of the ring at fault, from 0; only for fields of rings
	InLiner bool // the fault is in the liner's own Spec
	Found   working.Value
	Lowest  working.Value
	Highest working.Value
}

// Path returns the place of the fault in the Spec, such as {"rings", "2",
// "diameter"} (list items count from 1) or {"liner", "height"}.
func (f Fault) Path() []string {
	var path []string
	if f.InLiner {
		path = append(path, string(FieldLiner))
	}
	list, part, nested := strings.Cut(string(f.Field), ".")
	path = append(path, list)
	if nested {
		path = append(path, fmt.Sprint(f.Index+1), part)
	}
	return path
}

// Error describes the fault for a log, in SI.
func (f Fault) Error() string {
	where := strings.Join(f.Path(), ".")
	if f.Found.Text != "" {
		return fmt.Sprintf("%s: %s: %q", where, f.Code, f.Found.Text)
	}
	return fmt.Sprintf("%s: %s: %g %s, allowed %g to %g", where, f.Code,
		f.Found.Number, f.Found.Unit, f.Lowest.Number, f.Highest.Number)
}

// Finding turns the fault into a finding at a place, the pot's.
func (f Fault) Finding(where finding.Where) finding.Finding {
	at := append(append(finding.Where(nil), where...), f.Path()...)
	return finding.Finding{
		Code: string(f.Code), Severity: finding.Error, Where: at,
		Args: []finding.Arg{
			{Name: "field", Value: working.Text("vessel.field." + string(f.Field))},
			{Name: "found", Value: f.Found},
			{Name: "lowest", Value: f.Lowest},
			{Name: "highest", Value: f.Highest},
		},
	}
}

// FaultError is the error of [New]: all that is wrong with a Spec.
type FaultError struct{ Faults []Fault }

// Error lists the faults, one a line.
func (e *FaultError) Error() string {
	lines := make([]string, len(e.Faults))
	for i, f := range e.Faults {
		lines[i] = f.Error()
	}
	return "vessel: " + strings.Join(lines, "\n")
}
