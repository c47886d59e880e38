package planfile

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"sort"
	"strconv"
	"strings"
	"time"
)

// How many previous copies of a plan are kept: the newest ones, and one for each
// of the newest days before them. Days are counted, not measured by the clock,
// so that a clock that jumps cannot empty the shelf.
const (
	copiesKept = 10
	daysKept   = 31
)

const copyTime = "20060102T150405Z"

// Copy is a previous state of a plan file.
type Copy struct {
	Path   string
	Number int       // counts up with every copy of this plan
	Made   time.Time // when the copy was made: the state was in the file until then
	Size   int64
}

// Copies lists the previous states of a plan file, newest first.
func (s *Store) Copies(path string) ([]Copy, error) {
	target, err := s.disk.Resolve(path)
	if err != nil {
		return nil, &FileError{Reading, path, NothingToLose, err}
	}
	copies, err := s.copiesIn(s.copyFolder(target))
	if err != nil {
		return nil, &FileError{Reading, path, NothingToLose, err}
	}
	return copies, nil
}

func (s *Store) copyFolder(target string) string { return filepath.Join(s.folderOf(target), "copies") }

func (s *Store) copiesIn(folder string) ([]Copy, error) {
	entries, err := s.disk.List(folder)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	var copies []Copy
	for _, e := range entries {
		number, made, ok := parseCopyName(e.Name())
		if !ok {
			continue
		}
		c := Copy{Path: filepath.Join(folder, e.Name()), Number: number, Made: made}
		if info, err := e.Info(); err == nil {
			c.Size = info.Size()
		}
		copies = append(copies, c)
	}
	sort.Slice(copies, func(i, j int) bool { return copies[i].Number > copies[j].Number })
	return copies, nil
}

func copyName(number int, made time.Time) string {
	return fmt.Sprintf("%08d-%s.yaml", number, made.UTC().Format(copyTime))
}

func parseCopyName(name string) (number int, made time.Time, ok bool) {
	stem, isCopy := strings.CutSuffix(name, ".yaml")
	count, at, cut := strings.Cut(stem, "-")
	if !isCopy || !cut {
		return 0, time.Time{}, false
	}
	number, err := strconv.Atoi(count)
	if err != nil || number < 1 {
		return 0, time.Time{}, false
	}
	made, err = time.Parse(copyTime, at)
	return number, made, err == nil
}

// keepCopy keeps a state of a plan file, unless it is the same as the newest
// copy, and lets go of copies that are no longer wanted.
func (s *Store) keepCopy(target string, text []byte) error {
	folder := s.copyFolder(target)
	copies, err := s.copiesIn(folder)
	if err != nil {
		return err
	}
	number := 1
	if len(copies) > 0 {
		if newest, _, err := s.disk.Read(copies[0].Path); err == nil && sha256.Sum256(newest) == sha256.Sum256(text) {
			return nil
		}
		number = copies[0].Number + 1
	}
	made := s.now()
	path := filepath.Join(folder, copyName(number, made))
	if err := s.writeState(path, text); err != nil {
		return err
	}
	copies = append([]Copy{{Path: path, Number: number, Made: made.UTC()}}, copies...)
	for _, c := range unwanted(copies) {
		_ = s.disk.Remove(c.Path)
	}
	return nil
}

// unwanted returns the copies, given newest first, that need not be kept.
func unwanted(copies []Copy) []Copy {
	var drop []Copy
	days := map[string]bool{}
	for i, c := range copies {
		day := c.Made.UTC().Format(time.DateOnly)
		switch {
		case i < copiesKept:
		case !days[day] && len(days) < daysKept:
			days[day] = true
		default:
			drop = append(drop, c)
		}
	}
	return drop
}

// OpenCopy reads a previous copy, for a preview or to restore it. Restoring is
// saving its plan like any other edit, so that it can be undone and the state it
// replaces becomes a copy itself.
func (s *Store) OpenCopy(c Copy) (*Document, error) {
	d, _, err := s.Load(c.Path)
	return d, err
}
