package planfile

import (
	"fmt"
	"path/filepath"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestCopiesAreKeptAndOpened(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "plan.yaml")
	s := testStore(filepath.Join(folder, "state"), nil)
	var stamp Stamp
	var err error
	for i := range 30 {
		if stamp, err = s.Save(path, fmt.Appendf(nil, "fourturn: 1\ntitle: number %d\n", i), stamp); err != nil {
			t.Fatal(err)
		}
	}
	copies, err := s.Copies(path)
	if err != nil {
		t.Fatal(err)
	}
	// The newest ten, and one for the only day.
	if len(copies) != copiesKept+1 {
		t.Fatalf("%d copies", len(copies))
	}
	for i, c := range copies[:copiesKept] {
		d, err := s.OpenCopy(c)
		if want := fmt.Sprintf("number %d", 28-i); err != nil || d.Plan().Title != want {
			t.Errorf("copy %d is %v, %v, want %s", i, d.Plan().Title, err, want)
		}
		if c.Size == 0 || c.Made.IsZero() {
			t.Errorf("copy %d has no size or time: %+v", i, c)
		}
	}
}

func TestDailyCopiesForAMonth(t *testing.T) {
	var copies []Copy
	start := time.Date(2027, 12, 31, 12, 0, 0, 0, time.UTC)
	for i := range 200 { // four a day for fifty days, newest first
		copies = append(copies, Copy{Number: 200 - i, Made: start.Add(-time.Duration(i) * 6 * time.Hour)})
	}
	dropped := map[int]bool{}
	for _, c := range unwanted(copies) {
		dropped[c.Number] = true
	}
	days := map[string]int{}
	for i, c := range copies {
		if dropped[c.Number] {
			if i < copiesKept {
				t.Errorf("the copy %d from the end was dropped", i)
			}
			continue
		}
		if i >= copiesKept {
			days[c.Made.Format(time.DateOnly)]++
		}
	}
	if len(days) != daysKept {
		t.Errorf("copies of %d days were kept", len(days))
	}
	for day, n := range days {
		if n != 1 {
			t.Errorf("%d copies of %s were kept", n, day)
		}
	}
}

// Whatever the clock does, numbers count up, the newest ten copies stay, and the
// shelf does not grow without end.
func TestCopiesUnderAnyClock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var copies []Copy
		for number := range rapid.IntRange(1, 120).Draw(t, "saves") {
			made := time.Unix(rapid.Int64Range(-1e9, 4e9).Draw(t, "clock"), 0)
			copies = append([]Copy{{Number: number + 1, Made: made}}, copies...)
			dropped := map[int]bool{}
			for _, c := range unwanted(copies) {
				dropped[c.Number] = true
			}
			for i, c := range copies[:min(len(copies), copiesKept)] {
				if dropped[c.Number] {
					t.Fatalf("the copy %d from the end was dropped", i)
				}
			}
			var kept []Copy
			for _, c := range copies {
				if !dropped[c.Number] {
					kept = append(kept, c)
				}
			}
			if len(kept) > copiesKept+daysKept {
				t.Fatalf("%d copies are kept", len(kept))
			}
			copies = kept
		}
	})
}

// A clock that jumps back by years between saves loses no copy.
func TestClockJumpsBack(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "plan.yaml")
	now := time.Date(2099, 1, 1, 0, 0, 0, 0, time.UTC)
	count := 0
	s := NewStore(filepath.Join(folder, "state"), func() time.Time { return now }, func() string { count++; return fmt.Sprint(count) })
	var stamp Stamp
	var err error
	for i := range 8 {
		if i == 4 {
			now = time.Date(1999, 12, 31, 23, 59, 59, 0, time.UTC)
		}
		if stamp, err = s.Save(path, fmt.Appendf(nil, "fourturn: 1\ntitle: number %d\n", i), stamp); err != nil {
			t.Fatal(err)
		}
	}
	copies, err := s.Copies(path)
	if err != nil || len(copies) != 7 {
		t.Fatalf("%d copies, %v", len(copies), err)
	}
	for i, c := range copies {
		d, err := s.OpenCopy(c)
		if want := fmt.Sprintf("number %d", 6-i); err != nil || d.Plan().Title != want {
			t.Errorf("copy %d is %v, want %s", i, d.Plan().Title, want)
		}
	}
}
