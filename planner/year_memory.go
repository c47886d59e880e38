package planner

import (
	"strings"
	"sync"

	"fourturn/planner/rotation"
	"fourturn/plants"
)

// YearMemory keeps the days that were searched for, so that an edit of one pot does not
// search for those of all others again. It changes no answer. The zero YearMemory is
// ready; it is safe for concurrent use.
type YearMemory struct {
	mu      sync.Mutex
	book    *plants.Book
	run     int
	made    int // spots so far
	spots   map[string]*remembered[*yearSpot]
	results map[string]*remembered[yearAnswer]
}

// remembered is something with the run in which it was last of use.
type remembered[T any] struct {
	what T
	run  int
}

// yearAnswer is what a search came to.
type yearAnswer struct {
	result *rotation.Result
	err    error
}

// runsKept is for how many runs an answer is kept that none of them asked for, so that
// what is undone is there at once.
const runsKept = 16

// begin starts a run of the front door with a book; another book forgets all.
func (m *YearMemory) begin(book *plants.Book) {
	if m == nil {
		return
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.book != book || m.spots == nil {
		m.book, m.spots, m.results = book, map[string]*remembered[*yearSpot]{}, map[string]*remembered[yearAnswer]{}
	}
	m.run++
	forget(m.spots, m.run)
	forget(m.results, m.run)
}

func forget[T any](of map[string]*remembered[T], run int) {
	for key, r := range of {
		if r.run < run-runsKept {
			delete(of, key)
		}
	}
}

// spot returns what is known of a spot, made where it is not there yet, from a number
// that no other has; nil without a memory or a key.
func (m *YearMemory) spot(key string, build func(number int) *yearSpot) *yearSpot {
	if m == nil || key == "" {
		return nil
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	r, ok := m.spots[key]
	if !ok {
		m.made++
		r = &remembered[*yearSpot]{what: build(m.made)}
		m.spots[key] = r
	}
	r.run = m.run
	return r.what
}

// answer returns what a search came to before.
func (m *YearMemory) answer(key string) (yearAnswer, bool) {
	if m == nil || ofOneRun(key) {
		return yearAnswer{}, false
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	r, ok := m.results[key]
	if !ok {
		return yearAnswer{}, false
	}
	r.run = m.run
	return r.what, true
}

// keep remembers what a search came to.
func (m *YearMemory) keep(key string, a yearAnswer) {
	if m == nil || ofOneRun(key) {
		return
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	m.results[key] = &remembered[yearAnswer]{what: a, run: m.run}
}

// ofOneRun reports whether a key names a spot that only one run knows.
func ofOneRun(key string) bool { return strings.HasPrefix(key, "once ") }
