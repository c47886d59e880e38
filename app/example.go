package main

import (
	"fourturn/assets"
	"fourturn/planner"
	"fourturn/planner/planfile"
)

// examplePlan returns the built-in example plan.
func examplePlan() *planner.Plan {
	document, err := planfile.Decode(assets.Example)
	if err != nil {
		panic("fourturn: the built-in example plan: " + err.Error())
	}
	return document.Plan()
}
