package planfile

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"fourturn/planner"
	"fourturn/planner/finding"
)

// Check reports everything for which a plan could not be written to a file and
// read back: ids that are missing, doubled or not allowed, references to things
// that are not in the plan, numbers out of range, and text that is too long. The
// error is [Problems], or nil. What is merely unwise in a plan is not its
// business.
func Check(plan *planner.Plan) error {
	problems := &Problems{}
	checkInto(problems, &Problems{}, nil, plan)
	return problems.orNil()
}

// checkInto adds what Check finds and what it lets pass, but for paths that skip says are known to be
// broken.
func checkInto(problems, warnings *Problems, skip func(finding.Where) bool, plan *planner.Plan) {
	c := &checker{
		writer:   &writer{system: plan.Units},
		problems: problems,
		warnings: warnings,
		skip:     skip,
		ids:      idsOf(plan),
	}
	planForm.check(c, nil, plan)
}

// reference is a kind of thing in the plan that others refer to by id.
type reference string

const (
	siteReference    reference = "sites"
	spotReference    reference = "spots"
	productReference reference = "products"
	recipeReference  reference = "recipes"
	blendReference   reference = "blends"
	potReference     reference = "pots"
)

func idsOf(plan *planner.Plan) map[reference]map[string]bool {
	ids := map[reference]map[string]bool{
		siteReference: {}, spotReference: {}, productReference: {}, recipeReference: {}, blendReference: {}, potReference: {},
	}
	for i := range plan.Sites {
		ids[siteReference][plan.Sites[i].ID] = true
	}
	for i := range plan.Spots {
		ids[spotReference][plan.Spots[i].ID] = true
	}
	for i := range plan.Products {
		ids[productReference][plan.Products[i].ID] = true
	}
	for i := range plan.Blends {
		ids[blendReference][plan.Blends[i].ID] = true
	}
	for i := range plan.Recipes {
		ids[recipeReference][plan.Recipes[i].ID] = true
	}
	for i := range plan.Pots {
		ids[potReference][plan.Pots[i].ID] = true
	}
	return ids
}

// checker collects what is wrong with a plan.
type checker struct {
	writer   *writer
	problems *Problems
	warnings *Problems // broken references of the log
	skip     func(finding.Where) bool
	ids      map[reference]map[string]bool
}

func (c *checker) report(p Problem) {
	if c.skip == nil || !c.skip(p.Where) {
		c.problems.add(p)
	}
}

// within refuses a number that is out of its range or no number at all.
func (c *checker) within(m *measure, at *place, key string, x, lowest, highest float64) {
	if math.IsNaN(x) || x < lowest || x > highest {
		c.report(rangeProblem(m, at.in(key), lowest, highest))
	}
}

// text refuses text that is too long or that no YAML file can hold.
func (c *checker) text(at *place, key, s string, longest int) {
	switch {
	case s == "":
	case longText(s, longest):
		c.report(problem("planfile.too_long", at.in(key), "longest", strconv.Itoa(longest)))
	case !utf8.ValidString(s):
		c.report(problem("planfile.not_utf8_text", at.in(key)))
	}
}

// id refuses names that would not stand as a key, or could be taken for a path.
func (c *checker) id(at *place, id string) {
	switch {
	case id == "":
		c.report(problem("planfile.id_empty", at))
	case longText(id, MaxID):
		c.report(problem("planfile.too_long", at, "longest", strconv.Itoa(MaxID)))
	case !ValidID(id):
		c.report(problem("planfile.id_not_allowed", at, "id", id))
	}
}

// ValidID reports whether an id may stand in a plan: letters and digits of any
// script, hyphens and underscores, beginning with a letter or digit.
func ValidID(id string) bool {
	if id == "" || longText(id, MaxID) {
		return false
	}
	for i, r := range id {
		letter := unicode.IsLetter(r) || unicode.IsDigit(r) || i > 0 && unicode.IsMark(r)
		if r == utf8.RuneError || !letter && (i == 0 || r != '-' && r != '_') {
			return false
		}
	}
	return true
}

// refers refuses an id that names nothing in the plan.
func (c *checker) refers(at *place, kind reference, id string) {
	known := c.ids[kind]
	if known[id] || c.skip != nil && c.skip(finding.Where{string(kind)}) {
		return
	}
	near := ""
	if len(known) <= 1000 && len(c.problems.List) < MaxProblems { // a suggestion is not worth a search through thousands
		all := make([]string, 0, len(known))
		for one := range known {
			all = append(all, one)
		}
		near = nearest(id, all)
	}
	if near != "" {
		c.report(problem("planfile.unknown_reference_near", at, "id", id, "section", string(kind), "nearest", near))
		return
	}
	c.report(problem("planfile.unknown_reference", at, "id", id, "section", string(kind)))
}

func rangeProblem(m *measure, at *place, lowest, highest float64) Problem {
	return problem("planfile.range", at, "lowest", m.format(lowest, 0), "highest", m.format(highest, 0))
}

func numbered(i int) string { return strconv.Itoa(i + 1) }

func pathKey(where finding.Where) string { return strings.Join(where, "\x00") }
