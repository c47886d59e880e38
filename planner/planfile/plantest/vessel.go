package plantest

import (
	"pgregory.net/rapid"

	"fourturn/planner/vessel"
)

// Vessel draws the shape and size of a pot.
func Vessel(_ *rapid.T) vessel.Spec { return vessel.Spec{} }
