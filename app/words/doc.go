// Package words turns keys, numbers, dates and measures into what a person reads.
//
// The planner speaks in keys such as "mix.settling" and in numbers with units.
// Here they become sentences in the person's language and measures in the
// person's units. A [Words] is one language with its habits of writing numbers and
// dates; it never changes and may be used from anywhere.
//
// # Catalogues
//
// The texts of a language lie in translations/<language>/<area>.json, one flat
// JSON object a file. A key begins with its area:
//
//	{"due.pots#one": "{count} pot", "due.pots#other": "{count} pots"}
//
// Placeholders are named, so that a translation may reorder them. A key with a
// "#" carries one plural form; the forms are the categories of Unicode's CLDR
// ("one", "few", "many", "other"), chosen by the argument count. English is the
// language that holds every key; a key that another language lacks is shown in
// English, and a key that no language has is shown in ⟦ ⟧, so that it is seen.
//
// Tests read the sources of the program and fail on a key that has no text, on a
// text that no source mentions, and on placeholders that differ from the English.
package words
