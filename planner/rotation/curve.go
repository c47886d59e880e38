package rotation

// Request returns what the result was worked out from.
func (r *Result) Request() Request { return *r.req }

// Curve returns the expected display value, 0 to 1, of each day of the horizon under
// a sequence of the result: the mean over the pots that match, not weighted by day
// or taste.
func (r *Result) Curve(seq Sequence) []float64 {
	curve := make([]float64, r.problem.days)
	for _, stay := range seq.Stays {
		own := 1.0
		if stay.Kept != nil {
			own -= stay.Kept.Share
			r.addCurve(curve, stay, segmentOf(stay.Kept.Candidate, int(stay.Kept.Since-r.req.Today)), true, 1)
		}
		r.addCurve(curve, stay, segmentOf(stay.Candidate, int(stay.From-r.req.Today)), false, own)
	}
	return curve
}

// segmentOf is an option that goes out on a day; what stands does so today.
func segmentOf(o, start int) segment {
	if o == standingOption {
		start = 0
	}
	return segment{option: o, start: start}
}

// addCurve adds the display of an option's parts, all or only the staying ones, on
// the days of a stay.
func (r *Result) addCurve(curve []float64, stay Stay, seg segment, onlyStaying bool, share float64) {
	from, to := int(stay.From-r.req.Today), int(stay.Until-r.req.Today)
	share /= float64(len(r.req.Members))
	r.eachPart(seg, func(_ *Outlook, part Part, c *course, today int) {
		if onlyStaying && !part.Stays {
			return
		}
		values := make([]float64, to-seg.start)
		c.run(today+seg.start, values)
		for day := from; day < to; day++ {
			curve[day] += share * part.Share * values[day-seg.start]
		}
	})
}
