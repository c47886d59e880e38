// Package mix works out how much potting mix a pot takes, what becomes of it from
// change-out to change-out, which bags to buy, and how heavy the pot is.
//
// # Fill
//
// A pot with room V to its fill line and root balls of volume R takes V − R of firm
// mix. Loose mix settles when it is firmed and watered, so (V − R) × (1 + s) is
// bought; s is 0.15 unless set, since the published figures of 15-20 % (Harvest to
// Table; UBC Botanical Garden forum 14039) and 10-15 % (a supplier of planters)
// meet there. No first-class source for s was found.
//
// # Balance
//
// A change-out lifts the old root balls with the mix they hold, takes out a share of
// what is left, sets the new root balls and fills up with fresh mix ([Content.At]).
// What goes in less what comes out is what is there, and it never stands above the
// fill line. The default share of one third is that of UC Master Gardeners of Orange
// County; mix that held diseased plants is thrown out (Oregonian 2010). The age of
// the mix is its volume-weighted mean.
//
// # Purchase
//
// [Buy] finds the cheapest set of bags and bulk that covers a need: a covering
// knapsack problem, solved exactly in whole nanolitres and millionths of the
// currency. Where all sizes are multiples of one measure, every total is compared by
// dynamic programming; otherwise branches are cut by the bound of the best price per
// litre, in exact integers. Of equally cheap purchases the one with the least left
// over is taken, then the one with the fewest bags.
//
// # Weight
//
// Dry bulk density and container capacity give the weight dry and drained, after
// measured substrates (International Journal of Agronomy 2012:978528).
//
// # Limits
//
// Old mix in a pot is taken to be evenly mixed. Mix that rots away is a setting, 0
// unless set. Bulk has no upper limit, bags are never out of stock. A weight is an
// estimate for carrying and not for a structure.
package mix
