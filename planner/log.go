package planner

import (
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// EntryKind says what happened.
type EntryKind string

// What can be entered in the log.
const (
	Fed      EntryKind = "fed"      // Pots were fed with Product
	Skipped  EntryKind = "skipped"  // a feed of Pots due on the date was left out, for rain, say
	Planted  EntryKind = "planted"  // Pots were changed over to Season
	Diseased EntryKind = "diseased" // Pots showed the disease named in Text
	Lost     EntryKind = "lost"     // frost or the like took what stood in Pots
	Lovely   EntryKind = "lovely"   // what stands in Pots still looks its best
	Noted    EntryKind = "noted"    // a remark

	// TopDressed says that slow release was scattered on Pots: Mass of Product on each.
	TopDressed EntryKind = "top_dressed"
)

// Entry is one thing that really happened, on a day, to some pots.
type Entry struct {
	ID      string
	Date    civil.Date
	Kind    EntryKind
	Pots    []string      // ids
	Product string        // id, for Fed and TopDressed
	Season  Season        // for Planted
	Mass    quantity.Mass // on each pot, for TopDressed
	Text    string
}
