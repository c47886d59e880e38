package versions

import (
	"strings"

	"fourturn/app/words"
	"fourturn/planner/planfile"
	"fourturn/planner/working"
)

// longestContent is how many letters a description of a whole thing may take.
const longestContent = 400

// Contents writes what stands at one place in several versions, in the same order.
// Values that differ are never written the same: where rounding would hide the
// difference, the file's own digits stand.
func (r *Reader) Contents(steps []planfile.Step, versions ...*planfile.Content) []string {
	path := keys(steps)
	written := make([]string, len(versions))
	for i, c := range versions {
		written[i] = r.content(path, c)
		if c == nil {
			written[i] = r.nothing(path, versions)
		}
	}
	for i, c := range versions {
		for k, other := range versions {
			if c != nil && other != nil && c.String() != other.String() && written[i] == written[k] {
				written[i], written[k] = exact(c), exact(other)
			}
		}
	}
	return written
}

func exact(c *planfile.Content) string { return shorten(c.String()) }

// nothing says that a version has nothing at a place where others have something.
func (r *Reader) nothing(path []string, versions []*planfile.Content) string {
	for _, c := range versions {
		switch {
		case c == nil:
		case c.Fixed && c.Value.Text == "true":
			return r.words.T("versions.no")
		case c.Item:
			return r.words.T("versions.not_there")
		}
	}
	return r.words.T("versions.nothing")
}

// keys are the steps that are no items.
func keys(steps []planfile.Step) (path []string) {
	for _, step := range steps {
		if !step.Item {
			path = append(path, step.Key)
		}
	}
	return path
}

// plantKeys are the fields that hold ids of the plant book.
var plantKeys = map[string]bool{"plant": true, "liked_plants": true, "refused_plants": true}

// content writes one value, or the parts of a thing.
func (r *Reader) content(path []string, c *planfile.Content) string {
	switch {
	case c == nil:
		return ""
	case c.Parts != nil:
		return shorten(r.parts(path, c))
	case c.Names != "":
		return r.name(c.Names, c.Value.Text)
	case !c.Yearly.IsZero():
		return r.words.MonthDay(c.Yearly)
	case c.Fixed && c.Value.Text == "true":
		return r.words.T("versions.yes")
	case c.Fixed:
		return r.fixed(path, c.Value.Text)
	case len(path) > 0 && plantKeys[path[len(path)-1]]:
		return r.plantName(c.Value.Text)
	case len(path) > 0 && path[len(path)-1] == "shelter" && r.words.Has("climate.spot_"+c.Value.Text):
		return r.words.T("climate.spot_" + c.Value.Text)
	case c.Value.Text != "" || c.Value == working.Text(""):
		return shorten(strings.Join(strings.Fields(c.Value.Text), " ")) // on one line; never a key
	}
	return r.words.Named(strings.Join(path, "."), c.Value, r.units)
}

// parts writes the parts of a thing in a row. Items of a list come as a list does.
func (r *Reader) parts(path []string, c *planfile.Content) string {
	var all []string
	for i := range c.Parts {
		part := &c.Parts[i]
		if part.Item {
			all = append(all, r.listed(path, part))
			continue
		}
		at := append(path[:len(path):len(path)], part.Key)
		switch written := r.content(at, part); {
		case part.Key == "id": // means nothing to a person
		case part.Fixed && part.Value.Text == "true":
			all = append(all, r.label(at))
		case written != "":
			all = append(all, r.words.T("versions.part", words.A{"field": r.label(at), "value": written}))
		}
	}
	return strings.Join(all, "; ")
}

// listed writes an item of a table or list by its name, with what is said of it.
func (r *Reader) listed(path []string, item *planfile.Content) string {
	if item.Names != "" {
		return r.name(item.Names, item.Value.Text)
	}
	if item.Parts == nil {
		return r.content(path, item)
	}
	name, said := "", *item
	if len(path) > 0 {
		name = r.item(path, item.Key)
	}
	said.Parts = nil
	for _, part := range item.Parts {
		if part.Key != "plant" { // the item's name already
			said.Parts = append(said.Parts, part)
		}
	}
	about := r.parts(path, &said)
	switch {
	case name == "":
		return about
	case about == "":
		return name
	}
	return r.words.T("versions.listed", words.A{"name": name, "about": about})
}

// shorten cuts what is too long for a row.
func shorten(text string) string {
	letters := []rune(text)
	if len(letters) <= longestContent {
		return text
	}
	return string(letters[:longestContent-1]) + "…"
}
