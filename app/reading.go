package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/planfile"
	"fourturn/planner/quantity"
)

// workOutToday works everything out for a plan on the day that the clock shows.
func workOutToday(ref planner.Reference, today func() civil.Date) func(context.Context, *planner.Plan) *planner.Outlook {
	return func(_ context.Context, plan *planner.Plan) *planner.Outlook {
		return planner.WorkOut(plan, ref, today())
	}
}

// readPlan reads a plan file for a command. What is wrong is written to the
// standard error with its place, and ok is false.
func readPlan(t *terminal, path string) (*planfile.Document, bool) {
	text, err := readAtMost(path, planfile.MaxBytes+1) // one more tells Decode that it is too big
	if err != nil {
		t.complain("command.cannot_read", words.A{"file": path, "cause": cause(err)})
		return nil, false
	}
	document, err := planfile.Decode(text)
	if err != nil {
		complainOfFile(t, path, err)
		return nil, false
	}
	return document, true
}

// readAtMost reads a file, or a pipe, up to a number of bytes.
func readAtMost(path string, limit int64) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, limit))
}

// complainOfFile writes the problems of a plan file, one a line, as
// FILE:LINE:COLUMN: what.
func complainOfFile(t *terminal, path string, err error) {
	var problems *planfile.Problems
	if !errors.As(err, &problems) {
		fmt.Fprintf(t.err, "%s: %v\n", path, err)
		return
	}
	for _, p := range problems.List {
		fmt.Fprintf(t.err, "%s:%d:%d: %s: %s\n", path, p.Line, p.Column, t.words.T("words.severity.error"), t.words.Finding(p.Finding, quantity.Metric))
	}
}

// cause returns the reason of a file error without its path, which is named beside.
func cause(err error) string {
	var path *os.PathError
	if errors.As(err, &path) {
		return path.Err.Error()
	}
	return err.Error()
}

// plantName returns what the plants of the book are called.
func plantName(ref planner.Reference) func(id string) string {
	return func(id string) string {
		if plant, ok := ref.Book.Plant(id); ok {
			return plant.Name()
		}
		return ""
	}
}
