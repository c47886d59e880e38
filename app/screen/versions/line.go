package versions

import (
	"fourturn/app/words"
	"fourturn/planner/planfile"
)

// Line is one difference between two versions, in words.
type Line struct {
	Place  string
	Before string
	After  string
}

// Line writes a difference in words.
func (r *Reader) Line(d planfile.Difference) Line {
	if d.Order {
		return Line{
			Place:  r.words.T("versions.order", words.A{"of": r.Place(d.Steps)}),
			Before: r.words.T("versions.order_before"), After: r.words.T("versions.order_after"),
		}
	}
	said := r.Contents(d.Steps, d.Before, d.After)
	return Line{Place: r.Place(d.Steps), Before: said[0], After: said[1]}
}

// Lines writes differences in words.
func (r *Reader) Lines(all []planfile.Difference) []Line {
	lines := make([]Line, len(all))
	for i, d := range all {
		lines[i] = r.Line(d)
	}
	return lines
}
