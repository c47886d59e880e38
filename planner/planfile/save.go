package planfile

import (
	"crypto/sha256"
	"errors"
	"io/fs"
	"path/filepath"
	"strings"
	"time"
)

// newFileMode is that of a file that did not exist; the process's umask applies.
const newFileMode fs.FileMode = 0o666

// leftoverAge is how old a temporary file must be, by the clock of its own file
// system, before it is taken for that of a save that died.
const leftoverAge = time.Hour

// Save writes the text of a plan to a file, so that at every moment the file
// holds either the old plan or the new one, whole. The file must still be as the
// stamp says, or the cause of the error is [ErrChanged]; the zero Stamp means
// that there was no file. A symbolic link is followed; the mode of the file, and
// its owner where the system lets us, are kept. The text that the file held
// before is kept as a copy, see [Store.Copies].
//
// The error is a [FileError]. Where it says [NewInPlace] or [SavedNoCopy] the
// file holds the new plan and the returned stamp is valid.
func (s *Store) Save(path string, text []byte, since Stamp) (Stamp, error) {
	target, err := s.disk.Resolve(path)
	if err != nil {
		return Stamp{}, &FileError{Saving, path, FileUntouched, err}
	}
	before, info, err := s.disk.Read(target)
	switch {
	case errors.Is(err, fs.ErrNotExist) && !since.Exists:
		info = nil
	case errors.Is(err, fs.ErrNotExist):
		return Stamp{}, &FileError{Saving, path, FileUntouched, errors.Join(ErrChanged, err)}
	case err != nil:
		return Stamp{}, &FileError{Saving, path, FileUntouched, err}
	case !since.Exists || sha256.Sum256(before) != since.Sum:
		return Stamp{}, &FileError{Saving, path, FileChangedHere, ErrChanged}
	}
	var copyErr error
	if info != nil {
		copyErr = s.keepCopy(target, before)
	}
	written, safe, err := s.replace(target, text, info)
	if err != nil && safe == FileUntouched {
		return Stamp{}, &FileError{Saving, path, safe, err}
	}
	stamp := StampOfText(text)
	if written != nil {
		stamp.ModTime, stamp.info = written.ModTime(), written
	}
	switch {
	case err != nil:
		return stamp, &FileError{Saving, path, safe, err}
	case copyErr != nil:
		return stamp, &FileError{KeepCopy, path, SavedNoCopy, copyErr}
	}
	return stamp, nil
}

// replace puts a new file in the place of another: written beside it, synced and
// renamed. old is nil where there is none. The new file's information is taken
// before the renaming: after it, the file could be somebody else's already. It is
// nil where the system does not tell.
func (s *Store) replace(target string, text []byte, old fs.FileInfo) (fs.FileInfo, Safe, error) {
	temporary, err := s.writeBeside(target, text, old)
	if err != nil {
		return nil, FileUntouched, err
	}
	written, err := s.disk.Stat(temporary)
	if err != nil {
		written = nil
	}
	if err := s.disk.Rename(temporary, target); err != nil {
		_ = s.disk.Remove(temporary)
		return nil, FileUntouched, err
	}
	if err := s.disk.SyncFolder(filepath.Dir(target)); err != nil {
		return written, NewInPlace, err
	}
	return written, "", nil
}

// writeBeside writes and syncs a temporary file in the folder of target.
func (s *Store) writeBeside(target string, text []byte, old fs.FileInfo) (path string, err error) {
	folder, base := filepath.Split(target)
	mode := newFileMode
	if old != nil {
		mode = old.Mode().Perm()
	}
	var file diskFile
	for try := 0; ; try++ {
		path = filepath.Join(folder, temporaryName(base, s.random()))
		file, err = s.disk.Create(path, mode)
		if err == nil {
			break
		}
		if !errors.Is(err, fs.ErrExist) || try >= 100 {
			return "", err
		}
	}
	written := path // a failing return empties path
	defer func() {
		if err != nil {
			_ = s.disk.Remove(written)
		}
	}()
	if _, err = file.Write(text); err == nil {
		err = file.Sync()
	}
	if closing := file.Close(); err == nil {
		err = closing
	}
	if err != nil {
		return "", err
	}
	if old != nil {
		s.disk.Own(path, old)
		if err = s.disk.Chmod(path, mode); err != nil { // past the umask
			return "", err
		}
	}
	s.sweep(folder, base, path)
	return path, nil
}

func temporaryName(base, random string) string { return "." + base + "." + random + ".tmp" }

// sweep removes temporary files of this plan that a killed save left behind. Age
// is measured against the file just written, so that the clocks of this machine
// and of a file server need not agree.
func (s *Store) sweep(folder, base, written string) {
	now, err := s.disk.Stat(written)
	if err != nil {
		return
	}
	entries, err := s.disk.List(folder)
	if err != nil {
		return
	}
	for _, e := range entries {
		name := e.Name()
		if !strings.HasPrefix(name, "."+base+".") || !strings.HasSuffix(name, ".tmp") || name == filepath.Base(written) {
			continue
		}
		if info, err := e.Info(); err == nil && info.Mode().IsRegular() && now.ModTime().Sub(info.ModTime()) > leftoverAge {
			_ = s.disk.Remove(filepath.Join(folder, name))
		}
	}
}

// writeState writes a file below the state folder, whole or not at all.
func (s *Store) writeState(path string, text []byte) error {
	if err := s.disk.MakeFolder(filepath.Dir(path)); err != nil {
		return err
	}
	_, _, err := s.replace(path, text, nil)
	return err
}
