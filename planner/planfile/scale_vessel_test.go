package planfile_test

import "fourturn/planner/vessel"

func bigVessel(_ int) vessel.Spec { return vessel.Spec{} }
