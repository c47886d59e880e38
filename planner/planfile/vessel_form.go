package planfile

import "fourturn/planner"

func vesselFields() []field[planner.Pot] { return nil }
