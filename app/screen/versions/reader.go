package versions

import (
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/planfile"
	"fourturn/planner/quantity"
)

// Reader reads places and values of a plan in a person's words and units.
type Reader struct {
	words *words.Words
	units quantity.System
	plant func(id string) string
	names map[string]map[string]string // by section and id
}

// NewReader returns a reader of several versions of one plan. A thing is called as in
// the first version that has it; units and currency are those of the first. plant
// returns the name of a plant; nil leaves plants under their ids.
func NewReader(w *words.Words, plant func(id string) string, versions ...*planner.Plan) *Reader {
	r := &Reader{words: w, plant: plant, names: map[string]map[string]string{}}
	if len(versions) > 0 {
		r.units = versions[0].Units
		r.words = w.WithCurrency(versions[0].Currency)
	}
	for _, plan := range versions {
		r.learn(plan)
	}
	return r
}

// learn takes up the names of things.
func (r *Reader) learn(plan *planner.Plan) {
	for i := range plan.Sites {
		r.call("sites", plan.Sites[i].ID, plan.Sites[i].Name)
	}
	for i := range plan.Spots {
		r.call("spots", plan.Spots[i].ID, plan.Spots[i].Name)
	}
	for i := range plan.Products {
		r.call("products", plan.Products[i].ID, plan.Products[i].Name)
	}
	for i := range plan.Recipes {
		r.call("recipes", plan.Recipes[i].ID, plan.Recipes[i].Name)
	}
	for i := range plan.Pots {
		r.call("pots", plan.Pots[i].ID, plan.Pots[i].Name)
	}
	for i := range plan.Log {
		e := &plan.Log[i]
		r.call("log", e.ID, r.words.T("versions.entry", words.A{"date": e.Date, "kind": r.fixed([]string{"log", "kind"}, string(e.Kind))}))
	}
}

func (r *Reader) call(section, id, name string) {
	if r.names[section] == nil {
		r.names[section] = map[string]string{}
	}
	if _, known := r.names[section][id]; !known && name != "" {
		r.names[section][id] = name
	}
}

// name returns what a thing is called, else its id.
func (r *Reader) name(section, id string) string {
	if name, ok := r.names[section][id]; ok {
		return name
	}
	return id
}

// Place says in words which part of a plan is meant: "Gate pot · Summer · Petunia:
// number of plants".
func (r *Reader) Place(steps []planfile.Step) string {
	var things, fields, path []string
	for _, step := range steps {
		if step.Item {
			if name := r.item(path, step.Key); name != "" {
				things = append(things, name)
			}
			fields = nil
			continue
		}
		path = append(path, step.Key)
		fields = append(fields, r.label(path))
	}
	field := strings.Join(fields, ": ")
	switch {
	case len(things) == 0:
		return words.Capital(field)
	case field == "":
		return words.Capital(strings.Join(things, " · "))
	}
	return r.words.T("versions.place", words.A{"thing": words.Capital(strings.Join(things, " · ")), "field": field})
}

// item names an item of the table or list at a path.
func (r *Reader) item(path []string, key string) string {
	list := path[len(path)-1]
	switch list {
	case "plants":
		return r.plantName(key)
	case "plantings":
		return r.fixed([]string{"season"}, key)
	case "rings":
		return "" // they are compared as one
	}
	if heading := "versions.thing." + list; len(path) == 1 && r.words.Has(heading) {
		return r.words.T(heading, words.A{"name": r.name(list, key)})
	}
	return key
}

func (r *Reader) plantName(id string) string {
	if r.plant != nil {
		if name := r.plant(id); name != "" {
			return name
		}
	}
	return id
}

// label is the label of the field at the end of a path of keys without ids.
func (r *Reader) label(path []string) string {
	last := path[len(path)-1]
	for _, key := range []string{
		"versions.field." + strings.Join(path, "."), "versions.field." + last, "vessel.field." + last,
	} {
		if r.words.Has(key) {
			return r.words.T(key)
		}
	}
	return readable(last)
}

// fixed writes one of the words of the format at a path of keys without ids.
func (r *Reader) fixed(path []string, word string) string {
	last := path[len(path)-1]
	for _, key := range []string{
		"versions.word." + strings.Join(path, ".") + "." + word, "versions.word." + last + "." + word,
		"vessel." + last + "." + word, "plan." + last + "." + word, "plants." + last + "." + word,
	} {
		if r.words.Has(key) {
			return r.words.T(key)
		}
	}
	return readable(word)
}

// readable turns a key of the file into words: "mix_since" into "mix since".
func readable(key string) string { return strings.ReplaceAll(key, "_", " ") }
