package plants

import (
	"strings"

	"fourturn/planner/working"
)

// Provenance says where a value is from. Cites are ids of [Citation]s in the book.
type Provenance struct {
	Status working.Status
	Cites  []string
	Note   string
}

// Citation is a source with its full reference.
type Citation struct {
	ID    string
	Cite  string // as one would print it
	Where string // address, or "" for what was not opened
	Grade Grade
}

// Grade says what kind of source it is.
type Grade string

// The grades of sources, firmest first.
const (
	Scholarly  Grade = "scholarly"  // journal, university, government
	TradePress Grade = "trade"      // trade press, nursery, newspaper
	Secondary  Grade = "secondary"  // a copy or a summary of the source that counts
	LowGrade   Grade = "low"        // general web
	NotOpened  Grade = "not_opened" // named from memory
)

// Grades lists the grades in order.
var Grades = [...]Grade{Scholarly, TradePress, Secondary, LowGrade, NotOpened}

// Conflict keeps the versions of a value on which sources disagree.
type Conflict struct {
	Field    Field
	Versions []Version
	Why      string // why the book's value was chosen
}

// Version is what one source says.
type Version struct {
	Says  string
	Cites []string
}

// ground holds the provenance of one plant's values: those said beside the
// plant, and below them those of its file.
type ground struct {
	said map[Field]Provenance
	file map[Field]Provenance
}

// anyField is the key under which a file says what holds for all other values.
const anyField Field = "any"

// Provenance returns where the plant's value for a field is from. A part of a
// value, such as "sold.quart", falls back on the whole, "sold".
func (p *Plant) Provenance(f Field) Provenance {
	if p.ground == nil {
		return Provenance{Status: working.Entered}
	}
	whole, _, _ := strings.Cut(string(f), ".")
	for _, table := range []map[Field]Provenance{p.ground.said, p.ground.file} {
		for _, key := range []Field{f, Field(whole)} {
			if said, ok := table[key]; ok {
				return said
			}
		}
	}
	if rest, ok := p.ground.file[anyField]; ok {
		return rest
	}
	return Provenance{Status: working.Entered}
}

// Soft reports whether the value does not rest on a checked source, so that it
// is shown as an estimate that a person may override.
func (p *Plant) Soft(f Field) bool {
	return working.Source{Status: p.Provenance(f).Status}.Soft()
}

// Source returns where a value of the plant is from with the citations written
// out, as a working wants it.
func (b *Book) Source(p *Plant, f Field) working.Source {
	return b.written(p.Provenance(f))
}

func (b *Book) written(provenance Provenance) working.Source {
	cites := make([]string, 0, len(provenance.Cites))
	for _, id := range provenance.Cites {
		if c, ok := b.Citation(id); ok {
			cites = append(cites, c.Cite)
		}
	}
	return working.Source{Status: provenance.Status, Cite: strings.Join(cites, "; ")}
}

// statuses are the words that a book file may give as the ground of a value.
var statuses = [...]working.Status{
	working.Published, working.Derived, working.Estimated, working.CommonPractice,
	working.Memory, working.Judgement, working.Entered,
}
