// Package nutrition works out the feeding of containers: slow-release fertiliser
// that is tracked through time, two or more soluble products in turn, and the
// balance of both against what the plants take.
//
// # Slow release
//
// A [Charge] gives up its nutrients as a coated prill does: a lag, a steady phase
// and a decaying one (Shaviv, Raban & Zaidel, Environ. Sci. Technol. 37:2251,
// 2003), in days of the reference temperature. A day at another temperature counts
// by Arrhenius with an activation energy of 37 to 46 kJ/mol (Du, Zhou & Shaviv,
// J. Polym. Environ., 2006), so it never stops in the cold. [Thermal] adds the
// days up once and serves any number of pots.
//
// # Soluble feeds
//
// A [Solution] is a product by analysis at so many mg/L of nitrogen. 1 ppm is
// 1 mg/L, and g/L = ppm / (10 × %N). An [Injector] says which of the two ratio
// conventions it follows.
//
// # Rounds
//
// [PlanRounds] finds the fewest days on which one product is mixed for every pot
// that is due, so that every pot keeps its own interval and its own turn of
// products. It is a search over days whose states are the sets of feeds that each
// pot could have had last; states are kept to a bounded number, so the answer is
// compared with a lower bound and says whether it is proven.
//
// # Balance
//
// A [Ledger] adds up, week by week, what charges give up and feeds bring, against
// the need of the feeder class.
//
// # Limits
//
// One release curve serves N, P and K, although P comes later (Du et al.; Adams,
// Frantz & Bugbee, J. Plant Nutr. Soil Sci. 176:76, 2013) and coatings differ. One
// coated 14-14-14 gave only 64 to 71 % of its nitrogen in 220 days of soil at 25 °C
// (Open J. Soil Sci. 1:40, 2011), less than the model says. Spoons are good to
// ±25 %: a scale is the reference. The label on the bag outranks every figure here.
package nutrition
