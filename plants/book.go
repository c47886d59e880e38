package plants

// Book is a plant book: plants, and the tables they point into. Books do not
// change; they may be read from any goroutine.
type Book struct {
	plants    []*Plant
	sizes     []Size
	diseases  []Disease
	citations []Citation

	plantAt    map[string]int
	sizeAt     map[string]int
	diseaseAt  map[string]int
	citationAt map[string]int
}

// Plants returns the plants in the order of the book's files, a person's own
// last. The slice and the plants are shared: neither may be changed.
func (b *Book) Plants() []*Plant { return b.plants }

// Plant returns the plant with an id.
func (b *Book) Plant(id string) (*Plant, bool) {
	at, ok := b.plantAt[id]
	if !ok {
		return nil, false
	}
	return b.plants[at], true
}

// Sizes returns the sizes that plants are sold in, smallest root ball first as
// the book lists them. The slice is shared.
func (b *Book) Sizes() []Size { return b.sizes }

// Size returns the size with an id.
func (b *Book) Size(id string) (Size, bool) { return lookup(b.sizes, b.sizeAt, id) }

// Diseases returns the disease groups. The slice is shared.
func (b *Book) Diseases() []Disease { return b.diseases }

// Disease returns the disease group with an id.
func (b *Book) Disease(id string) (Disease, bool) { return lookup(b.diseases, b.diseaseAt, id) }

// Citations returns the sources. The slice is shared.
func (b *Book) Citations() []Citation { return b.citations }

// Citation returns the source with an id.
func (b *Book) Citation(id string) (Citation, bool) { return lookup(b.citations, b.citationAt, id) }

func lookup[T any](all []T, at map[string]int, id string) (T, bool) {
	i, ok := at[id]
	if !ok {
		var none T
		return none, false
	}
	return all[i], true
}
