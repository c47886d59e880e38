package plants

import (
	"fmt"
	"strconv"
	"strings"

	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// Fault is one thing wrong with a book. Line and Column count from 1 and are 0
// for a plant that did not come from a file.
type Fault struct {
	File         string
	Line, Column int
	Plant        string // id, or ""
	Field        Field  // or ""
	Code         string // key of the message, such as "plants.fault.unknown_key"
	Args         []finding.Arg
}

// Faults is what is wrong with a book: the error that reading one returns.
type Faults []Fault

// maxFaults bounds a list of faults: a file with more is not a book.
const maxFaults = 200

// Error writes the place and the code of the fault for a log; the words for a
// person are added at the surface.
func (f Fault) Error() string {
	var b strings.Builder
	if f.File != "" {
		b.WriteString(f.File + ":")
		if f.Line > 0 {
			fmt.Fprintf(&b, "%d:%d:", f.Line, f.Column)
		}
		b.WriteString(" ")
	}
	if f.Plant != "" {
		b.WriteString(f.Plant + ": ")
	}
	if f.Field != "" {
		b.WriteString(string(f.Field) + ": ")
	}
	b.WriteString(strings.ReplaceAll(strings.TrimPrefix(f.Code, "plants.fault."), "_", " "))
	for _, arg := range f.Args {
		b.WriteString(" " + arg.Name + "=" + strconv.Quote(argText(arg.Value)))
	}
	return b.String()
}

func argText(v working.Value) string {
	if v.Text != "" || v.Unit == working.None && v.Number == 0 {
		return v.Text
	}
	return strconv.FormatFloat(v.Number, 'g', -1, 64) + string(v.Unit)
}

// Error writes the faults one to a line, the first twenty of them.
func (f Faults) Error() string {
	var b strings.Builder
	for i, fault := range f {
		if i == 20 {
			fmt.Fprintf(&b, "\nand %d more", len(f)-i)
			break
		}
		if i > 0 {
			b.WriteString("\n")
		}
		b.WriteString(fault.Error())
	}
	return b.String()
}

// Unwrap returns the single faults, for errors.As.
func (f Faults) Unwrap() []error {
	errs := make([]error, len(f))
	for i := range f {
		errs[i] = f[i]
	}
	return errs
}

// Finding returns the fault as a finding, its place as file, line:column, plant
// and field.
func (f Fault) Finding() finding.Finding {
	var where finding.Where
	if f.File != "" {
		where = append(where, f.File)
	}
	if f.Line > 0 {
		where = append(where, fmt.Sprintf("%d:%d", f.Line, f.Column))
	}
	if f.Plant != "" {
		where = append(where, f.Plant)
	}
	if f.Field != "" {
		where = append(where, string(f.Field))
	}
	return finding.Finding{Code: f.Code, Severity: finding.Error, Where: where, Args: f.Args}
}

func word(name, text string) finding.Arg {
	return finding.Arg{Name: name, Value: working.Text(text)}
}

func number(name string, x float64, unit working.Unit) finding.Arg {
	return finding.Arg{Name: name, Value: working.Number(x, unit)}
}
