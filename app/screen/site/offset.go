package site

import (
	"math"
	"strconv"
	"strings"

	"fourturn/planner/quantity"
)

// readOffset reads a difference of temperatures: "+1.5", "2 °C", "-3 °F", in the
// person's degrees where none are named.
func (s *Screen) readOffset(text string) (kelvin float64, ok bool) {
	text = strings.ReplaceAll(strings.ReplaceAll(text, "−", "-"), " ", "")
	upper := strings.ToUpper(text)
	fahrenheit := s.units() == quantity.USCustomary
	for unit, f := range map[string]bool{"°C": false, "C": false, "K": false, "°F": true, "F": true} {
		if rest, found := strings.CutSuffix(upper, unit); found && !strings.HasSuffix(rest, "°") {
			upper, fahrenheit = rest, f
			break
		}
	}
	x, err := strconv.ParseFloat(strings.Replace(upper, ",", ".", 1), 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, false
	}
	if fahrenheit {
		x *= degreeF
	}
	return math.Round(x*1000)/1000 + 0, true
}
