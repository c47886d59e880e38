package main

import (
	"time"

	"fourturn/planner/civil"
)

// clock returns the clock of the program. FOURTURN_TODAY in the environment, such
// as 2027-04-14, stops it at noon of a day, for pictures and for looking ahead.
func clock(getenv func(string) string) func() time.Time {
	day, err := civil.Parse(getenv("FOURTURN_TODAY"))
	if err != nil {
		return time.Now
	}
	noon := day.Time().Add(12 * time.Hour)
	return func() time.Time { return noon }
}
