// Package climate turns a place into the days on which things can happen: daily
// normals, odds of freeze, heat, daylight, reference evapotranspiration and the
// four planting seasons.
//
// # What a climate is made from
//
// [New] takes a station of the built-in table, the person's own daily record
// ([ReadDaily]), twelve typed monthly means, or only frost dates. What is nearer to
// the person wins; what is missing is estimated and carries a source of status
// estimated into every figure that rests on it. Height and the spot ([Climate.At])
// move all temperatures by a constant: minima and maxima each by their own, so that
// the odds at a threshold are those of the station at a threshold moved the other
// way. Cooling with height is 6.5 K/km by default (ICAO standard atmosphere).
//
// # What a record leaves behind
//
// [Record.Digest] brings a daily record down to some sixty lines that a plan can hold:
// means and scatter of the months, the cold seasons one by one, the record's own dates
// of freeze at thresholds 1.1 K apart and levels from 1 to 99 %, and days above limits a
// degree apart. [New] makes a climate of it: the dates that it holds come back to the
// day, those between run straight from threshold to threshold and on the normal scale
// from level to level, 1 to 3 days off in the mean of a series (the tests print each).
// Odds of hot runs are those of the chain of days with the record's own scatter and
// persistence, up to 0.23 off on single days and 0.12 at the end of the year.
//
// # Daily normals
//
// [Smooth] gives, of all yearly curves whose mean over each month is the month's,
// the one with the least sum of squared second differences: the periodic, discrete
// form of a mean-preserving smoothing spline (the idea of Epstein 1991, J. Climate
// 4:365, who used harmonics, and of Rymes and Myers 2001, Solar Energy 71:225; the
// closed form here is elementary). The year has 365 days; 29 February lies between
// its neighbours, as in NOAA's daily normals.
//
// # Odds of freeze
//
// Definitions and convention are NOAA's (U.S. Climate Normals documentation). The
// cold season runs from 1 August to 31 July, south of the equator from 1 February.
// The p date of the last freeze is the day on or after which it falls with odds p,
// that of the first freeze the day on or before which it falls; 10 % is the
// cautious date of both. Reaching the threshold counts. Dates are among the seasons
// with a freeze and are not stated below 10 % of seasons ([TooRare]); [FreezeOdds.SafeFrom]
// and [FreezeOdds.SafeUntil] are over all years and always answer.
//
// From a daily record: the exact expectation of NOAA's own method, which draws
// thousands of years at random, each month from a random year and moved by up to 14
// days; see recordOdds. Against NOAA's dates 1981-2010 it is off by 74 days summed
// over 22 dates of six stations, plain percentiles of the seasons by 93 (the test
// prints each); 50 % within 6 days, 90 % within 5, where the record has 28 or more
// whole seasons and NOAA's own was not corrected away from it (Paso Robles in
// spring: 12 days). A season counts when at most 10 minima are missing; eight seasons
// are needed.
//
// From published or typed dates: the level of the smooth curve of minima on each
// date, less the threshold, is taken as a margin; between dates the odds run straight
// on the normal scale of the margin, and at another threshold the margins stay. So
// dates of different thresholds and odds never cross. From NOAA's 50 and 90 % dates
// at 32 °F alone, its complete tables for 16 to 36 °F and 10 to 90 % come back within
// 7 days, within 3 at most levels (Lebanon NH, Westchester NY).
//
// From means alone: the same with margins from a calibration. It rests on 245 US
// stations with NOAA's dates 1981-2010 and means mostly of 2003-2021, and twelve
// daily series of six countries at three thresholds. The margin of the even date is
// a line in latitude, height and the drop of the yearly extreme below the coldest
// month; its scatter grows with that drop. The rest is 0.7 to 1.2 K, a week in an
// ordinary spring and several weeks in an even, mild winter, which
// [FreezeDate.Uncertainty] states. Mean error at the US stations: 6 days in spring,
// 5 in autumn. No odds pass those with which the yearly extreme reaches the
// threshold (Gumbel's distribution), which keeps frost-free places free of frost.
//
// # Extremes, heat, sun
//
// Hardiness zones are the bands of the US map applied to the mean yearly lowest
// temperature: measured, or the coldest month less the drop of up to three neighbours
// (1.7 K root mean square), or of a line by the coldest month (2.6 K). Heat zones are
// the American Horticultural Society's by days above 30 °C: counted, or estimated
// from the normals with a normal scatter (2 days off at five series). Day length is
// Meeus's, within 0.1 minute of an almanac library below the polar circles; radiation
// and evapotranspiration are FAO-56's (Allen et al. 1998), whose equations are less
// sure beyond 55° of latitude.
//
// # Seasons
//
// [Climate.Seasons] reads the year by [SeasonRules]; each rule's ground is in its
// trace. Cool-season annuals go out when the daily mean allows growth and freezes
// that kill hardened plants are past at the risk; warm-season annuals when nights
// are warm and tender plants safe, and where winters are mild not before nights have
// risen; the autumn display when nights turn cool or frost nears, but not in the
// heat; the winter display when growth ends. Year-to-year differences move the gates
// with the risk. A season that does not exist says why. The rules are judgements that
// agree with the extension guidance they were read from; they know no plant, which
// the rotation does.
//
// # Limits
//
// Periods of the table differ (see data/README); its airports are colder by night
// than towns. Spots' offsets and the root zone of pots are judgements with stated
// formulas: a thermometer at the spot is better. Odds take cold spells of different
// months for independent. Nothing here is a forecast.
package climate
