package main

import (
	"slices"
	"strings"

	"fourturn/planner/civil"
)

// options are the words behind a command, sorted.
type options struct {
	plan  string
	out   string
	json  bool
	today civil.Date
}

// day returns the day to look at a plan on: the one that was asked for, else today.
func (o options) day(t *terminal) civil.Date {
	if o.today.IsZero() {
		return t.today()
	}
	return o.today
}

// parseOptions sorts the words behind a command. allowed names the options that
// the command knows, such as "--json"; plan says whether it takes a plan file.
func parseOptions(args []string, plan bool, allowed ...string) (options, bool) {
	var o options
	for i := 0; i < len(args); i++ {
		word := args[i]
		if !strings.HasPrefix(word, "-") {
			if !plan || o.plan != "" {
				return o, false
			}
			o.plan = word
			continue
		}
		if !slices.Contains(allowed, word) {
			return o, false
		}
		if word == "--json" {
			o.json = true
			continue
		}
		i++
		if i == len(args) || !o.take(word, args[i]) {
			return o, false
		}
	}
	return o, !plan || o.plan != ""
}

func (o *options) take(name, value string) bool {
	switch name {
	case "--today":
		day, err := civil.Parse(value)
		o.today = day
		return err == nil
	case "-o", "--out":
		o.out = value
		return value != ""
	}
	return false
}
