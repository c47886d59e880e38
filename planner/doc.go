// Package planner is the plan and its front door.
//
// The plan ([Plan]) is the whole document: sites, spots, pots, what is planted
// in them, the products in the shed and the log of what really happened. It is a
// plain value. Edits never change a plan in place: they copy what they touch and
// leave the rest shared, so that an older plan stays whole for undo.
//
// The front door ([WorkOut]) takes a plan, the plant book, the climate table and
// today's date, and works everything out: volumes, mix, change-out days, charges,
// feeding rounds, what is due, and findings. The result ([Outlook]) is immutable
// and may be read from any goroutine. Each chapter below this package does one
// part of the work in numbers and units and knows nothing of plans; this package
// is the only one that brings them together.
package planner
