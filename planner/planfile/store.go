package planfile

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// Store loads and saves plan files and keeps previous copies and journals in a
// folder of its own. It may be used from several goroutines.
type Store struct {
	state  string
	now    func() time.Time
	random func() string
	disk   disk

	glimpses glimpses
}

// NewStore returns a store that keeps its copies and journals below the folder
// state, which it makes when needed. now is asked for the time that a copy was
// made; random for names that are not in use, of letters and digits.
func NewStore(state string, now func() time.Time, random func() string) *Store {
	return &Store{state: state, now: now, random: random, disk: realDisk{}}
}

// Action says what a store was doing when it failed.
type Action string

// What a store does.
const (
	Reading    Action = "read"
	Saving     Action = "save"
	Locking    Action = "lock"
	KeepCopy   Action = "keep_copy"
	Journaling Action = "journal"
)

// Safe says what is whole after a failure.
type Safe string

// What can be said about the work of a person after a failure.
const (
	FileUntouched   Safe = "file_untouched"    // the file is as it was before
	NewInPlace      Safe = "new_in_place"      // the new plan is in the file, but the drive did not confirm it
	SavedNoCopy     Safe = "saved_no_copy"     // the plan is saved, but the copy of the one before was not kept
	NothingToLose   Safe = "nothing_to_lose"   // nothing was written or to be written
	FileChangedHere Safe = "file_changed_here" // the file holds another's changes; both versions are whole
)

// FileError is a failure with a file: what was being done, to which file, and
// what is still safe.
type FileError struct {
	Action Action
	Path   string
	Safe   Safe
	Err    error
}

// Error says the failure in English.
func (e *FileError) Error() string {
	return fmt.Sprintf("%s %s: %v (%s)", e.Action, e.Path, e.Err, safeTexts[e.Safe])
}

// Unwrap returns the cause.
func (e *FileError) Unwrap() error { return e.Err }

// TextKey is the key of the words for what failed and what is safe.
func (e *FileError) TextKey() string { return "planfile.file." + string(e.Action) }

// SafeKey is the key of the words for what is still safe.
func (e *FileError) SafeKey() string { return "planfile.safe." + string(e.Safe) }

var safeTexts = map[Safe]string{
	FileUntouched:   "the file is as it was",
	NewInPlace:      "the new plan is in the file, but the drive has not confirmed it",
	SavedNoCopy:     "the plan is saved, but no copy of the one before was kept",
	NothingToLose:   "nothing was changed",
	FileChangedHere: "the file holds changes from elsewhere; both versions are whole",
}

// ErrChanged is the cause of a save that was refused because the file is no
// longer the one that was read.
var ErrChanged = errors.New("the file was changed by someone else")

// Stamp tells one state of a file from another.
type Stamp struct {
	Sum     [sha256.Size]byte // of the contents
	Size    int64
	ModTime time.Time
	Exists  bool
	info    fs.FileInfo
}

func stampOf(data []byte, info fs.FileInfo) Stamp {
	return Stamp{Sum: sha256.Sum256(data), Size: int64(len(data)), ModTime: info.ModTime(), Exists: true, info: info}
}

// StampOfText is the stamp of a file that held a text at some time.
func StampOfText(text []byte) Stamp {
	return Stamp{Sum: sha256.Sum256(text), Size: int64(len(text)), Exists: true}
}

// StampOf returns the stamp of a file as it is now; that of a file that does not
// exist is the zero Stamp. The error is a [FileError].
func (s *Store) StampOf(path string) (Stamp, error) {
	_, stamp, err := s.read(path)
	if errors.Is(err, fs.ErrNotExist) {
		return Stamp{}, nil
	}
	return stamp, err
}

// Load reads a plan file. The error is a [FileError]; its cause is [Problems]
// where the contents are to blame.
func (s *Store) Load(path string) (*Document, Stamp, error) {
	data, stamp, err := s.read(path)
	if err != nil {
		return nil, Stamp{}, err
	}
	d, err := Decode(data)
	if err != nil {
		return nil, stamp, &FileError{Reading, path, FileUntouched, err}
	}
	return d, stamp, nil
}

func (s *Store) read(path string) ([]byte, Stamp, error) {
	data, info, err := s.disk.Read(path)
	if err != nil {
		return nil, Stamp{}, &FileError{Reading, path, NothingToLose, err}
	}
	return data, stampOf(data, info), nil
}

// Change says what happened to a file since it was stamped.
type Change string

// What can happen to a file under an open plan.
const (
	Unchanged   Change = "unchanged"
	Edited      Change = "edited"      // the contents are others
	Removed     Change = "removed"     // there is no such file any more
	Appeared    Change = "appeared"    // there was no file, and now there is one
	Unreachable Change = "unreachable" // the folder or the drive does not answer
)

// Look compares a file with its stamp. A file that was replaced by another with
// the same contents is unchanged.
func (s *Store) Look(path string, since Stamp) Change {
	info, err := s.disk.Stat(path)
	switch {
	case err == nil:
	case !errors.Is(err, fs.ErrNotExist):
		return Unreachable
	case !since.Exists:
		return Unchanged
	default:
		if _, err := s.disk.Stat(filepath.Dir(path)); err != nil {
			return Unreachable
		}
		return Removed
	}
	if !since.Exists {
		return Appeared
	}
	if since.info != nil && os.SameFile(info, since.info) && info.Size() == since.Size && info.ModTime().Equal(since.ModTime) {
		return Unchanged
	}
	data, _, err := s.disk.Read(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return Removed
	case err != nil:
		return Unreachable
	case sha256.Sum256(data) == since.Sum:
		return Unchanged
	}
	return Edited
}

// folderOf returns the folder below state that belongs to a plan file. Its name
// is made from the file's own and a digest of its whole path, so that nothing in
// a path can lead elsewhere.
func (s *Store) folderOf(path string) string {
	sum := sha256.Sum256([]byte(path))
	name := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_' {
			return r
		}
		return '_'
	}, strings.TrimSuffix(filepath.Base(path), filepath.Ext(path)))
	return filepath.Join(s.state, name[:min(len(name), 40)]+"-"+hex.EncodeToString(sum[:8]))
}
