package main

import (
	"fmt"
	"time"

	"fourturn/planner/civil"
)

// todayVariable names the environment variable that stops the clock.
const todayVariable = "FOURTURN_TODAY"

// clock returns the clock of the program. FOURTURN_TODAY in the environment, such
// as 2027-04-14, stops it at noon of a day, for pictures and for looking ahead. The
// error is about a value that is no day: dates worked out for another day than the
// one that was meant would be worse than none.
func clock(getenv func(string) string) (func() time.Time, error) {
	text := getenv(todayVariable)
	if text == "" {
		return time.Now, nil
	}
	day, err := civil.Parse(text)
	if err != nil {
		return nil, fmt.Errorf("%s=%q: %w", todayVariable, text, err)
	}
	noon := day.Time().Add(12 * time.Hour)
	return func() time.Time { return noon }, nil
}
