package nutrition

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Oxides to elements, from the standard atomic weights P 30.974, K 39.098,
// O 15.999. Published as 0.4364 and 0.8302 (IFA), 0.4365 and 0.8301 (Virginia
// Tech SPES-201NP).
const (
	phosphorusInP2O5 = 2 * 30.974 / (2*30.974 + 5*15.999)
	potassiumInK2O   = 2 * 39.098 / (2*39.098 + 15.999)
)

// Analysis is the guaranteed analysis of a fertiliser as it stands on the bag:
// nitrogen, available phosphate and soluble potash in per cent by mass.
type Analysis struct {
	N    float64 // nitrogen
	P2O5 float64 // phosphate, as the oxide
	K2O  float64 // potash, as the oxide
}

// AnalysisFault says what is wrong with an analysis that was typed.
type AnalysisFault string

// The faults of a typed analysis.
const (
	AnalysisShape   AnalysisFault = "shape"   // not three numbers, such as 20-10-20
	AnalysisRange   AnalysisFault = "range"   // a number below 0, or a sum above 100
	AnalysisNothing AnalysisFault = "nothing" // 0-0-0 feeds nothing
)

// Key returns the key of the fault's words.
func (f AnalysisFault) Key() string { return "nutrition.fault.analysis_" + string(f) }

// AnalysisError reports an analysis that cannot be read.
type AnalysisError struct {
	Fault AnalysisFault
	Text  string // what was typed
}

// Error describes the fault for a log or a file error.
func (e *AnalysisError) Error() string {
	switch e.Fault {
	case AnalysisRange:
		return fmt.Sprintf("analysis %q: the three numbers must be 0 or more and sum to 100 %% at most", e.Text)
	case AnalysisNothing:
		return fmt.Sprintf("analysis %q holds no nutrient", e.Text)
	case AnalysisShape:
	}
	return fmt.Sprintf("analysis %q is not three numbers N-P2O5-K2O, such as 20-10-20", e.Text)
}

var analysisDashes = strings.NewReplacer("–", "-", "—", "-", "−", "-", ":", "-", "/", "-", "%", "", " ", "", "\t", "")

// ParseAnalysis reads N-P2O5-K2O in per cent, such as "20-10-20" or "15.5-0-0".
// The dashes may be long ones, colons or strokes, and a decimal comma is read.
func ParseAnalysis(s string) (Analysis, error) {
	parts := strings.Split(analysisDashes.Replace(s), "-")
	if len(parts) != 3 {
		return Analysis{}, &AnalysisError{AnalysisShape, s}
	}
	var percent [3]float64
	for i, part := range parts {
		digits := strings.Replace(part, ",", ".", 1)
		if strings.Trim(digits, "0123456789.") != "" {
			return Analysis{}, &AnalysisError{AnalysisShape, s}
		}
		x, err := strconv.ParseFloat(digits, 64)
		if err != nil {
			return Analysis{}, &AnalysisError{AnalysisShape, s}
		}
		percent[i] = x
	}
	a := Analysis{N: percent[0], P2O5: percent[1], K2O: percent[2]}
	switch sum := a.N + a.P2O5 + a.K2O; {
	case sum == 0:
		return Analysis{}, &AnalysisError{AnalysisNothing, s}
	case sum > 100:
		return Analysis{}, &AnalysisError{AnalysisRange, s}
	}
	return a, nil
}

// MustParseAnalysis is [ParseAnalysis] for analyses fixed in code; it panics on a malformed one.
func MustParseAnalysis(s string) Analysis {
	a, err := ParseAnalysis(s)
	if err != nil {
		panic("nutrition: " + err.Error())
	}
	return a
}

// AnalysisOfElements returns the analysis in oxides of a fertiliser that journals
// describe in elements, such as 16N-3.9P-10K, in per cent by mass.
func AnalysisOfElements(n, p, k float64) Analysis {
	return Analysis{N: n, P2O5: p / phosphorusInP2O5, K2O: k / potassiumInK2O}
}

// String writes the analysis as it stands on the bag: 20-10-20.
func (a Analysis) String() string {
	write := func(x float64) string { return strconv.FormatFloat(math.Round(x*100)/100, 'f', -1, 64) }
	return write(a.N) + "-" + write(a.P2O5) + "-" + write(a.K2O)
}

// Nutrients are masses of nitrogen, phosphorus and potassium as elements.
type Nutrients struct {
	N, P, K quantity.Mass
}

// Plus returns the sum.
func (n Nutrients) Plus(o Nutrients) Nutrients {
	return Nutrients{N: n.N + o.N, P: n.P + o.P, K: n.K + o.K}
}

// Times returns the nutrients multiplied by a number.
func (n Nutrients) Times(x float64) Nutrients {
	f := quantity.Mass(x)
	return Nutrients{N: n.N * f, P: n.P * f, K: n.K * f}
}

// In returns the elements held by a mass of the fertiliser, by the factors of
// oxides to elements.
func (a Analysis) In(m quantity.Mass) Nutrients {
	return Nutrients{
		N: m * quantity.Mass(a.N/100),
		P: m * quantity.Mass(a.P2O5/100*phosphorusInP2O5),
		K: m * quantity.Mass(a.K2O/100*potassiumInK2O),
	}
}

// Elements returns the analysis as elements in per cent: N, P and K.
func (a Analysis) Elements() (n, p, k float64) {
	return a.N, a.P2O5 * phosphorusInP2O5, a.K2O * potassiumInK2O
}

// Working returns the trace of the phosphorus in the analysis, the figure that is
// most often misread: the bag counts an oxide.
func (a Analysis) Working() working.Trace {
	_, p, _ := a.Elements()
	return working.Trace{
		Name:    "nutrition.phosphorus_share",
		Formula: "P = P₂O₅ × 0.4364",
		Inputs: []working.Input{
			{Symbol: "P₂O₅", Name: "nutrition.phosphate_share", Value: working.Number(a.P2O5/100, working.Share), Source: working.Source{Status: working.Entered}},
		},
		Result: working.Number(p/100, working.Share),
		Source: working.Source{Status: working.Published, Cite: "IFA conversion factors; Virginia Tech SPES-201NP"},
		Notes:  []string{"nutrition.note_potash"},
	}
}
