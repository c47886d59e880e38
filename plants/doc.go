// Package plants is the plant book: what can be planted, with the facts that the
// planner needs and where each fact is from.
//
// A [Book] is a list of plants with the tables they point into: sold sizes,
// disease groups and sources. [Builtin] is the book that comes with the program;
// it is read from the YAML files in data, one for each group of plants. A
// person's own book ([Own]) adds plants to it and overrides single values; it has
// the same format and is checked by the same rules.
//
// Every value has a [Provenance]: a published source, common practice, an
// estimate, or memory. Where published sources contradict each other the plant
// keeps all versions with the reason for the choice ([Conflict]).
//
// # Files
//
// A book file is a YAML mapping of plants, sizes, diseases, sources and
// unless_said. A plant is written as its id and its values under the names of
// [Field]; "from" says where values are from that do not stand on what
// unless_said says of them:
//
//	plants:
//	  - id: pansy
//	    heat_limit: 29 C
//	    without: [root_zone_limit]
//	    from: {heat_limit: {status: memory, note: three summers on the roof}}
//
// In a person's own book a plant of the built-in one needs only the values that
// differ, and "without" takes values away; a new plant must be whole. Anchors,
// unknown keys, values without units and files beyond any real book are refused,
// each fault with its line and column.
//
// # Method
//
// Temperatures are air temperatures in °C at the plant, but for the root-zone
// limit. The lowest temperature is that of a hardened plant in a pot; for plants
// that overwinter it is two USDA zones above the plant's own zone, the two-zone
// rule of nursery practice. Temperature classes are those of Michigan State
// University (base temperature to 3.9 °C, 4.4 to 7.2 °C, 7.8 °C and above).
// Disease groups and the waiting times between hosts follow the extension
// literature named in data/diseases.yaml; the waiting times for flowers are
// carried over from the rotation of vegetable families.
//
// # Limits
//
// Most figures are editable defaults from memory and say so. Toxicity is what
// secondary copies of the lists say: a plant that is not listed is not called
// safe. Names of plants and the remarks beside values are in English.
package plants
