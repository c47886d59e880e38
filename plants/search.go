package plants

import (
	"slices"
	"strings"
	"unicode"
)

// Index is the names of a list of plants made ready for searching. It does not
// change and may be used from any goroutine.
type Index struct {
	entries []indexed
}

// indexed is one plant with its folded names, the most telling first.
type indexed struct {
	plant *Plant
	names []indexedName
	all   string // every name, to turn most plants away at a glance
}

type indexedName struct {
	text string // folded words with one space between
	rank int    // of the kind of name: 0 the usual one, 1 other common ones, 2 botanical, 3 former, 4 family
}

// Hit is a plant that answers a search. Hits with the lower Rank answer better.
type Hit struct {
	Plant *Plant
	Name  string // the name that answered, folded
	Rank  int
}

// How well a name answers, in steps; the kind of the name ranks within a step.
const (
	wholeName  = 0
	nameStart  = 10
	wordStarts = 20
	inside     = 30
	severally  = 40 // the words answer in different names
	misspelt   = 50
)

// NewIndex makes the names of plants ready for searching.
func NewIndex(plants []*Plant) *Index {
	ix := &Index{entries: make([]indexed, len(plants))}
	for i, p := range plants {
		names := indexedNames(p)
		ix.entries[i] = indexed{plant: p, names: names, all: joinedNames(names)}
	}
	return ix
}

func joinedNames(names []indexedName) string {
	var b strings.Builder
	for _, n := range names {
		b.WriteString(n.text)
		b.WriteByte('\n')
	}
	return b.String()
}

func indexedNames(p *Plant) []indexedName {
	names := make([]indexedName, 0, len(p.Names)+len(p.Botanical)+len(p.Synonyms)+1)
	add := func(text string, rank int) {
		if text = strings.Join(searchWords(text), " "); text != "" {
			names = append(names, indexedName{text, rank})
		}
	}
	for i, n := range p.Names {
		add(n, min(i, 1))
	}
	for _, n := range p.Botanical {
		add(n, 2)
	}
	for _, n := range p.Synonyms {
		add(n, 3)
	}
	add(p.Family, 4)
	return names
}

// searchWords returns the folded words of a name or a query. The × of hybrids is
// left out: people type it, or an x, or nothing.
func searchWords(text string) []string {
	words := strings.FieldsFunc(fold(text), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '\''
	})
	return slices.DeleteFunc(words, func(w string) bool { return w == "x" || w == "'" })
}

// Find returns the plants whose names answer the query, the best first and in
// the order of the index where they answer equally. Common and botanical names,
// former names and families are searched; accents, case and the hybrid sign do
// not matter; every word of the query must answer. Where nothing does, words
// that are a letter off are tried. An empty query returns every plant.
func (ix *Index) Find(query string) []Hit {
	words := searchWords(query)
	if len(words) == 0 {
		hits := make([]Hit, len(ix.entries))
		for i, e := range ix.entries {
			hits[i] = Hit{Plant: e.plant}
		}
		return hits
	}
	hits := ix.scan(func(e indexed) (Hit, bool) { return e.answer(words) })
	if len(hits) == 0 {
		hits = ix.scan(func(e indexed) (Hit, bool) { return e.answerMisspelt(words) })
	}
	return byRank(hits)
}

// byRank sorts hits by rank and keeps the order of equal ones. Ranks are few, so
// that counting beats comparing.
func byRank(hits []Hit) []Hit {
	var before [misspelt + 10]int // hits of lower rank
	for _, h := range hits {
		before[h.Rank+1]++
	}
	for rank := 1; rank < len(before); rank++ {
		before[rank] += before[rank-1]
	}
	out := make([]Hit, len(hits))
	for _, h := range hits {
		out[before[h.Rank]] = h
		before[h.Rank]++
	}
	return out
}

func (ix *Index) scan(answer func(indexed) (Hit, bool)) []Hit {
	var hits []Hit
	for _, e := range ix.entries {
		if hit, ok := answer(e); ok {
			hits = append(hits, hit)
		}
	}
	return hits
}

// answer ranks how well the plant answers the words.
func (e indexed) answer(words []string) (Hit, bool) {
	for _, w := range words {
		if !strings.Contains(e.all, w) {
			return Hit{}, false
		}
	}
	best := Hit{Plant: e.plant, Rank: misspelt}
	query := strings.Join(words, " ")
	for _, n := range e.names {
		if step, ok := n.answer(query, words); ok && step+n.rank < best.Rank {
			best.Rank, best.Name = step+n.rank, n.text
		}
	}
	if best.Rank < misspelt {
		return best, true
	}
	return Hit{Plant: e.plant, Name: e.names[0].text, Rank: severally}, true
}

func (n indexedName) answer(query string, words []string) (step int, ok bool) {
	switch {
	case n.text == query:
		return wholeName, true
	case strings.HasPrefix(n.text, query):
		return nameStart, true
	}
	step = wordStarts
	for _, w := range words {
		at := strings.Index(n.text, w)
		if at < 0 {
			return 0, false
		}
		if at > 0 && n.text[at-1] != ' ' && !strings.Contains(n.text, " "+w) {
			step = inside
		}
	}
	return step, true
}

// answerMisspelt answers where each word is close to the head of a word of one name.
func (e indexed) answerMisspelt(words []string) (Hit, bool) {
	for _, n := range e.names {
		have := strings.Fields(n.text)
		ok := !slices.ContainsFunc(words, func(w string) bool {
			return !slices.ContainsFunc(have, func(h string) bool { return near(w, h) })
		})
		if ok {
			return Hit{Plant: e.plant, Name: n.text, Rank: misspelt + n.rank}, true
		}
	}
	return Hit{}, false
}

// near reports whether the typed word is within a letter of the head of a name's
// word: one letter wrong, missing, too many, or two exchanged. Words of up to
// three letters must be right.
func near(typed, word string) bool {
	t, w := []rune(typed), []rune(word)
	if len(t) < 4 || len(w)+1 < len(t) {
		return false
	}
	i := 0
	for i < len(t) && i < len(w) && t[i] == w[i] {
		i++
	}
	if i == len(t) {
		return true
	}
	head := func(rest []rune, from int) bool {
		return from <= len(w) && len(rest) <= len(w)-from && slices.Equal(rest, w[from:from+len(rest)])
	}
	return head(t[i+1:], i+1) || // wrong
		head(t[i+1:], i) || // too many
		head(t[i:], i+1) || // missing
		i+1 < len(t) && i+1 < len(w) && t[i] == w[i+1] && t[i+1] == w[i] && head(t[i+2:], i+2) // exchanged
}
