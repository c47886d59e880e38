// Package quantity holds the units of the planner and how people write them.
//
// Inside, a [Length] is in metres, a [Volume] in litres, a [Mass] in kilograms
// and a [Temperature] in degrees Celsius. Outside, a person reads and writes
// metric or US customary units, either way at any time: "14 in", "35 cm",
// "1.5 cu ft", "6 dry qt". The US dry quart and the US liquid quart are different
// units and always carry their names.
//
// A number may have decimals ("1.5", "1,5"), a fraction ("6 1/2", "6½") and groups of
// thousands where they are plain ("1,234.5"). What could be read in two ways is
// refused; a [Reader] that knows the habits of a language refuses less. Exponents are
// not read.
//
// Unit values are exact and come from NIST Handbook 44, appendix C (inch 25.4 mm,
// gallon 231 in³, bushel 2150.42 in³, avoirdupois pound 0.45359237 kg), but for
// the trade gallon, a trade measure of 3 liquid quarts (J. Environ. Hort. 18:188,
// 2000).
package quantity
