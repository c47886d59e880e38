// Package versions puts into words what differs between two versions of a plan: for
// the choice between what two people wrote at the same place, and for the look at an
// earlier copy before it is brought back. It draws nothing.
//
// What comes from the plan file is an address and a value ([planfile.Step],
// [planfile.Content]); here the pot, the planting or the log entry gets its name, the
// field its label, and the value the person's units. A field without a label of its
// own is called by its key, so that a new one can be read before it has words.
package versions
