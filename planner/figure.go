package planner

import "fourturn/planner/working"

// Figure is one worked-out value together with the way to its working.
type Figure struct {
	Value working.Value
	trace *func() working.Trace // a pointer tells this figure from another of the same value
}

// NewFigure returns a figure whose working is built when somebody asks for it.
// The function must give the same trace whenever it is called, from any goroutine.
func NewFigure(value working.Value, trace func() working.Trace) Figure {
	return Figure{Value: value, trace: &trace}
}

// IsZero reports whether there is no figure: what it would be worked out from is
// missing or faulty, and a finding says so.
func (f Figure) IsZero() bool { return f.trace == nil }

// Number returns the value as a number in its unit.
func (f Figure) Number() float64 { return f.Value.Number }

// Working returns how the figure was worked out. It panics on a zero Figure.
func (f Figure) Working() working.Trace {
	if f.trace == nil {
		panic("planner: working of no figure")
	}
	return (*f.trace)()
}
