package planfile

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"time"
)

func TestLockSaysWhoHasIt(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "plan.yaml")
	ann := Holder{User: "ann", Host: "shed", Process: 12, Since: time.Date(2027, 5, 1, 9, 0, 0, 0, time.UTC)}
	s := testStore(t.TempDir(), nil)
	lock, err := s.Lock(path, ann)
	if err != nil {
		t.Fatal(err)
	}
	_, err = s.Lock(path, Holder{User: "bob"})
	var held *HeldError
	if !errors.As(err, &held) || held.Holder != ann {
		t.Fatalf("the second lock = %v, want that ann has it", err)
	}
	lock.Release()
	onlyFile(t, folder, "")
	again, err := s.Lock(path, Holder{User: "bob"})
	if err != nil {
		t.Fatal(err)
	}
	again.Release()
}

// The lock file is removed by its holder while another opens it: both must not
// end up with a lock.
func TestLockRace(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plan.yaml")
	s := testStore(t.TempDir(), nil)
	const people, rounds = 4, 100
	inside := make(chan struct{}, people)
	failed := make(chan error, people)
	for range people {
		go func() {
			for range rounds {
				lock, err := s.Lock(path, Holder{})
				var held *HeldError
				if errors.As(err, &held) {
					continue
				}
				if err != nil {
					failed <- err
					return
				}
				inside <- struct{}{}
				if len(inside) > 1 {
					failed <- errors.New("two have the lock at once")
					return
				}
				<-inside
				lock.Release()
			}
			failed <- nil
		}()
	}
	for range people {
		if err := <-failed; err != nil {
			t.Fatal(err)
		}
	}
}

// A link in the place of the lock file would make us write into the file that it
// leads to.
func TestLockFollowsNoLink(t *testing.T) {
	folder := t.TempDir()
	path, victim := filepath.Join(folder, "plan.yaml"), filepath.Join(folder, "victim")
	if err := os.WriteFile(victim, []byte("precious"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(victim, lockPath(path)); err != nil {
		t.Skip("no symbolic links here:", err)
	}
	_, err := testStore(t.TempDir(), nil).Lock(path, Holder{User: "eve"})
	var failed *FileError
	if !errors.As(err, &failed) || failed.Action != Locking {
		t.Errorf("Lock = %v", err)
	}
	if got := mustRead(t, victim); string(got) != "precious" {
		t.Errorf("the file behind the link holds %q", got)
	}
}

func TestJournal(t *testing.T) {
	state := t.TempDir()
	s := testStore(state, nil)
	j, err := s.NewJournal()
	if err != nil {
		t.Fatal(err)
	}
	want := Unsaved{Path: "/somewhere/plan.yaml", Base: []byte(oldText), Text: []byte(newText), Edit: "edit.title"}
	for range 3 {
		if err := j.Write(want); err != nil {
			t.Fatal(err)
		}
	}
	if found, err := s.Unsaved(); err != nil || len(found) != 0 {
		t.Fatalf("the work of a running session is offered: %v, %v", found, err)
	}
	j.Close()
	found, err := s.Unsaved()
	if err != nil || len(found) != 1 || found[0].Err != nil {
		t.Fatalf("found %v, %v", found, err)
	}
	got := found[0].Unsaved
	if got.Path != want.Path || string(got.Base) != oldText || string(got.Text) != newText || got.Edit != want.Edit || got.Written.IsZero() {
		t.Errorf("found %+v", got)
	}
	if err := s.Forget(found[0]); err != nil {
		t.Fatal(err)
	}
	if found, err := s.Unsaved(); err != nil || len(found) != 0 {
		t.Errorf("after forgetting, found %v, %v", found, err)
	}
	if entries, err := os.ReadDir(filepath.Join(state, journalFolder)); err != nil || len(entries) != 0 {
		t.Errorf("the journals' folder holds %v, %v", entries, err)
	}
}

// A journal that is cut short or altered anywhere is reported as damaged and not
// taken for work.
func TestDamagedJournal(t *testing.T) {
	state := t.TempDir()
	s := testStore(state, nil)
	j, err := s.NewJournal()
	if err != nil {
		t.Fatal(err)
	}
	if err := j.Write(Unsaved{Text: []byte(newText)}); err != nil {
		t.Fatal(err)
	}
	whole := mustRead(t, filepath.Join(j.folder, journalFile))
	body := len(whole) - len(newText)
	for i := range whole {
		if _, err := parseJournal(whole[:i]); err == nil {
			t.Errorf("cut after %d bytes, the journal counts as whole", i)
		}
		bad := append([]byte(nil), whole...)
		bad[i] ^= 1
		if _, err := parseJournal(bad); err == nil && i >= body {
			t.Errorf("with byte %d altered, the journal counts as whole", i)
		}
	}
	if err := j.Clear(); err != nil {
		t.Fatal(err)
	}
	j.Close()
	if _, err := os.Stat(j.folder); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("an empty journal was left behind: %v", err)
	}
}

func FuzzParseJournal(f *testing.F) {
	f.Add([]byte(`{"path":"p","base_bytes":-1,"text_bytes":1,"sha256":"x"}` + "\nx"))
	f.Add([]byte(`{"base_bytes":9223372036854775807,"text_bytes":-9223372036854775808}` + "\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		work, err := parseJournal(data)
		if err == nil && len(work.Base)+len(work.Text) > len(data) {
			t.Error("work that the journal does not hold")
		}
	})
}
