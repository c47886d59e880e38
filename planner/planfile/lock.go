package planfile

import (
	"encoding/json"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"github.com/gofrs/flock"
)

// Holder says who has a plan open.
type Holder struct {
	User    string    `json:"user"`
	Host    string    `json:"host"`
	Process int       `json:"process"`
	Since   time.Time `json:"since"`
}

// Lock is held while a plan is open. It is advice, not force: a save by someone
// who does not look at it is found out by [Store.Save] all the same. The system
// lets go of it when the program ends, however it ends.
type Lock struct {
	file *flock.Flock
}

// HeldError is the error of a lock that somebody else has.
type HeldError struct {
	Path   string
	Holder Holder // zero where the other did not say
}

// Error says who has the file open.
func (e *HeldError) Error() string {
	return "planfile: " + e.Path + " is open: " + e.Holder.User + " on " + e.Holder.Host
}

const (
	lockTries    = 20 // a lock file can be removed by its last holder while we open it
	largestLock  = 4096
	lockFileMode = 0o644
	// The first byte of a lock file is what Windows locks, and then nobody can
	// read it; who has the lock is written behind it.
	holderOffset = 1
)

// Lock takes the lock of a plan file for somebody. The error is a [HeldError]
// where somebody else has it, and a [FileError] where there can be no lock, as in
// a folder that may not be written to.
func (s *Store) Lock(path string, who Holder) (*Lock, error) {
	target, err := s.disk.Resolve(path)
	if err != nil {
		return nil, &FileError{Locking, path, NothingToLose, err}
	}
	file := lockPath(target)
	lock, err := takeLock(file)
	if err != nil {
		return nil, &FileError{Locking, path, NothingToLose, err}
	}
	if lock == nil {
		return nil, &HeldError{path, readHolder(file)}
	}
	if err := writeHolder(file, who); err != nil {
		lock.Release()
		return nil, &FileError{Locking, path, NothingToLose, err}
	}
	return lock, nil
}

func lockPath(target string) string {
	folder, base := filepath.Split(target)
	return filepath.Join(folder, "."+base+".lock")
}

// takeLock returns nil without an error where somebody else has the lock.
func takeLock(path string) (*Lock, error) {
	for range lockTries {
		// A link here would let a stranger choose the file that we write to.
		if info, err := os.Lstat(path); err == nil && !info.Mode().IsRegular() {
			return nil, &fs.PathError{Op: "lock", Path: path, Err: errNotAFile}
		}
		file := flock.New(path, flock.SetPermissions(lockFileMode))
		got, err := file.TryLock()
		if err != nil {
			return nil, err
		}
		if !got {
			return nil, nil
		}
		// The last holder may have removed the file between our opening and
		// locking it; then the lock is on a file that nobody else can find.
		held, err := file.Stat()
		there, lookErr := os.Stat(path)
		if err == nil && lookErr == nil && os.SameFile(held, there) {
			return &Lock{file}, nil
		}
		_ = file.Unlock()
	}
	return nil, errors.New("the lock file does not stay in place")
}

// Release lets go of the lock and removes its file. A nil Lock is none.
func (l *Lock) Release() {
	if l == nil {
		return
	}
	removed := os.Remove(l.file.Path()) == nil
	_ = l.file.Unlock()
	if !removed { // Windows removes no open file
		_ = os.Remove(l.file.Path())
	}
}

func writeHolder(path string, who Holder) error {
	text, err := json.Marshal(who)
	if err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	defer f.Close()
	_, err = f.WriteAt(append(text, '\n'), holderOffset)
	return err
}

func readHolder(path string) (who Holder) {
	f, err := os.Open(path)
	if err != nil {
		return Holder{}
	}
	defer f.Close()
	text, err := io.ReadAll(io.NewSectionReader(f, holderOffset, largestLock))
	if err != nil || json.Unmarshal(text, &who) != nil {
		return Holder{}
	}
	return who
}
