package plants

import (
	"slices"

	"fourturn/planner/quantity"
	catalogue "fourturn/plants"
)

// Filter is one thing that can be asked of a plant.
type Filter int

// The filters in the order in which the room shows them.
const (
	BySeason Filter = iota
	ByRole
	ByLight
	ByWater
	ByColour
	ByHeight
	ByListing
	ByPlace
	filterCount
)

// Filters lists the filters in order.
var Filters = [...]Filter{BySeason, ByRole, ByLight, ByWater, ByColour, ByHeight, ByListing, ByPlace}

var filterLabels = map[Filter]string{
	BySeason: "plant_book.season", ByRole: "plant_book.role", ByLight: "plant_book.light", ByWater: "plant_book.water",
	ByColour: "plant_book.colour", ByHeight: "plant_book.height", ByListing: "plant_book.listing", ByPlace: "plant_book.place",
}

// Label returns the name of a filter.
func (s *Screen) Label(f Filter) string { return s.words.T(filterLabels[f]) }

// Filter returns what can be asked by a filter, "any" first, with what is asked.
func (s *Screen) Filter(f Filter) Choice {
	c := Choice{Options: []string{s.words.T("plant_book.any")}, Chosen: s.filter[f]}
	switch f {
	case BySeason:
		c.Options = append(c.Options, named(s, catalogue.Seasons[:])...)
	case ByRole:
		c.Options = append(c.Options, named(s, catalogue.Roles[:])...)
	case ByLight:
		c.Options = append(c.Options, named(s, catalogue.Lights[:])...)
	case ByWater:
		c.Options = append(c.Options, named(s, catalogue.Levels[:])...)
	case ByColour:
		c.Options = append(c.Options, named(s, catalogue.Colours[:])...)
	case ByHeight:
		low, high := s.words.Length(lowPlants, s.units()), s.words.Length(highPlants, s.units())
		c.Options = append(c.Options,
			s.words.T("plant_book.height_below", map[string]any{"height": low}),
			s.words.T("plant_book.height_below", map[string]any{"height": high}),
			s.words.T("plant_book.height_above", map[string]any{"height": high}))
	case ByListing:
		c.Options = append(c.Options, s.words.T("plant_book.pets_non_toxic"), s.words.T("plant_book.pets_not_harmful"), s.words.T("plant_book.pets_harmful"))
	case ByPlace:
		c.Options = append(c.Options, s.words.T("plant_book.lives_now"))
	default:
		panic("plants: no such filter")
	}
	return c
}

// keyed is a word of a vocabulary of the book.
type keyed interface{ Key() string }

func named[T keyed](s *Screen, list []T) []string {
	names := make([]string, len(list))
	for i, v := range list {
		names[i] = s.words.T(v.Key())
	}
	return names
}

// Heights that part small pots' fillers, middling plants and tall ones: a judgement.
const (
	lowPlants  = 30 * quantity.Centimetre
	highPlants = 60 * quantity.Centimetre
)

// SetFilter asks for the option of a filter; 0 asks for nothing.
func (s *Screen) SetFilter(f Filter, i int) {
	if i < 0 || i >= len(s.Filter(f).Options) || s.filter[f] == i {
		return
	}
	s.filter[f] = i
	s.Update()
}

// Filtered reports whether anything is asked, by name or by a filter.
func (s *Screen) Filtered() bool { return s.query != "" || s.filter != [filterCount]int{} }

// Clear asks for nothing any more, so that every plant is shown.
func (s *Screen) Clear() {
	s.query, s.filter = "", [filterCount]int{}
	s.Update()
}

var pets = []catalogue.Creature{catalogue.Dogs, catalogue.Cats}

// asked returns what is asked as a filter of the book.
func (s *Screen) asked() *catalogue.Filter {
	f := &catalogue.Filter{
		Seasons: one(catalogue.Seasons[:], s.filter[BySeason]),
		Roles:   one(catalogue.Roles[:], s.filter[ByRole]),
		Light:   one(catalogue.Lights[:], s.filter[ByLight]),
		Water:   one(catalogue.Levels[:], s.filter[ByWater]),
		Colours: one(catalogue.Colours[:], s.filter[ByColour]),
	}
	switch s.filter[ByHeight] {
	case 1:
		f.Tallest = lowPlants
	case 2:
		f.Tallest = highPlants
	case 3:
		f.Shortest = highPlants
	}
	var suits []func(*catalogue.Plant) bool
	switch s.filter[ByListing] {
	case 1:
		f.NonToxicTo = pets
	case 2:
		f.NotHarmfulTo = pets
	case 3:
		suits = append(suits, harmsPets)
	}
	if s.filter[ByPlace] == 1 {
		suits = append(suits, s.livesNow())
	}
	if len(suits) > 0 {
		f.Suits = func(p *catalogue.Plant) bool {
			return !slices.ContainsFunc(suits, func(suit func(*catalogue.Plant) bool) bool { return !suit(p) })
		}
	}
	return f
}

// one returns the option of a list that is chosen, counted from 1, or nothing.
func one[T any](list []T, chosen int) []T {
	if chosen == 0 {
		return nil
	}
	return list[chosen-1 : chosen]
}

func harmsPets(p *catalogue.Plant) bool {
	return slices.ContainsFunc(pets, func(c catalogue.Creature) bool { return p.Toxicity.For(c).Harmful() })
}
