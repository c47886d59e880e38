package rotation

import (
	"math"
	"sync"
)

// scorer turns display values into running scores over the days of a request.
type scorer struct {
	req    *Request
	days   int
	weight []float64 // by day
	groups []memberGroup
	tired  float64 // lost per day and unit of display below
	below  float64
	bare   float64    // lost per day of an empty pot
	space  *sync.Pool // of []float64, one value a day
}

// memberGroup is a set of pots that share an outlook.
type memberGroup struct {
	outlook *Outlook
	today   int     // position of today in the climate
	pots    float64 // how many
}

func newScorer(req *Request) *scorer {
	s := &scorer{
		req:   req,
		days:  int(req.Until - req.Today),
		tired: req.Weights.Tired,
		below: req.Weights.TiredBelow,
		bare:  req.Weights.Bare,
	}
	s.space = &sync.Pool{New: func() any {
		space := make([]float64, s.days)
		return &space
	}}
	s.weight = make([]float64, s.days)
	for i := range s.weight {
		s.weight[i] = 1
		if i < len(req.Weights.Days) {
			s.weight[i] = req.Weights.Days[i]
		}
	}
members:
	for _, m := range req.Members {
		for k := range s.groups {
			if s.groups[k].outlook == m.Outlook {
				s.groups[k].pots++
				continue members
			}
		}
		s.groups = append(s.groups, memberGroup{m.Outlook, m.Outlook.index(req.Today), 1})
	}
	return s
}

// plain returns a scorer of the display alone, without what tired days and empty
// pots lose.
func (s *scorer) plain() *scorer {
	plain := *s
	plain.tired, plain.bare = 0, 0
	return &plain
}

// row fills row with the running score of the parts of a planting put out on the
// day start; all parts, or only those that may stay.
func (s *scorer) row(p *Planting, start int, onlyStaying bool, row []float64) {
	clear(row)
	for _, g := range s.groups {
		for i := range p.Parts {
			if onlyStaying && !p.Parts[i].Stays {
				continue
			}
			c := g.outlook.newCourse(p.Parts[i])
			s.addPart(&c, g.pots*p.Parts[i].Share, p.taste(), g.today, start, row)
		}
	}
	for k := 1; k < len(row); k++ {
		row[k] += row[k-1]
	}
}

// rowsOf returns a source of the rows of candidates, of all their parts or only of
// those that may stay.
func (s *scorer) rowsOf(candidates []Planting, onlyStaying bool) func(o, start int, space []float64) []float64 {
	return func(o, start int, space []float64) []float64 {
		s.row(&candidates[o], start, onlyStaying, space)
		return space
	}
}

// addPart adds each day's score of a part that is on its course on the day start.
func (s *scorer) addPart(c *course, share, taste float64, today, start int, row []float64) {
	tired, below := s.tired, s.below
	if c.plant.Bulb != nil {
		tired = 0 // a bulb at rest is not looked at
	}
	n := len(row) - 1
	space := s.space.Get().(*[]float64)
	defer s.space.Put(space)
	values := (*space)[:n]
	c.run(today+start, values)
	weight, row := s.weight[start:start+n], row[1:]
	full, tired := share*taste, share*tired
	for k, v := range values {
		score := full * weight[k] * v
		if v < below {
			score -= tired * (below - v)
		}
		row[k] += score
	}
}

// empty returns the running score of empty pots.
func (s *scorer) empty() []float64 {
	row := make([]float64, s.days+1)
	for k := 1; k < len(row); k++ {
		row[k] = row[k-1] - s.bare*float64(len(s.req.Members))
	}
	return row
}

// standing returns the running score of what stands today, all of it or only the
// parts that may stay.
func (s *scorer) standing(onlyStaying bool) []float64 {
	total := make([]float64, s.days+1)
	row := make([]float64, s.days+1)
	for _, m := range s.req.Members {
		clear(row)
		today := m.Outlook.index(s.req.Today)
		if m.Standing.Planting == nil {
			for k := 1; k < len(row) && !onlyStaying; k++ {
				row[k] = -s.bare
			}
		} else {
			for _, part := range m.Standing.Planting.Parts {
				if onlyStaying && !part.Stays {
					continue
				}
				c := m.Outlook.courseToday(part, &m.Standing, today)
				s.addPart(&c, part.Share, m.Standing.Planting.taste(), today, 0, row)
			}
		}
		sum := 0.0
		for k := range row {
			sum += row[k]
			total[k] += sum
		}
	}
	return total
}

// courseToday returns the course of a part that stands, taken to be alive today.
func (o *Outlook) courseToday(part Part, standing *Standing, today int) course {
	c := o.newCourse(part)
	first := o.index(standing.Since)
	if first < 0 {
		// Planted before the climate begins: grown in by now.
		c.fullness, c.age, c.stood = 1, float64(-first), -first
		first = 0
	}
	for i := first; i < today; i++ {
		c.step(i)
	}
	d := c.days
	c.left = math.Exp(d.heat[first] - d.heat[today])
	if standing.Condition != nil {
		c.left = *standing.Condition
		if rest := c.value(today) / max(c.left, math.SmallestNonzeroFloat64); rest > 0 {
			c.left = min(1, c.left/rest)
		}
	}
	return c
}
