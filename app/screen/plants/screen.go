// Package plants is the plant book: what can be planted, found by name and by what is
// asked of it, with the facts of the plant that is chosen, where each is from, and
// what must be said before it is planted.
//
// It draws nothing. A plant that no list of poisonous plants names is called "not
// listed", whatever else is known of it. Whether a plant can stand outside now is read
// off the climate of a site (lives.go), without the shelter of a single spot.
package plants

import (
	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/quantity"
	catalogue "fourturn/plants"
)

// Session is the open plan with what is worked out for it.
type Session = session.Session[*planner.Outlook]

// Screen is the plant book with what is looked for in it.
type Screen struct {
	session *Session
	words   *words.Words
	book    *catalogue.Book
	index   *catalogue.Index

	query      string
	filter     [filterCount]int // numbers of the chosen options; 0 is "any"
	order      catalogue.Order  // empty: the best answers first, or by name
	descending bool
	shown      []*catalogue.Plant
	faults     []string // of the person's own book

	chosen   string // id of the plant that is looked at
	compared []string
	pot      string // id of the pot that plants go into
	season   planner.Season
}

// New returns the room of a session with the book that comes with the program.
func New(s *Session, w *words.Words) *Screen {
	book, err := catalogue.Builtin()
	if err != nil {
		panic("plants: the built-in plant book: " + err.Error())
	}
	return WithBook(s, w, book)
}

// WithBook returns the room of a session with a book, such as a person's own on top
// of the built-in one. Faults say what is wrong with their own where it could not be
// read, one a line with its place.
func WithBook(s *Session, w *words.Words, book *catalogue.Book, faults ...string) *Screen {
	screen := &Screen{session: s, words: w, book: book, index: catalogue.NewIndex(book.Plants()), faults: faults}
	screen.Update()
	return screen
}

// Choice is a list to choose from; Chosen is -1 where nothing is.
type Choice struct {
	Options []string
	Chosen  int
}

func (s *Screen) units() quantity.System { return s.session.Plan().Units }

// Update looks again for what is asked, as after the plan or its outlook changed.
func (s *Screen) Update() {
	filter := s.asked()
	hits := s.index.Find(s.query)
	found := make([]*catalogue.Plant, 0, len(hits))
	for _, hit := range hits {
		if filter.Accepts(hit.Plant) {
			found = append(found, hit.Plant)
		}
	}
	if by, sorted := s.sortedBy(); sorted {
		found = catalogue.Sorted(found, by, s.descending)
	}
	s.shown = found
}

// mostFaults is how many faults are shown: who mends these sees the next.
const mostFaults = 5

// Faults says what is wrong with the person's own book, or is empty. The built-in
// book is shown then.
func (s *Screen) Faults() (title string, lines []string) {
	if len(s.faults) == 0 {
		return "", nil
	}
	return s.words.T("plant_book.own_faulty", words.A{"count": len(s.faults)}), s.faults[:min(len(s.faults), mostFaults)]
}

// Search looks for names: common, botanical, former and of families. Accents and case
// do not matter.
func (s *Screen) Search(typed string) {
	if typed != s.query {
		s.query = typed
		s.Update()
	}
}

// Query returns what is looked for.
func (s *Screen) Query() string { return s.query }

// About says how many plants are shown of how many.
func (s *Screen) About() string {
	all := len(s.book.Plants())
	if len(s.shown) == all {
		return s.words.T("plant_book.about_all", words.A{"count": all})
	}
	return s.words.T("plant_book.about_some", words.A{"count": all, "shown": s.words.Count(len(s.shown))})
}

// Rows returns how many plants are shown.
func (s *Screen) Rows() int { return len(s.shown) }

// Row is one plant in the list.
type Row struct {
	ID        string
	Plant     *catalogue.Plant // to be drawn
	Name      string
	Botanical string
	Height    string // of the tallest kinds
	Night     string // nights from which it may be planted out
	Listed    string // who it is listed as harmful to
	Harmful   bool   // whether it is listed as harmful, so that a sign goes with it
}

// Row writes one plant out.
func (s *Screen) Row(i int) Row {
	p := s.shown[i]
	row := Row{ID: p.ID, Plant: p, Name: p.Name(), Height: s.words.Length(p.Height.High, s.units())}
	if len(p.Botanical) > 0 {
		row.Botanical = p.Botanical[0]
	}
	if night, ok := p.PlantingOutNight.Get(); ok {
		row.Night = s.words.Temperature(night, s.units())
	}
	row.Listed, row.Harmful = s.listedShort(p)
	return row
}

// Choose looks at a plant by its id. It reports whether the book has it.
func (s *Screen) Choose(id string) bool {
	_, ok := s.book.Plant(id)
	if ok {
		s.chosen = id
	}
	return ok
}

// ChosenRow returns where the chosen plant stands in the list, or -1.
func (s *Screen) ChosenRow() int {
	for i, p := range s.shown {
		if p.ID == s.chosen {
			return i
		}
	}
	return -1
}

// Plant returns the chosen plant, to be drawn, or nil.
func (s *Screen) Plant() *catalogue.Plant { return s.plant() }

// plant returns the chosen plant, or nil.
func (s *Screen) plant() *catalogue.Plant {
	p, _ := s.book.Plant(s.chosen)
	return p
}
