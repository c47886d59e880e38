package words

import (
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// LineKind says what one line of a working shows.
type LineKind int

// The lines of a working, in the order in which they come.
const (
	FigureLine  LineKind = iota // the figure: Text is its name, Value its value
	FormulaLine                 // Text is the formula, Source that of the formula
	InputLine                   // Symbol, Text, Value and Source of one input
	NoteLine                    // Text is a remark
)

// Line is one line of a working, ready to be shown or printed.
type Line struct {
	Kind   LineKind
	Depth  int    // 0 for the figure itself; an input's own working is one deeper
	Symbol string // as it stands in the formula
	Text   string
	Value  string
	Source string // how far the value or formula can be trusted, and where it is from
	Soft   bool   // the value is not from a checked source
}

// Trace writes the working behind a figure, the working of its inputs included.
func (w *Words) Trace(t working.Trace, s quantity.System) []Line {
	lines := []Line{{
		Kind:  FigureLine,
		Text:  w.T(t.Name),
		Value: w.Named(t.Name, t.Result, s),
		Soft:  t.Soft(),
	}}
	return w.traceBody(lines, &t, s, 0)
}

// traceBody appends all of a working but its figure, which the caller has shown.
func (w *Words) traceBody(lines []Line, t *working.Trace, s quantity.System, depth int) []Line {
	if t.Formula != "" {
		lines = append(lines, Line{
			Kind: FormulaLine, Depth: depth,
			Text: t.Formula, Source: w.Source(t.Source), Soft: t.Source.Soft(),
		})
	}
	for _, in := range t.Inputs {
		line := Line{
			Kind: InputLine, Depth: depth,
			Symbol: in.Symbol, Text: w.T(in.Name), Value: w.Named(in.Name, in.Value, s),
			Source: w.Source(in.Source), Soft: in.Source.Soft(),
		}
		if in.From != nil {
			line.Soft = in.From.Soft() || in.Source.Status != "" && in.Source.Soft()
		}
		lines = append(lines, line)
		if in.From != nil {
			lines = w.traceBody(lines, in.From, s, depth+1)
		}
	}
	for _, note := range t.Notes {
		lines = append(lines, Line{Kind: NoteLine, Depth: depth, Text: w.T(note)})
	}
	return lines
}

// Source writes how far a value can be trusted and where it is from: "published:
// …", "entered by you". A source without a status, such as that of an input with a
// working of its own, is written as nothing.
func (w *Words) Source(s working.Source) string {
	if s == (working.Source{}) {
		return ""
	}
	status := w.T("words.status." + string(s.Status))
	if s.Cite == "" {
		return status
	}
	return w.T("words.source", A{"status": status, "cite": s.Cite})
}
