package plants

import (
	"slices"

	catalogue "fourturn/plants"
)

// Orders returns by what plants can be sorted; the first is how well their names
// answer what is looked for.
func (s *Screen) Orders() Choice {
	c := Choice{Options: []string{s.words.T("plant_book.best_first")}}
	c.Options = append(c.Options, named(s, catalogue.Orders[:])...)
	c.Chosen = slices.Index(catalogue.Orders[:], s.order) + 1
	return c
}

// SetOrder sorts by one of the orders, from its small end.
func (s *Screen) SetOrder(i int) {
	if i < 0 || i > len(catalogue.Orders) {
		return
	}
	s.order, s.descending = "", false
	if i > 0 {
		s.order = catalogue.Orders[i-1]
	}
	s.Update()
}

// sortedBy returns the order of the list, and false where the best answers to what is
// looked for come first.
func (s *Screen) sortedBy() (by catalogue.Order, sorted bool) {
	if s.order != "" {
		return s.order, true
	}
	return catalogue.ByName, s.query == ""
}

// Column is a column of the list.
type Column int

// The columns of the list.
const (
	NameColumn   Column = iota
	ListedColumn        // has no order
	BotanicalColumn
	HeightColumn
	NightColumn
)

var columnOrders = [...]catalogue.Order{
	NameColumn: catalogue.ByName, BotanicalColumn: catalogue.ByBotanical, HeightColumn: catalogue.ByHeight, NightColumn: catalogue.ByNight,
}

// Sort sorts by a column.
func (s *Screen) Sort(c Column, descending bool) {
	if c < 0 || int(c) >= len(columnOrders) || columnOrders[c] == "" {
		return
	}
	s.order, s.descending = columnOrders[c], descending
	s.Update()
}

// Sorted returns the column that the list is sorted by, -1 for none, and whether the
// large end is first.
func (s *Screen) Sorted() (c Column, descending bool) {
	by, sorted := s.sortedBy()
	if !sorted {
		return -1, false
	}
	return Column(slices.Index(columnOrders[:], by)), s.descending
}
