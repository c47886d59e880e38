package climate

import (
	"cmp"
	"slices"
	"strings"
	"sync"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"fourturn/planner/quantity"
)

// Find returns the stations that match what a person types, best first, at most
// limit of them. Accents, capitals and punctuation do not matter, nor whether an
// umlaut is written as one letter or two. Every word must be found in the name,
// the other names, the state or the country. A name that is or begins with the
// text comes first, then one with a word that begins so, then one that contains
// it, then those whose country or state matches.
func Find(text string, limit int) []Station {
	words := strings.Fields(fold(text))
	if len(words) == 0 || limit <= 0 {
		return nil
	}
	type hit struct {
		index, rank int
	}
	var hits []hit
	for i, entry := range searchIndex() {
		if rank, ok := entry.rank(words); ok {
			hits = append(hits, hit{i, rank})
		}
	}
	rows := Stations()
	slices.SortFunc(hits, func(a, b hit) int {
		return cmp.Or(
			cmp.Compare(a.rank, b.rank),
			cmp.Compare(len(rows[a.index].Name), len(rows[b.index].Name)),
			strings.Compare(rows[a.index].Name, rows[b.index].Name),
			strings.Compare(rows[a.index].ID, rows[b.index].ID))
	})
	found := make([]Station, 0, min(limit, len(hits)))
	for _, h := range hits[:min(limit, len(hits))] {
		found = append(found, rows[h.index])
	}
	return found
}

// searchEntry is one station's folded names.
type searchEntry struct {
	name  string   // folded name
	names []string // words of the name and of its other names
	lands []string // words of country and state
}

var searchIndex = sync.OnceValue(func() []searchEntry {
	rows := Stations()
	index := make([]searchEntry, len(rows))
	for i := range rows {
		name := fold(rows[i].Name)
		index[i] = searchEntry{
			name:  name,
			names: strings.Fields(name + " " + fold(rows[i].Also)),
			lands: append(strings.Fields(fold(rows[i].Country)), strings.Fields(fold(stateName(rows[i])))...),
		}
	}
	return index
})

// rank says how well the words fit, 0 best; ok is false when one fits nowhere.
func (e searchEntry) rank(words []string) (rank int, ok bool) {
	whole := strings.Join(words, " ")
	switch {
	case e.name == whole:
		return 0, true
	case strings.HasPrefix(e.name, whole):
		return 1, true
	}
	worst := 0
	for _, w := range words {
		r := e.wordRank(w)
		if r == notFound {
			return 0, false
		}
		worst = max(worst, r)
	}
	return 2 + worst, true
}

// notFound is past every rank of a word.
const notFound = 4

func (e searchEntry) wordRank(w string) int {
	best := notFound
	for _, n := range e.names {
		switch {
		case n == w:
			return 0
		case strings.HasPrefix(n, w):
			best = min(best, 1)
		case strings.Contains(n, w):
			best = min(best, 2)
		}
	}
	if best == notFound && slices.ContainsFunc(e.lands, func(n string) bool { return strings.HasPrefix(n, w) }) {
		return 3
	}
	return best
}

// fold is [plain] with the digraphs of German umlauts counted as the plain vowel,
// so that "München", "Muenchen" and "Munchen" are the same.
func fold(s string) string { return foldLetters.Replace(plain(s)) }

// plain brings a text to lower case words without accents or punctuation.
func plain(s string) string {
	var b strings.Builder
	for _, r := range norm.NFKD.String(s) {
		switch {
		case unicode.Is(unicode.Mn, r):
			continue
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(unicode.ToLower(r))
		case r == '\'' || r == '’' || r == '.':
			continue
		default:
			b.WriteByte(' ')
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

var foldLetters = strings.NewReplacer(
	"ß", "ss", "ø", "o", "æ", "a", "œ", "o", "ł", "l", "đ", "d", "ð", "d", "þ", "th", "ı", "i",
	"ae", "a", "oe", "o", "ue", "u")

// Near is a station with its distance and height difference from a place.
type Near[T any] struct {
	Station  T
	Distance quantity.Length
	Higher   quantity.Length // how much higher the station lies than the place; negative when lower
}

// Nearest returns the stations nearest to a place, nearest first.
func Nearest(p Place, limit int) []Near[Station] {
	return nearest(p, limit, Stations(), func(s *Station) Place { return s.Place })
}

// NearestFreeze returns the US freeze stations nearest to a place, nearest first.
func NearestFreeze(p Place, limit int) []Near[FreezeStation] {
	return nearest(p, limit, FreezeStations(), func(s *FreezeStation) Place { return s.Place })
}

func nearest[T any](p Place, limit int, rows []T, place func(*T) Place) []Near[T] {
	all := make([]Near[int], len(rows))
	for i := range rows {
		q := place(&rows[i])
		all[i] = Near[int]{Station: i, Distance: p.Distance(q), Higher: q.Elevation - p.Elevation}
	}
	slices.SortFunc(all, func(a, b Near[int]) int {
		return cmp.Or(cmp.Compare(a.Distance, b.Distance), cmp.Compare(a.Station, b.Station))
	})
	found := make([]Near[T], 0, max(0, min(limit, len(all))))
	for _, n := range all[:max(0, min(limit, len(all)))] {
		found = append(found, Near[T]{Station: rows[n.Station], Distance: n.Distance, Higher: n.Higher})
	}
	return found
}
