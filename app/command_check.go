package main

import (
	"fmt"
	"slices"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
)

// runCheck lists the findings on a plan with their places and exits 1 where one
// of them is an error.
func runCheck(t *terminal, args []string) int {
	o, ok := parseOptions(args, true, "--today")
	if !ok {
		return usage(t, "check")
	}
	document, ok := readPlan(t, o.plan)
	if !ok {
		return exitFault
	}
	plan := document.Plan()
	for _, p := range document.Warnings() {
		fmt.Fprintf(t.out, "%s:%d:%d: %s: %s\n", o.plan, p.Line, p.Column, t.words.T("words.severity.warning"), t.words.Finding(p.Finding, plan.Units))
	}
	code := exitGood
	found := planner.WorkOut(plan, reference(t), o.day(t)).Findings
	for _, f := range sortedByPlace(found, document.Position) {
		line, column, _ := document.Position(f.Where)
		fmt.Fprintf(t.out, "%s:%d:%d: %s: %s: %s\n", o.plan, line, column,
			t.words.Severity(f.Severity), strings.Join(f.Where, "."), t.words.Finding(f, plan.Units))
		if f.Severity == finding.Error {
			code = exitFault
		}
	}
	if len(found)+len(document.Warnings()) == 0 {
		t.say("command.no_findings", words.A{"file": o.plan})
	}
	return code
}

// sortedByPlace returns the findings in the order of the file.
func sortedByPlace(found []finding.Finding, position func(finding.Where) (int, int, bool)) []finding.Finding {
	sorted := slices.Clone(found)
	slices.SortStableFunc(sorted, func(a, b finding.Finding) int {
		lineA, _, _ := position(a.Where)
		lineB, _, _ := position(b.Where)
		return lineA - lineB
	})
	return sorted
}
