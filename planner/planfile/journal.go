package planfile

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"io/fs"
	"path/filepath"
	"sort"
	"time"
)

// Unsaved is work that is not in its plan file yet.
type Unsaved struct {
	Path    string    // of the plan file, or empty where it has none yet
	Base    []byte    // the text of the file that the work began from, or nil
	Text    []byte    // the plan with the work in it
	Edit    string    // key of the name of the last edit
	Written time.Time // set by the journal
}

// Journal keeps the unsaved work of one session until it is saved. It may be
// used from one goroutine at a time.
type Journal struct {
	store  *Store
	folder string
	lock   *Lock
}

const (
	journalFolder = "journals"
	journalFile   = "work"
	journalLock   = "lock"
)

// NewJournal begins the journal of a session.
func (s *Store) NewJournal() (*Journal, error) {
	folder := filepath.Join(s.state, journalFolder, s.random())
	if err := s.disk.MakeFolder(folder); err != nil {
		return nil, &FileError{Journaling, folder, NothingToLose, err}
	}
	lock, err := takeLock(filepath.Join(folder, journalLock))
	if err == nil && lock == nil {
		err = errors.New("the journal is in use")
	}
	if err != nil {
		return nil, &FileError{Journaling, folder, NothingToLose, err}
	}
	return &Journal{s, folder, lock}, nil
}

// journalHead is the first line of a journal. The two texts follow it.
type journalHead struct {
	Path    string    `json:"path"`
	Edit    string    `json:"edit"`
	Written time.Time `json:"written"`
	Base    int       `json:"base_bytes"` // -1 where there was no file
	Text    int       `json:"text_bytes"`
	Sum     string    `json:"sha256"` // of both texts
}

// Write replaces what the journal holds; the old work or the new is whole at
// every moment.
func (j *Journal) Write(work Unsaved) error {
	body := append(bytes.Clone(work.Base), work.Text...)
	sum := sha256.Sum256(body)
	head := journalHead{
		Path: work.Path, Edit: work.Edit, Written: j.store.now(),
		Base: len(work.Base), Text: len(work.Text), Sum: hex.EncodeToString(sum[:]),
	}
	if work.Base == nil {
		head.Base = -1
	}
	line, err := json.Marshal(head)
	if err == nil {
		err = j.store.writeState(filepath.Join(j.folder, journalFile), append(append(line, '\n'), body...))
	}
	if err != nil {
		return &FileError{Journaling, j.folder, FileUntouched, err}
	}
	return nil
}

// Clear empties the journal: all work is saved, or was let go of on purpose.
func (j *Journal) Clear() error {
	err := j.store.disk.Remove(filepath.Join(j.folder, journalFile))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return &FileError{Journaling, j.folder, NothingToLose, err}
	}
	return nil
}

// Close ends the journal. What it holds stays for the next start; an empty one
// is removed.
func (j *Journal) Close() {
	if _, err := j.store.disk.Stat(filepath.Join(j.folder, journalFile)); errors.Is(err, fs.ErrNotExist) {
		j.lock.Release()
		_ = j.store.disk.Remove(j.folder)
		return
	}
	j.lock.Release()
}

// Found is the journal of a session that ended without saving.
type Found struct {
	Unsaved
	Err    error // why it cannot be read, or nil
	folder string
}

// Unsaved lists the work of sessions that ended without saving it, newest first.
// Journals of sessions that still run are passed over.
func (s *Store) Unsaved() ([]Found, error) {
	root := filepath.Join(s.state, journalFolder)
	entries, err := s.disk.List(root)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, &FileError{Journaling, root, NothingToLose, err}
	}
	var found []Found
	for _, e := range entries {
		folder := filepath.Join(root, e.Name())
		if !e.IsDir() {
			continue
		}
		lock, err := takeLock(filepath.Join(folder, journalLock))
		if err != nil || lock == nil {
			continue
		}
		data, _, err := s.disk.Read(filepath.Join(folder, journalFile))
		lock.Release()
		if errors.Is(err, fs.ErrNotExist) {
			_ = s.disk.Remove(folder)
			continue
		}
		one := Found{folder: folder, Err: err}
		if err == nil {
			one.Unsaved, one.Err = parseJournal(data)
		}
		found = append(found, one)
	}
	sort.SliceStable(found, func(i, k int) bool { return found[i].Written.After(found[k].Written) })
	return found, nil
}

var errDamaged = errors.New("the journal is damaged")

func parseJournal(data []byte) (Unsaved, error) {
	line, body, ok := bytes.Cut(data, []byte{'\n'})
	var head journalHead
	if !ok || json.Unmarshal(line, &head) != nil {
		return Unsaved{}, errDamaged
	}
	work := Unsaved{Path: head.Path, Edit: head.Edit, Written: head.Written}
	base := max(0, head.Base)
	sum := sha256.Sum256(body)
	if head.Text < 0 || base > len(body) || len(body)-base != head.Text || hex.EncodeToString(sum[:]) != head.Sum {
		return work, errDamaged
	}
	if head.Base >= 0 {
		work.Base = bytes.Clone(body[:base])
	}
	work.Text = bytes.Clone(body[base:])
	return work, nil
}

// Forget removes the journal of a session that ended, once its work is taken
// over or let go of.
func (s *Store) Forget(f Found) error {
	for _, name := range [...]string{journalFile, journalLock} {
		if err := s.disk.Remove(filepath.Join(f.folder, name)); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return &FileError{Journaling, f.folder, NothingToLose, err}
		}
	}
	_ = s.disk.Remove(f.folder)
	return nil
}
