package planfile_test

import (
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

func bigVessel(i int) vessel.Spec {
	cm := func(n int) quantity.Length { return quantity.Length(n) * quantity.Centimetre }
	return vessel.Spec{Kind: vessel.Round, TopDiameter: cm(30 + i%20), BottomDiameter: cm(20 + i%20), Height: cm(25 + i%30)}
}
