package main

import (
	"fmt"

	"fourturn/planner"
	"fourturn/planner/export/figures"
)

// runFigures prints everything worked out for a plan.
func runFigures(t *terminal, args []string) int {
	o, ok := parseOptions(args, true, "--json", "--today")
	if !ok {
		return usage(t, "figures")
	}
	document, ok := readPlan(t, o.plan)
	if !ok {
		return exitFault
	}
	if o.today.IsZero() {
		o.today = t.today()
	}
	outlook := planner.WorkOut(document.Plan(), reference(), o.today)
	if !o.json {
		writeFigures(t.out, t.words, outlook)
		return exitGood
	}
	if err := figures.Write(t.out, outlook); err != nil {
		fmt.Fprintln(t.err, err)
		return exitFault
	}
	return exitGood
}
