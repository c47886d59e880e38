package main

import (
	"bufio"
	"io"

	"fourturn/app/words"
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
	outlook := planner.WorkOut(document.Plan(), reference(t), o.day(t))
	if err := printFigures(t.out, t.words, outlook, o.json); err != nil {
		t.complain("command.cannot_print", words.A{"cause": cause(err)})
		return exitFault
	}
	return exitGood
}

// printFigures writes everything worked out for a plan, as JSON or for a person. The
// error is that of the writer: a figure that did not arrive is not passed over.
func printFigures(to io.Writer, w *words.Words, outlook *planner.Outlook, json bool) error {
	out := bufio.NewWriter(to) // which remembers the first error
	if json {
		if err := figures.Write(out, outlook); err != nil {
			return err
		}
		return out.Flush()
	}
	writeFigures(out, w, outlook)
	return out.Flush()
}
