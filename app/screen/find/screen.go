// Package find looks for everything by name while one types: pots, clients, plants,
// recipes, products, sites, spots, rooms and actions.
//
// It draws nothing. Capitals, accents and the signs between words do not matter, and
// each typed word must answer somewhere. What answers is in order of how well: by
// its own name before what is said of it, from the beginning before from the middle.
package find

import (
	"slices"
	"strings"

	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/plants"
)

// Session is the open plan with what is worked out for it.
type Session = session.Session[*planner.Outlook]

// Kind says what was found.
type Kind string

// The kinds, in the order in which they stand where names answer equally well.
const (
	Pot     Kind = "pot"
	Client  Kind = "client"
	Plant   Kind = "plant"
	Recipe  Kind = "recipe"
	Product Kind = "product"
	Site    Kind = "site"
	Spot    Kind = "spot"
	Room    Kind = "room"
	Action  Kind = "action"
)

// Hit is one thing that was found.
type Hit struct {
	Kind   Kind
	Title  string // its name
	About  string // what it is, in a line
	Keys   string // the keys that do the same, or ""
	Room   string // the room to go to, or "" for an action
	ID     string // what to select there
	Action string // the name of the action to do, or ""
}

// Around is what the window offers beside the plan.
type Around struct {
	Rooms   []Named // the rooms, by their keys
	Actions []Named // what can be done now
}

// Named is a room or an action.
type Named struct{ Name, Label, Keys string }

// Screen is a search. It knows the plan as it was when the search began.
type Screen struct {
	entries []entry
	typed   string
	hits    []Hit
	total   int
}

// most is how many hits are shown; who sees that many types another letter.
const most = 60

// entry is one thing that can be found.
type entry struct {
	hit   Hit
	title string // folded
	also  string // other folded words that it answers to
}

// New begins a search in the plan of a session and in a plant book.
func New(s *Session, w *words.Words, book *plants.Book, around Around) *Screen {
	c := collector{plan: s.Plan(), words: w}
	c.addPots()
	c.addPlants(book)
	c.addRecipes(book)
	c.addProducts()
	c.addPlaces()
	c.addAround(around)
	screen := &Screen{entries: c.entries}
	screen.Search("")
	return screen
}

// Search looks for what was typed. Nothing typed shows the rooms and what can be
// done.
func (s *Screen) Search(typed string) {
	s.typed = typed
	wanted := strings.Fields(words.Fold(typed))
	type ranked struct {
		index, rank int
	}
	var found []ranked
	for i := range s.entries {
		rank := s.entries[i].rank(wanted)
		if rank == nowhere {
			continue
		}
		if s.entries[i].hit.Kind == Plant {
			rank += behind
		}
		found = append(found, ranked{i, rank})
	}
	// The entries stand by kind, and in the order of the plan.
	slices.SortStableFunc(found, func(a, b ranked) int { return a.rank - b.rank })
	s.total = len(found)
	s.hits = make([]Hit, 0, min(most, len(found)))
	for _, f := range found[:min(most, len(found))] {
		s.hits = append(s.hits, s.entries[f.index].hit)
	}
}

// Typed returns what is looked for.
func (s *Screen) Typed() string { return s.typed }

// Hits returns what was found, the best first, at most sixty of them.
func (s *Screen) Hits() []Hit { return s.hits }

// More returns how many were found beyond [Screen.Hits].
func (s *Screen) More() int { return s.total - len(s.hits) }

// How well something answers; lower is better.
const (
	isName       = iota // what is typed is the name
	startsName          // the name begins with it
	startsWords         // each typed word begins a word of the name
	insideName          // each is somewhere in the name
	startsAround        // each begins a word of the name or of what is said beside it
	insideAround        // each is somewhere in these
	nowhere      = 9    // past any of these, also for a plant
)

// behind is by how much the plant book stands behind what the plan holds, so that a
// few letters find one's own pots among the names of all plants.
const behind = 1

// rank says how well an entry answers. Nothing wanted is answered by rooms and
// actions alone.
func (e *entry) rank(wanted []string) int {
	if len(wanted) == 0 {
		if e.hit.Kind == Room || e.hit.Kind == Action {
			return isName
		}
		return nowhere
	}
	whole := strings.Join(wanted, " ")
	switch {
	case e.title == whole:
		return isName
	case strings.HasPrefix(e.title, whole):
		return startsName
	case all(wanted, func(w string) bool { return startsWord(e.title, w) }):
		return startsWords
	case all(wanted, func(w string) bool { return strings.Contains(e.title, w) }):
		return insideName
	case all(wanted, func(w string) bool { return startsWord(e.title, w) || startsWord(e.also, w) }):
		return startsAround
	case all(wanted, func(w string) bool { return strings.Contains(e.title, w) || strings.Contains(e.also, w) }):
		return insideAround
	}
	return nowhere
}

func all(list []string, holds func(string) bool) bool {
	return !slices.ContainsFunc(list, func(w string) bool { return !holds(w) })
}

// startsWord reports whether a word of a folded text begins with another.
func startsWord(text, word string) bool {
	return strings.HasPrefix(text, word) || strings.Contains(text, " "+word)
}
