package vessel

import "fourturn/planner/quantity"

// liner checks the liner pot and that it goes into the hollow.
func (c *checker) liner() {
	s := c.spec
	if s.Liner == nil {
		return
	}
	if s.Liner.Liner != nil {
		c.report(Fault{Code: FaultNested, Field: FieldLiner, InLiner: true})
		return
	}
	faults := s.Liner.Validate()
	for _, f := range faults {
		f.InLiner = true
		c.report(f)
	}
	if len(c.faults) > 0 {
		return
	}
	inner, _ := solids(s)
	_, body := solids(s.Liner)
	// The liner stands on the false bottom; it may stand above the brim.
	room := inner
	stand := float64(s.FalseBottom + s.DrainageLayer)
	const steps = 16
	for i := range steps + 1 {
		z := body.height * float64(i) / steps
		if stand+z > room.height {
			break
		}
		l, w := body.at(z)
		roomL, roomW := room.at(stand + z)
		const slack = 1e-9
		if l > roomL+slack || w > roomW+slack {
			found, allowed := l, roomL
			if l <= roomL+slack {
				found, allowed = w, roomW
			}
			c.report(Fault{
				Code: FaultLiner, Field: FieldLiner, Found: metres(quantity.Length(found)),
				Lowest: metres(quantity.Length(0)), Highest: metres(quantity.Length(allowed)),
			})
			return
		}
	}
}
