package planner

import "fourturn/planner/civil"

// ValueCurve returns the expected display value, 0 to 1, of what stands in the pot, for
// each day from the day from on: see the rotation chapter for the model. Pots that match
// have one curve, their mean. It is nil where no days were searched for.
func (p *PotOutlook) ValueCurve() (from civil.Date, values []float64) {
	if p.search == nil || p.search.result == nil {
		return 0, nil
	}
	result := p.search.result
	return result.Request().Today, result.Curve(result.Best)
}

// CostOfMoving returns what it costs to move the change-out of a stand to a day, in
// display days, all other change-outs as they are; negative where a rule had kept the
// better day out. It is false where the day breaks a rule, and where the stand's day was
// not searched for.
func (p *PotOutlook) CostOfMoving(stand int, day civil.Date) (displayDays float64, ok bool) {
	st := &p.Stands[stand]
	if p.search == nil || p.search.result == nil || st.turn == 0 {
		return 0, false
	}
	result := p.search.result
	for i, c := range result.Best.ChangeOuts {
		if c.To >= 0 && c.Day == st.From {
			return result.CostOfMoving(i, day)
		}
	}
	return 0, false
}
