// Package vessel knows the shapes of pots: what they hold, how wide they are at
// any height, and what they weigh empty.
//
// A [Spec] is a pot as a person describes it: a kind of shape with its dimensions,
// measured inside or outside, and the features that take room from the mix.
// [Spec.Validate] says what is wrong with it, field by field; [New] turns a good
// Spec into a [Vessel], which answers questions.
//
// # Method
//
// Every hollow is a stack of level cuts. The area of the cut at height z above the
// inside bottom is a polynomial in z, so the volume up to any height is its
// antiderivative, exact for the shape and not a share of the whole:
//
//   - tapered shapes (round, square, trough, oval trough) have sides that change
//     in a straight line, A(z) = k·L(z)·W(z), of second degree: frusta and
//     prismatoids;
//   - bowls, hemispherical baskets and rounded wall baskets are caps of a sphere or
//     of an ellipsoid, A(z) = A(h)·(2Rz − z²)/(2Rh − h²);
//   - the half barrel has a stave bent to a parabola, so A(z) is of fourth degree;
//   - a turned shape is a stack of frusta between the given diameters;
//   - a cluster of pockets is n times one cell.
//
// k is π/4 for circles, ellipses and half ellipses (of which L is the long side and
// W the depth from the wall) and 1 for rectangles. The formulas are those of any
// handbook of mensuration, such as W. Beyer, CRC Standard Mathematical Tables.
//
// Walls are measured level, not square to a sloping side. Outside dimensions less
// the walls give the inside: the same slope for tapered and turned shapes, a cap of
// its own for bowls. Around inside dimensions the wall follows the side, and stands
// upright beside the bottom.
//
// # Limits
//
// Corners are sharp, rims have no lip, walls are of one thickness. A stave is a
// parabola by assumption. A pot measured with water is taken to have upright sides
// beneath its fill line. The default watering rim follows published advice whose
// size classes ("small", "large", "big") are given numbers here by judgement.
package vessel
