// Package plantdraw paints the drawings of package sketch: by the look of the app or
// in one colour, at any size, into an image or on a sheet with other things.
//
// [Portrait] is a plant by itself, [Side] and [FromAbove] put a plant to scale onto a
// drawing of something else, such as a pot, and [Pattern] is a tile of its flowers or
// leaves by which an area tells which plant it stands for. [Picture] is the widget.
// Everything is deterministic: one plant always looks alike.
package plantdraw
