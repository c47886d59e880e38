package pots

import (
	"regexp"
	"strings"

	"fourturn/app/words"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// The profile of a turned pot is written as its heights with the diameter at each:
// "0 × 14; 10 × 30; 32 × 44 cm". A unit holds for all numbers before it that have
// none.

// cross parts the measures of one line: "45 x 32 x 40 cm".
var cross = regexp.MustCompile(`\s*[x×X*]\s*`)

// unitAtEnd finds the unit that a measure ends with.
var unitAtEnd = regexp.MustCompile(`[\p{L}"″”']+\.?$`)

// profile writes the rings of a turned pot.
func (s *Screen) profile(rings []vessel.Ring) string {
	var parts []string
	for i, r := range rings {
		diameter := s.Length(r.Diameter)
		if i < len(rings)-1 {
			diameter, _, _ = strings.Cut(diameter, " ")
		}
		height, _, _ := strings.Cut(s.Length(r.Height), " ")
		parts = append(parts, height+" × "+diameter)
	}
	return strings.Join(parts, "; ")
}

// readProfile reads what profile writes.
func (s *Screen) readProfile(typed string) ([]vessel.Ring, error) {
	malformed := &words.Refusal{Text: s.words.T("pots.profile_format")}
	lines := strings.Split(strings.TrimRight(typed, "; "), ";")
	if len(lines) > vessel.MaxRings {
		return nil, malformed
	}
	var measures []string
	for _, line := range lines {
		pair := cross.Split(strings.TrimSpace(line), -1)
		if len(pair) != 2 {
			return nil, malformed
		}
		measures = append(measures, pair...)
	}
	lengths, err := s.readLengths(measures)
	if err != nil {
		return nil, err
	}
	rings := make([]vessel.Ring, 0, len(lines))
	for i := 0; i < len(lengths); i += 2 {
		rings = append(rings, vessel.Ring{Height: lengths[i], Diameter: lengths[i+1]})
	}
	return rings, nil
}

// readLengths reads measures of which those without a unit have that of the last.
func (s *Screen) readLengths(measures []string) ([]quantity.Length, error) {
	unit := ""
	if len(measures) > 0 {
		unit = unitAtEnd.FindString(measures[len(measures)-1])
	}
	lengths := make([]quantity.Length, 0, len(measures))
	for _, m := range measures {
		if unit != "" && unitAtEnd.FindString(m) == "" {
			m += " " + unit
		}
		l, err := s.words.Reader().Length(m, s.lengthUnit())
		if err != nil {
			return nil, s.words.Unread(err)
		}
		lengths = append(lengths, l)
	}
	return lengths, nil
}
