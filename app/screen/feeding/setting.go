package feeding

import (
	"strconv"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/quantity"
)

const usualCan = 9 * quantity.Litre // as the nutrition chapter takes it

// The cans that a plan may have: from a mug to a tank.
const (
	leastCan = 0.1 * quantity.Litre
	mostCan  = 2000 * quantity.Litre
)

// Can returns the volume of the can, written out.
func (s *Screen) Can() string {
	can := s.session.Plan().Feeding.Can
	if can <= 0 {
		can = usualCan
	}
	return s.words.Water(can, s.session.Plan().Units)
}

// SetCan changes the volume of the can; nothing typed gives back the usual one. A bare
// number is taken in litres or gallons.
func (s *Screen) SetCan(typed string) error {
	units := s.session.Plan().Units
	can := quantity.Volume(0)
	if strings.TrimSpace(typed) != "" {
		unit := quantity.Litre
		if units == quantity.USCustomary {
			unit = quantity.Gallon
		}
		v, err := s.words.Reader().Volume(typed, unit)
		if err != nil {
			return s.words.Unread(err)
		}
		if v < leastCan || v > mostCan {
			return &words.Refusal{Text: s.words.T("feeding.can_range", words.A{"least": s.words.Water(leastCan, units), "most": s.words.Water(mostCan, units)})}
		}
		can = v
	}
	return s.set("feeding.edit_can", func(f *planner.FeedingSettings) { f.Can = can })
}

// set is one edit of how feeds go.
func (s *Screen) set(name string, edit func(*planner.FeedingSettings)) error {
	err := s.session.Do(name, nil, func(p planner.Plan) (planner.Plan, error) {
		edit(&p.Feeding)
		return p, nil
	})
	if err != nil {
		return &words.Refusal{Text: s.words.T("feeding.refused", words.A{"cause": err.Error()})}
	}
	return nil
}

// The intervals that a person may ask for: feeds every 7 to 14 days are common
// practice, and the planner allows what lies around it.
const (
	leastInterval = 3
	mostInterval  = 60
)

// Interval returns the days between a pot's feeds, or "" where the feeder class
// decides.
func (s *Screen) Interval() string {
	if n := s.session.Plan().Feeding.Interval; n > 0 {
		return s.words.Days(n)
	}
	return ""
}

// SetInterval changes the days between a pot's feeds; nothing typed gives them back
// to the feeder class.
func (s *Screen) SetInterval(typed string) error {
	days := 0
	if typed = strings.TrimSpace(typed); typed != "" {
		number, _, _ := strings.Cut(typed, " ")
		n, err := strconv.Atoi(number)
		if err != nil || n < leastInterval || n > mostInterval {
			return &words.Refusal{Text: s.words.T("feeding.interval_range", words.A{"least": leastInterval, "most": mostInterval})}
		}
		days = n
	}
	return s.set("feeding.edit_interval", func(f *planner.FeedingSettings) { f.Interval = days })
}
