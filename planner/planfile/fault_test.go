package planfile

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

const (
	oldText = "fourturn: 1\ntitle: old\n"
	newText = "fourturn: 1\ntitle: new, and longer than the old one\n"
)

// The write of the new file fails after every possible number of bytes, for every
// reason a drive gives: the old plan must be whole and nothing be left behind.
func TestWriteErrorAtEveryByte(t *testing.T) {
	for _, cause := range []error{syscall.ENOSPC, syscall.EIO, syscall.EDQUOT, syscall.ESTALE} {
		for offset := range len(newText) {
			folder := t.TempDir()
			path := filepath.Join(folder, "plan.yaml")
			if err := os.WriteFile(path, []byte(oldText), 0o600); err != nil {
				t.Fatal(err)
			}
			d := newFaultyDisk()
			d.err = cause
			s := testStore(filepath.Join(folder, "state"), d)
			stamp, err := s.StampOf(path)
			if err != nil {
				t.Fatal(err)
			}
			d.bytesLeft = len(oldText) + offset // the copy of the old plan is written first
			_, err = s.Save(path, []byte(newText), stamp)
			var failed *FileError
			if !errors.As(err, &failed) || failed.Safe != FileUntouched || !errors.Is(err, cause) {
				t.Fatalf("after %d bytes: %v", offset, err)
			}
			if got := mustRead(t, path); string(got) != oldText {
				t.Fatalf("after %d bytes the file holds %q", offset, got)
			}
			onlyFile(t, folder, "plan.yaml")
			d.bytesLeft = -1
			if _, err := s.Save(path, []byte(newText), stamp); err != nil {
				t.Fatalf("the next save fails: %v", err)
			}
		}
	}
}

// Every operation of a save fails in turn. What the error says is safe must be so.
func TestEveryOperationFails(t *testing.T) {
	for _, operation := range []string{"read", "create", "sync", "close", "chmod", "rename", "sync folder", "make folder"} {
		for at := 1; ; at++ {
			folder := t.TempDir()
			path := filepath.Join(folder, "plan.yaml")
			if err := os.WriteFile(path, []byte(oldText), 0o600); err != nil {
				t.Fatal(err)
			}
			d := newFaultyDisk()
			s := testStore(filepath.Join(folder, "state"), d)
			stamp, err := s.StampOf(path)
			if err != nil {
				t.Fatal(err)
			}
			d.calls = map[string]int{}
			d.fail, d.at = operation, at
			saved, err := s.Save(path, []byte(newText), stamp)
			if d.calls[operation] < at {
				break // there is no such call any more
			}
			var failed *FileError
			if !errors.As(err, &failed) {
				t.Fatalf("%s %d fails without a word: %v", operation, at, err)
			}
			got := string(mustRead(t, path))
			switch failed.Safe {
			case FileUntouched:
				if got != oldText || saved.Exists {
					t.Errorf("%s %d: the file is said to be untouched, and holds %q", operation, at, got)
				}
			case NewInPlace, SavedNoCopy:
				if got != newText || !saved.Exists || saved.Sum != StampOfText([]byte(newText)).Sum {
					t.Errorf("%s %d: the plan is said to be saved, and the file holds %q", operation, at, got)
				}
			default:
				t.Errorf("%s %d: %v", operation, at, err)
			}
			onlyFile(t, folder, "plan.yaml")
		}
	}
}

func TestReadOnlyFolder(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "plan.yaml")
	if err := os.WriteFile(path, []byte(oldText), 0o600); err != nil {
		t.Fatal(err)
	}
	d := newFaultyDisk()
	s := testStore(t.TempDir(), d)
	if os.Geteuid() == 0 { // the superuser may write anywhere: let the disk refuse
		d.fail, d.at, d.err = "create", 2, syscall.EROFS
	} else {
		if err := os.Chmod(folder, 0o500); err != nil {
			t.Fatal(err)
		}
		defer os.Chmod(folder, 0o700)
	}
	stamp, err := s.StampOf(path)
	if err != nil {
		t.Fatal(err)
	}
	_, err = s.Save(path, []byte(newText), stamp)
	var failed *FileError
	if !errors.As(err, &failed) || failed.Safe != FileUntouched || failed.Path != path || failed.Action != Saving {
		t.Fatalf("Save in a read-only folder = %v", err)
	}
	if got := mustRead(t, path); string(got) != oldText {
		t.Fatalf("the file holds %q", got)
	}
}

// A folder that is gone, as a network drive that was unplugged, and is back.
func TestFolderGoesAway(t *testing.T) {
	root := t.TempDir()
	folder, away := filepath.Join(root, "drive"), filepath.Join(root, "away")
	path := filepath.Join(folder, "plan.yaml")
	if err := os.Mkdir(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	s := testStore(filepath.Join(root, "state"), nil)
	stamp, err := s.Save(path, []byte(oldText), Stamp{})
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(folder, away); err != nil {
		t.Fatal(err)
	}
	if got := s.Look(path, stamp); got != Unreachable {
		t.Errorf("Look = %s, want unreachable", got)
	}
	_, err = s.Save(path, []byte(newText), stamp)
	var failed *FileError
	if !errors.As(err, &failed) || failed.Safe != FileUntouched {
		t.Fatalf("Save = %v", err)
	}
	if _, err := os.Stat(folder); !errors.Is(err, fs.ErrNotExist) {
		t.Error("the save made the folder anew, where the drive will be mounted over it")
	}
	if err := os.Rename(away, folder); err != nil {
		t.Fatal(err)
	}
	if got := s.Look(path, stamp); got != Unchanged {
		t.Errorf("Look = %s after the folder is back", got)
	}
	if _, err := s.Save(path, []byte(newText), stamp); err != nil {
		t.Fatal(err)
	}
}

func TestFileChangesUnderTheOpenPlan(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(path string) error
		want   Change
		safe   Safe
	}{
		{"removed", os.Remove, Removed, FileUntouched},
		{"renamed", func(p string) error { return os.Rename(p, p+".bak") }, Removed, FileUntouched},
		{"edited", func(p string) error { return os.WriteFile(p, []byte(newText), 0o600) }, Edited, FileChangedHere},
		{"replaced", func(p string) error {
			if err := os.WriteFile(p+"2", []byte(newText), 0o600); err != nil {
				return err
			}
			return os.Rename(p+"2", p)
		}, Edited, FileChangedHere},
		{"edited to the same length and time", func(p string) error {
			info, err := os.Stat(p)
			if err != nil {
				return err
			}
			other := strings.Replace(oldText, "old", "odd", 1)
			if err := os.WriteFile(p+"2", []byte(other), 0o600); err != nil {
				return err
			}
			if err := os.Chtimes(p+"2", info.ModTime(), info.ModTime()); err != nil {
				return err
			}
			return os.Rename(p+"2", p)
		}, Edited, FileChangedHere},
		{"touched", func(p string) error { return os.Chtimes(p, time.Unix(0, 0), time.Unix(0, 0)) }, Unchanged, ""},
		{"left alone", func(string) error { return nil }, Unchanged, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			folder := t.TempDir()
			path := filepath.Join(folder, "plan.yaml")
			s := testStore(filepath.Join(folder, "state"), nil)
			stamp, err := s.Save(path, []byte(oldText), Stamp{})
			if err != nil {
				t.Fatal(err)
			}
			if err := c.change(path); err != nil {
				t.Fatal(err)
			}
			before, _ := os.ReadFile(path)
			if got := s.Look(path, stamp); got != c.want {
				t.Errorf("Look = %s, want %s", got, c.want)
			}
			_, err = s.Save(path, []byte(newText+"# mine\n"), stamp)
			if c.want == Unchanged {
				if err != nil {
					t.Errorf("Save = %v", err)
				}
				return
			}
			var failed *FileError
			if !errors.As(err, &failed) || !errors.Is(err, ErrChanged) || failed.Safe != c.safe {
				t.Errorf("Save = %v", err)
			}
			if after, _ := os.ReadFile(path); !bytes.Equal(before, after) {
				t.Errorf("the refused save changed the file to %q", after)
			}
		})
	}
}

// A full disk, for real where the system lets us mount a small one.
func TestFullDisk(t *testing.T) {
	folder := t.TempDir()
	if err := mountSmall(folder); err != nil {
		t.Skipf("no small file system to be had (%v); the failing writer stands in for it", err)
	}
	defer unmount(folder)
	path := filepath.Join(folder, "plan.yaml")
	s := testStore(t.TempDir(), nil)
	stamp, err := s.Save(path, []byte(oldText), Stamp{})
	if err != nil {
		t.Fatal(err)
	}
	large := []byte(oldText + strings.Repeat("# filling\n", smallDisk/10))
	_, err = s.Save(path, large, stamp)
	if !errors.Is(err, syscall.ENOSPC) {
		t.Fatalf("Save = %v, want that the disk is full", err)
	}
	if got := mustRead(t, path); string(got) != oldText {
		t.Fatalf("the file holds %d bytes", len(got))
	}
	onlyFile(t, folder, "plan.yaml")
	if _, err := s.Save(path, []byte(newText), stamp); err != nil {
		t.Fatalf("a plan that fits is not saved: %v", err)
	}
}

func TestModeAndLinksAreKept(t *testing.T) {
	folder := t.TempDir()
	real := filepath.Join(folder, "deep", "real.yaml")
	link := filepath.Join(folder, "link.yaml")
	if err := os.MkdirAll(filepath.Dir(real), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(filepath.Join("deep", "real.yaml"), link); err != nil {
		t.Skip("no symbolic links here:", err)
	}
	s := testStore(filepath.Join(folder, "state"), nil)
	stamp, err := s.Save(link, []byte(oldText), Stamp{}) // the link dangles until now
	if err != nil {
		t.Fatal(err)
	}
	for _, mode := range []fs.FileMode{0o600, 0o644, 0o664, 0o640} {
		if err := os.Chmod(real, mode); err != nil {
			t.Fatal(err)
		}
		if stamp, err = s.Save(link, []byte(newText+"# "+mode.String()+"\n"), stamp); err != nil {
			t.Fatal(err)
		}
		info, err := os.Stat(real)
		if err != nil || info.Mode().Perm() != mode {
			t.Errorf("mode is %v after a save, was %v", info.Mode(), mode)
		}
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&fs.ModeSymlink == 0 {
		t.Errorf("the link is gone: %v, %v", info, err)
	}
	if to, _ := os.Readlink(link); to != filepath.Join("deep", "real.yaml") {
		t.Errorf("the link leads to %s", to)
	}
}

func TestLeftoversAreSwept(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "plan.yaml")
	old, young, others := ".plan.yaml.x1.tmp", ".plan.yaml.x2.tmp", ".other.yaml.x1.tmp"
	for _, name := range []string{old, young, others} {
		if err := os.WriteFile(filepath.Join(folder, name), nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	long := time.Date(2020, time.March, 1, 12, 0, 0, 0, time.UTC)
	for _, name := range []string{old, others} {
		if err := os.Chtimes(filepath.Join(folder, name), long, long); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := testStore(t.TempDir(), nil).Save(path, []byte(oldText), Stamp{}); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]bool{old: false, young: true, others: true} {
		if _, err := os.Stat(filepath.Join(folder, name)); (err == nil) != want {
			t.Errorf("%s there: %v, want %v", name, err == nil, want)
		}
	}
}
