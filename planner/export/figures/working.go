package figures

import (
	"math"

	"fourturn/planner"
	"fourturn/planner/working"
)

type figureJSON struct {
	Value   any         `json:"value"`
	Working workingJSON `json:"working"`
}

type workingJSON struct {
	Name    string      `json:"name"`
	Formula string      `json:"formula"`
	Inputs  []inputJSON `json:"inputs"`
	Result  any         `json:"result"`
	Unit    string      `json:"unit"`
	Status  string      `json:"status"`
	Source  string      `json:"source,omitempty"`
	Notes   []string    `json:"notes,omitempty"`
}

type inputJSON struct {
	Symbol  string       `json:"symbol"`
	Name    string       `json:"name"`
	Value   any          `json:"value"`
	Unit    string       `json:"unit"`
	Status  string       `json:"status"`
	Source  string       `json:"source,omitempty"`
	Working *workingJSON `json:"working,omitempty"`
}

// figureOf returns a figure for JSON, or nil where there is none.
func figureOf(f planner.Figure) *figureJSON {
	if f.IsZero() {
		return nil
	}
	return &figureJSON{Value: valueOf(f.Value), Working: workingOf(f.Working())}
}

func valueOf(v working.Value) any {
	switch {
	case v.Unit == working.DayNumber:
		return v.Date
	case v.Text != "":
		return v.Text
	case math.IsInf(v.Number, 0) || math.IsNaN(v.Number):
		return nil // JSON has no such numbers
	}
	return v.Number
}

func workingOf(t working.Trace) workingJSON {
	out := workingJSON{
		Name: t.Name, Formula: t.Formula, Inputs: []inputJSON{}, Result: valueOf(t.Result), Unit: string(t.Result.Unit),
		Status: string(t.Source.Status), Source: t.Source.Cite, Notes: t.Notes,
	}
	for _, in := range t.Inputs {
		input := inputJSON{
			Symbol: in.Symbol, Name: in.Name, Value: valueOf(in.Value), Unit: string(in.Value.Unit),
			Status: string(in.Source.Status), Source: in.Source.Cite,
		}
		if in.From != nil {
			from := workingOf(*in.From)
			input.Working = &from
		}
		out.Inputs = append(out.Inputs, input)
	}
	return out
}
