package planfile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// disk is what a store needs of a file system. Tests put failures in between.
type disk interface {
	Read(path string) ([]byte, fs.FileInfo, error)
	Stat(path string) (fs.FileInfo, error)
	Create(path string, mode fs.FileMode) (diskFile, error) // fails where path is taken
	Chmod(path string, mode fs.FileMode) error
	Own(path string, like fs.FileInfo) // gives a file the owner of another, if allowed
	Rename(from, to string) error
	Remove(path string) error
	SyncFolder(path string) error
	MakeFolder(path string) error
	List(path string) ([]fs.DirEntry, error)
	Resolve(path string) (string, error)
}

type diskFile interface {
	io.WriteCloser
	Sync() error
}

// realDisk is the operating system's.
type realDisk struct{}

var errNotAFile = errors.New("not a regular file")

func (realDisk) Read(path string) ([]byte, fs.FileInfo, error) {
	// A pipe would block the reader for ever: look before opening.
	if info, err := os.Stat(path); err != nil {
		return nil, nil, err
	} else if !info.Mode().IsRegular() {
		return nil, nil, &fs.PathError{Op: "read", Path: path, Err: errNotAFile}
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, nil, err
	}
	data, err := io.ReadAll(io.LimitReader(f, MaxBytes+1))
	return data, info, err
}

func (realDisk) Stat(path string) (fs.FileInfo, error) { return os.Stat(path) }

func (realDisk) Create(path string, mode fs.FileMode) (diskFile, error) {
	return os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
}

func (realDisk) Chmod(path string, mode fs.FileMode) error { return os.Chmod(path, mode) }
func (realDisk) Own(path string, like fs.FileInfo)         { keepOwner(path, like) }
func (realDisk) Rename(from, to string) error              { return os.Rename(from, to) }
func (realDisk) Remove(path string) error                  { return os.Remove(path) }
func (realDisk) MakeFolder(path string) error              { return os.MkdirAll(path, 0o700) }
func (realDisk) List(path string) ([]fs.DirEntry, error)   { return os.ReadDir(path) }
func (realDisk) Resolve(path string) (string, error)       { return resolve(path) }

// SyncFolder makes a rename in a folder durable. Systems that cannot sync a
// folder say so with EINVAL or the like; there is nothing more to be done there.
func (realDisk) SyncFolder(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return syncUnsupported(err)
	}
	err = syncUnsupported(f.Sync())
	if closing := f.Close(); err == nil {
		err = closing
	}
	return err
}

func syncUnsupported(err error) error {
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, errors.ErrUnsupported) || folderSyncUnknown && err != nil {
		return nil
	}
	return err
}

// resolve follows symbolic links to the file that a path means, even where that
// file does not exist yet.
func resolve(path string) (string, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return "", err
	}
	const mostLinks = 40 // as Linux allows, path_resolution(7)
	for range mostLinks {
		real, err := filepath.EvalSymlinks(path)
		if err == nil {
			return real, nil
		}
		if !errors.Is(err, fs.ErrNotExist) {
			return "", err
		}
		to, err := os.Readlink(path)
		if err != nil { // no link: a new file in a folder that must exist
			folder, err := filepath.EvalSymlinks(filepath.Dir(path))
			if err != nil {
				return "", err
			}
			return filepath.Join(folder, filepath.Base(path)), nil
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(path), to)
		}
		path = to
	}
	return "", fmt.Errorf("too many symbolic links: %s", path)
}
