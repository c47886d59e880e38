// Package pots is the bench: every pot with its size and what stands in it, and the
// one that is chosen, to be looked at and changed.
//
// It draws nothing. What it shows is text in the person's language and units, ready
// to be set; what a person does is one named edit of the plan, which can be undone.
// A measure that cannot be is refused with a [words.Refusal] whose text says what is
// allowed.
package pots
