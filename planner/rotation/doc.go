// Package rotation finds the best year of a pot: which plantings follow each other
// in it, and on which days one gives way to the next.
//
// # Display value
//
// The expected display value of a planting on a day, 0 to 1, is the sum over its
// parts of share × fullness × health × season × chance to be alive:
//
//   - Fullness grows from the size sold to 1 over the plant's weeks to full at the
//     reference temperature; each day counts by the ratio of its rate to that at the
//     reference. The rate rises in a line from the base temperature to the optimum
//     and holds beyond it; below the base nothing grows (Michigan State University
//     Extension on base temperatures, by way of Greenhouse Management and Greenhouse
//     Grower: development follows the 24-hour mean between base and optimum).
//   - Health is lost to heat and not won back: exp(−Σ excess/K), where excess is by
//     how much the mean daily maximum lies above the plant's heat limit, and K a
//     judgement. Cool annuals decline when days stay above 80 °F, 26.7 °C (Texas A&M
//     University, HORT 308/609 notes, M. A. Arnold, 2020). It is lost to age as well:
//     after the display weeks in a line over the days of fading. Cut stems age
//     faster when warm, by a Q10.
//   - Season is how it looks on cold nights, in a line from 1 at its planting-out
//     night to a floor at its lowest temperature, and a share outside the seasons that
//     it is grown for. Bulbs show once chilled and then warmed, for some weeks
//     (Iowa State University Extension: 12 to 16 weeks of chill).
//   - The chance to be alive is that no killing cold came since planting, of the air
//     or, for what overwinters, at the roots: see hazard.go for the method, which
//     gives back the published odds of the last and the first freeze. A plant not
//     hardened off is tenderer for two weeks.
//
// A planting may go out on a day when each of its plants is sold, the mean night is
// no colder than it wants for planting out, the mean day is no hotter than its heat
// limit, and the chance that cold kills it before it settles is within the risk.
//
// Every parameter has its source or its mark as a judgement in [Params.Working].
//
// # The best sequence
//
// A sequence fills the horizon with stays: what stands today, then plantings, with
// an empty pot between them where that is better. It is worth
//
//	Σ days (weight × taste × display − tired × (below − display)⁺) − bare × empty days − costs
//
// in display days; money is turned into them by what the person holds a display day
// to be worth, and a planting that goes on past the horizon is charged in part. The
// sequence returned is the best of all for this measure on a grid of days, by
// dynamic programming: see sequence.go. It keeps
//
//   - the change-outs wanted in each planning year; putting a planting out is one,
//     clearing the pot is not;
//   - the days on which work may be done, the days of delivery, the days that a
//     planting must stand;
//   - the rotation of the mix: no host of a disease group before the group is gone,
//     unless all the mix is replaced and the cost counted. A season after a healthy
//     host and three years after a diseased one, by default: see [DefaultLingers];
//   - pins and bans.
//
// Parts that may stay on at a change-out keep their share of the pot and their
// growth, and the next plantings are scaled to what is left, and so is their price.
//
// # Limits
//
// Days are expected ones, of mean years: a sequence does not yet answer to a
// late spring until the actual dates are entered. Plants of a planting do not crowd
// each other, share no fate, and are not replaced one by one. The odds of cold on
// different days are taken as a Poisson process, so that spells of cold are counted
// in the mean but not in their length. Only one set of parts stays on at a time. Pins
// and bans of plants and colours look at plantings, not at parts that stayed on.
package rotation
