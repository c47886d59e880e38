// Package sketch draws a plant from its own parameters: habit, height, spread, form
// of leaf and flower, colours. It makes lines and areas, and no picture: a screen or
// a printer paints them at its own size.
//
// # Method
//
// The plant is grown in space. Its habit gives stems and the places of leaves along
// them; leaves follow each other by the golden angle, as they do on most plants
// (S. Vogel, "A better way to construct the sunflower head", Mathematical
// Biosciences 44:179-189, 1979). A leaf is a flat outline bent along its midrib. All
// is seen from the side, slightly from above, or straight from above, and drawn from
// the back to the front, so that both views are of the same plant. Everything that
// is left to chance is drawn from the plant's id: one plant always looks alike.
//
// Leaves and flowers that a pen of the given width could not draw are made larger
// and fewer, as one would in a small drawing.
//
// In one colour all areas are paper, and hatching stands for dark colours; such
// lines are marked as [Mark.Mono].
//
// # Limits
//
// A drawing is of a kind of plant, not of a botanical specimen: what the parameters
// do not say, such as how the leaves sit on the stem, is taken from the habit.
package sketch
