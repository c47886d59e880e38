// Package session is the open plan: its current value, the edits that led to it,
// its file, and what is worked out from it.
//
// A [Session] belongs to the interface goroutine: all its methods are called
// there. It does slow work elsewhere, on plans that nobody changes, and hands
// results back through the function that its owner gives it for that
// ([Config.Post]). A result that was worked out for an older plan is dropped.
//
// Every change of the plan is a named edit ([Session.Do]) that can be undone.
// Unsaved work is written to a journal in the background after each edit, so that
// a crash loses nothing. Files are read and written in the background, one after
// the other, through [planfile.Store].
//
// The package knows no clock, no random numbers and no screen.
package session
