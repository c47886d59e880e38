package planfile

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"path/filepath"
	"slices"
	"sort"
	"strings"
	"sync"
	"time"

	"fourturn/planner"
)

// Beside is a file in the folder of a plan that looks like a second copy of it, such
// as a sync service drops when two machines saved at the same time.
type Beside struct {
	Path    string
	Changed time.Time // by the clock of its file system
	Sum     [sha256.Size]byte
	Plan    *planner.Plan
}

// mostBeside is how many files beside a plan are read, the newest first. A folder
// with more of one name is somebody's archive.
const mostBeside = 12

// Beside finds the files in the folder of a plan that look like second copies of
// it: the name begins with the plan's own, whatever a service puts behind it, the
// contents are a plan, and at least half of the things in the smaller one bear the
// same ids. Copies that say the same as the plan, and those that [Store.Settle] was
// told of, are left out. The newest comes first; the error is a [FileError].
func (s *Store) Beside(path string, plan *planner.Plan) ([]Beside, error) {
	target, err := s.disk.Resolve(path)
	if err != nil {
		return nil, &FileError{Reading, path, NothingToLose, err}
	}
	entries, err := s.disk.List(filepath.Dir(target))
	if err != nil {
		return nil, &FileError{Reading, path, NothingToLose, err}
	}
	var found []Beside
	settled := s.settledLines(target)
	for _, one := range s.glimpses.look(s, filepath.Dir(target), candidates(filepath.Base(target), entries)) {
		if !isSettled(settled, one.Sum) && akin(plan, one.Plan) && !same(valueOf(plan), valueOf(one.Plan)) {
			found = append(found, one)
		}
	}
	return found, nil
}

// glimpses remembers the files that were last looked at, so that one that stays as it
// is need not be read whenever the window comes to the fore.
type glimpses struct {
	mu   sync.Mutex
	seen map[string]glimpse
}

type glimpse struct {
	size   int64
	beside Beside // its Plan is nil where the file holds none
}

// look reads files that are new or changed, and returns those that hold a plan of a
// version that is known.
func (g *glimpses) look(s *Store, folder string, files []fs.FileInfo) (plans []Beside) {
	g.mu.Lock()
	defer g.mu.Unlock()
	now := make(map[string]glimpse, len(files))
	for _, info := range files {
		path := filepath.Join(folder, info.Name())
		one, ok := g.seen[path]
		if !ok || one.size != info.Size() || !one.beside.Changed.Equal(info.ModTime()) {
			one = glimpse{info.Size(), Beside{Path: path, Changed: info.ModTime()}}
			if document, stamp, err := s.Load(path); err == nil && !document.ReadOnly() {
				one.beside.Sum, one.beside.Plan = stamp.Sum, document.Plan()
			}
		}
		now[path] = one
		if one.beside.Plan != nil {
			plans = append(plans, one.beside)
		}
	}
	g.seen = now
	return plans
}

// candidates are the files whose names begin with that of a plan, the newest first.
func candidates(name string, entries []fs.DirEntry) []fs.FileInfo {
	ending := filepath.Ext(name)
	stem := strings.TrimSuffix(name, ending)
	var list []fs.FileInfo
	for _, e := range entries {
		other := e.Name()
		if other == name || filepath.Ext(other) != ending || !strings.HasPrefix(other, stem) {
			continue
		}
		if info, err := e.Info(); err == nil && info.Mode().IsRegular() && info.Size() <= MaxBytes {
			list = append(list, info)
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return list[i].ModTime().After(list[j].ModTime()) })
	return list[:min(len(list), mostBeside)]
}

// akin reports whether two plans look like versions of one: at least half of the
// things in the smaller one are in the other too, or, where one has none, both have
// the same title.
func akin(a, b *planner.Plan) bool {
	in, other := thingsOf(a), thingsOf(b)
	if len(in) == 0 || len(other) == 0 {
		return a.Title != "" && a.Title == b.Title
	}
	both := 0
	for thing := range in {
		if other[thing] {
			both++
		}
	}
	return 2*both >= min(len(in), len(other))
}

// thingsOf returns all that has an id of its own in a plan.
func thingsOf(plan *planner.Plan) map[string]bool {
	things := map[string]bool{}
	for section, ids := range idsOf(plan) {
		for id := range ids {
			things[string(section)+" "+id] = true
		}
	}
	for i := range plan.Log {
		things["log "+plan.Log[i].ID] = true
	}
	return things
}

// Settle remembers that a second copy, as it is now, was brought in or is none, so
// that it is not offered again. The copy itself stays where it is.
func (s *Store) Settle(path string, sum [sha256.Size]byte) error {
	target, err := s.disk.Resolve(path)
	if err == nil && !isSettled(s.settledLines(target), sum) {
		err = s.settle(target, sum)
	}
	if err != nil {
		return &FileError{Journaling, path, NothingToLose, err}
	}
	return nil
}

// mostSettled is how many copies are remembered for a plan; the oldest are forgotten.
const mostSettled = 500

func (s *Store) settle(target string, sum [sha256.Size]byte) error {
	lines := append(s.settledLines(target), []byte(hex.EncodeToString(sum[:])))
	lines = lines[max(0, len(lines)-mostSettled):]
	return s.writeState(s.settledFile(target), append(bytes.Join(lines, []byte("\n")), '\n'))
}

func isSettled(lines [][]byte, sum [sha256.Size]byte) bool {
	wanted := []byte(hex.EncodeToString(sum[:]))
	return slices.ContainsFunc(lines, func(line []byte) bool { return bytes.Equal(line, wanted) })
}

func (s *Store) settledLines(target string) [][]byte {
	data, _, err := s.disk.Read(s.settledFile(target))
	if err != nil {
		return nil // a list that is lost offers a copy once more
	}
	return bytes.Fields(data)
}

func (s *Store) settledFile(target string) string {
	return filepath.Join(s.folderOf(target), "settled")
}

// Ancestor returns the previous copy of a plan's file that differs least from
// another version of the plan, or nil where there is no copy that can be read. It
// tells what a value was before; that both versions began from it is likely, but
// nobody knows, so nothing is decided by it alone. See [MergeCopy].
func (s *Store) Ancestor(path string, other *planner.Plan) *planner.Plan {
	copies, err := s.Copies(path)
	if err != nil {
		return nil
	}
	var nearest *planner.Plan
	fewest := 0
	for _, c := range copies {
		d, err := s.OpenCopy(c)
		if err != nil {
			continue
		}
		n := len(Differences(d.Plan(), other))
		if nearest == nil || n < fewest {
			nearest, fewest = d.Plan(), n
		}
		if n == 0 {
			break
		}
	}
	return nearest
}
