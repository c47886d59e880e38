package planfile

import (
	"fourturn/planner/civil"
	"fourturn/planner/working"
)

// Content is what stands at one place of a plan, for a person to read: a single
// value, or the parts of a pot, a planting and the like. A nil Content is nothing.
type Content struct {
	Key    string         // of the place: a field, an id, or the name of a list item
	Item   bool           // the key is that of an item of a table or list
	Value  working.Value  // of a single value: a measure, a day, or a text
	Yearly civil.MonthDay // of a single value that is a day of every year
	Names  string         // the section of the plan that a single value is an id of, such as "spots"; or ""
	Fixed  bool           // a single value that is one of the words of the format
	Parts  []Content      // of all that is not a single value, in the order of the file
	text   string
}

// String writes the content as the file shows it, on one line.
func (c *Content) String() string {
	if c == nil {
		return ""
	}
	return c.text
}

// contentOf returns what a value says; nil for nothing.
func contentOf(key string, item bool, v *value) *Content {
	if v == nil {
		return nil
	}
	c := &Content{Key: key, Item: item, Names: string(v.names), Fixed: v.fixed, Yearly: v.yearly, text: shown(v)}
	switch {
	case v.kind != scalarKind:
		c.Parts = make([]Content, len(v.entries))
		for i, e := range v.entries {
			c.Parts[i] = *contentOf(shownKey(e.key), v.kind != recordKind, e.value)
		}
	case v.measure != nil && v.measure.shown:
		c.Value = working.Text(v.scalar())
	case v.measure != nil:
		c.Value = working.Number(v.number, v.measure.unit)
	case v.date != 0:
		c.Value = working.Date(v.date)
	default:
		c.Value = working.Text(v.text)
	}
	return c
}

// Step is one step of the way to a part of a plan.
type Step struct {
	Key  string
	Item bool // the key is the id or the name of an item of a table or list
}
