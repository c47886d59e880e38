package planfile

import (
	"fmt"
	"io/fs"
	"os"
	"syscall"
	"testing"
	"time"
)

// faultyDisk is the real disk with one failure: after a number of bytes written,
// or at the n-th call of an operation.
type faultyDisk struct {
	realDisk
	bytesLeft int // -1 for no limit
	fail      string
	calls     map[string]int
	at        int // the call of fail that fails, from 1
	err       error
}

func (d *faultyDisk) broken(operation string) error {
	d.calls[operation]++
	if operation == d.fail && d.calls[operation] == d.at {
		return d.err
	}
	return nil
}

func (d *faultyDisk) Create(path string, mode fs.FileMode) (diskFile, error) {
	if err := d.broken("create"); err != nil {
		return nil, err
	}
	f, err := d.realDisk.Create(path, mode)
	return &faultyFile{f, d}, err
}

func (d *faultyDisk) Chmod(path string, mode fs.FileMode) error {
	if err := d.broken("chmod"); err != nil {
		return err
	}
	return d.realDisk.Chmod(path, mode)
}

func (d *faultyDisk) Rename(from, to string) error {
	if err := d.broken("rename"); err != nil {
		return err
	}
	return d.realDisk.Rename(from, to)
}

func (d *faultyDisk) SyncFolder(path string) error {
	if err := d.broken("sync folder"); err != nil {
		return err
	}
	return d.realDisk.SyncFolder(path)
}

func (d *faultyDisk) MakeFolder(path string) error {
	if err := d.broken("make folder"); err != nil {
		return err
	}
	return d.realDisk.MakeFolder(path)
}

func (d *faultyDisk) Read(path string) ([]byte, fs.FileInfo, error) {
	if err := d.broken("read"); err != nil {
		return nil, nil, err
	}
	return d.realDisk.Read(path)
}

type faultyFile struct {
	diskFile
	disk *faultyDisk
}

func (f *faultyFile) Write(p []byte) (int, error) {
	if f.disk.bytesLeft >= 0 && len(p) > f.disk.bytesLeft {
		n, _ := f.diskFile.Write(p[:f.disk.bytesLeft])
		f.disk.bytesLeft = 0
		return n, f.disk.err
	}
	if f.disk.bytesLeft >= 0 {
		f.disk.bytesLeft -= len(p)
	}
	return f.diskFile.Write(p)
}

func (f *faultyFile) Sync() error {
	if err := f.disk.broken("sync"); err != nil {
		return err
	}
	return f.diskFile.Sync()
}

func (f *faultyFile) Close() error {
	err := f.diskFile.Close()
	if broken := f.disk.broken("close"); broken != nil {
		return broken
	}
	return err
}

func newFaultyDisk() *faultyDisk {
	return &faultyDisk{bytesLeft: -1, calls: map[string]int{}, err: syscall.EIO}
}

// testStore is a store with a clock and names of its own.
func testStore(state string, d disk) *Store {
	now := time.Date(2027, 5, 1, 9, 0, 0, 0, time.UTC)
	count := 0
	s := NewStore(state, func() time.Time { now = now.Add(time.Minute); return now }, func() string {
		count++
		return fmt.Sprintf("r%d", count)
	})
	if d != nil {
		s.disk = d
	}
	return s
}

func mustRead(t testing.TB, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func onlyFile(t testing.TB, folder, name string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if e.Name() != name && !e.IsDir() {
			t.Errorf("%s was left behind", e.Name())
		}
	}
}
