package planfile

import "maps"

// texts are the English words for every code, with {named} arguments. The
// surface has them in every language; these are for errors in a log, and a test
// holds the two equal.
var texts = map[string]string{
	"planfile.alias":                  "anchors and aliases (& and *) are not used in plans; write the value out",
	"planfile.ambiguous_unit":         `"{text}": {unit} can be dry or liquid; write "dry qt" or "liq qt"`,
	"planfile.analysis":               `"{text}" is not an analysis; write N-P2O5-K2O in per cent, such as 14-14-14`,
	"planfile.bad_version":            `"{text}" is not a version of the plan format`,
	"planfile.currency":               `"{text}" is not a currency code; write three capital letters, such as EUR`,
	"planfile.duplicate_id":           `"{id}" stands here twice; an id may stand only once`,
	"planfile.duplicate_key":          `"{key}" stands here twice`,
	"planfile.empty":                  "a value is missing; fill it in or remove the key",
	"planfile.id_empty":               "an id is empty",
	"planfile.id_not_allowed":         `"{id}" is not an id; use letters, digits, - and _, beginning with a letter or digit`,
	"planfile.key_not_text":           "a key must be a word",
	"planfile.missing":                `"{key}" is missing`,
	"planfile.no_plan":                "this is not a plan: a plan is a YAML mapping that begins with fourturn: 1",
	"planfile.no_unit":                `"{text}" has no unit; write it as in {example}`,
	"planfile.no_version":             "this is not a plan: the key fourturn with the version of the format is missing",
	"planfile.not_a_date":             `"{text}" is not a day written as YYYY-MM-DD in the years 1900 to 2399`,
	"planfile.not_a_month_day":        `"{text}" is not a day of the year written as MM-DD`,
	"planfile.not_a_number":           `"{text}" is not a number; write it as in {example}`,
	"planfile.not_utf8":               "the file is not UTF-8 text; save it as UTF-8",
	"planfile.not_utf8_text":          "the text holds bytes that are not UTF-8",
	"planfile.not_whole":              `"{text}" is not a whole number`,
	"planfile.range":                  "allowed is {lowest} to {highest}",
	"planfile.tag":                    "tags (!) are not used in plans",
	"planfile.too_big":                "the file is larger than {limit} MB and was not read",
	"planfile.too_deep":               "this is nested deeper than a plan ever is",
	"planfile.too_large":              `"{text}" is too large a number`,
	"planfile.too_long":               "this is longer than {longest} characters",
	"planfile.too_many_nodes":         "the file holds more entries than a plan may have and was not read",
	"planfile.two_documents":          "a second document begins here; a plan file holds one",
	"planfile.unknown_key":            `unknown key "{key}"`,
	"planfile.unknown_key_near":       `unknown key "{key}"; did you mean "{nearest}"?`,
	"planfile.unknown_reference":      `"{id}" is not in {section}`,
	"planfile.unknown_reference_near": `"{id}" is not in {section}; did you mean "{nearest}"?`,
	"planfile.unknown_unit":           `"{text}": "{unit}" is not a unit here; write it as in {example}`,
	"planfile.unknown_word":           `"{text}" is not one of {words}`,
	"planfile.unknown_word_near":      `"{text}" is not one of {words}; did you mean "{nearest}"?`,
	"planfile.wrong_type.flag":        `"{found}" stands where true or false is needed`,
	"planfile.wrong_type.list":        `"{found}" stands where a list is needed`,
	"planfile.wrong_type.mapping":     `"{found}" stands where keys with values are needed`,
	"planfile.wrong_type.text":        "a {found} stands where a single value is needed",
	"planfile.not_yaml":               "this is not YAML: {said}",
}

// Texts returns a copy of the English words for every code of a [Problem].
func Texts() map[string]string { return maps.Clone(texts) }
