//go:build unix

package planfile

import (
	"bufio"
	"fmt"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

// killSaves is how many saves the helper makes in all, over all its lives.
const (
	killSaves  = 2000                   // a tenth of them in a short run
	killFolder = "PLANFILE_KILL_FOLDER" // tells the test binary that it is the helper
)

func TestMain(m *testing.M) {
	if folder := os.Getenv(killFolder); folder != "" {
		saveUntilKilled(folder)
		return
	}
	os.Exit(m.Run())
}

// noon is the clock of both processes: a clock that stands still must not matter.
func noon() time.Time { return time.Date(2027, time.June, 8, 12, 0, 0, 0, time.UTC) }

// saveUntilKilled is the helper: it saves plan after plan, and says the number of
// each when it is saved.
func saveUntilKilled(folder string) {
	path := filepath.Join(folder, "plan.yaml")
	s := NewStore(filepath.Join(folder, "state"), noon, func() string { return strconv.FormatInt(rand.Int63(), 36) })
	d, stamp, err := s.Load(path)
	if err != nil {
		fmt.Println("error", err)
		return
	}
	journal, err := s.NewJournal()
	if err != nil {
		fmt.Println("error", err)
		return
	}
	plan := *d.Plan()
	number, _ := strconv.Atoi(plan.Title)
	for number < killSaves {
		number++
		plan.Title = strconv.Itoa(number)
		if d, err = d.With(&plan); err == nil {
			err = journal.Write(Unsaved{Path: path, Text: d.Text()})
		}
		if err == nil {
			stamp, err = s.Save(path, d.Text(), stamp)
		}
		if err != nil {
			fmt.Println("error", err)
			return
		}
		fmt.Println(number)
	}
}

// A process is killed at random moments of 2,000 saves. At each death the file
// must hold a whole plan: the last one that was said to be saved, or the one that
// was being saved. Every copy must be whole too.
func TestKilledWhileSaving(t *testing.T) {
	if underRace {
		t.Skip("one goroutine in each of two processes")
	}
	t.Parallel() // it mostly waits for the disk
	folder := t.TempDir()
	path := filepath.Join(folder, "plan.yaml")
	comment := strings.Repeat("# a comment that makes the file longer than one block\n", 200)
	if err := os.WriteFile(path, []byte(comment+"fourturn: 1\ntitle: 0\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	seed := int64(os.Getpid()) // another one each run
	random := rand.New(rand.NewSource(seed))
	t.Logf("seed %d", seed)
	store := NewStore(filepath.Join(folder, "state"), noon, func() string { return "test" })
	kills, saved := 0, 0
	wanted := killSaves
	if os.Getenv("CI") == "" {
		wanted /= 4
	}
	for saved < wanted {
		said, killed := oneLife(t, folder, time.Duration(random.Int63n(int64(150*time.Millisecond))))
		if killed {
			kills++
		}
		d, _, err := store.Load(path)
		if err != nil {
			t.Fatalf("after kill %d the plan is not whole: %v", kills, err)
		}
		number, err := strconv.Atoi(d.Plan().Title)
		if err != nil || number < max(said, saved) || number > max(said, saved)+1 {
			t.Fatalf("after kill %d the file holds plan %q; %d was said to be saved", kills, d.Plan().Title, max(said, saved))
		}
		if !strings.HasPrefix(string(d.Text()), comment) {
			t.Fatal("the comments are not whole")
		}
		saved = number
		checkJournals(t, store, saved)
		copies, err := store.Copies(path)
		if err != nil || len(copies) > copiesKept+daysKept {
			t.Fatalf("%d copies, %v", len(copies), err)
		}
		for _, c := range copies {
			if _, err := store.OpenCopy(c); err != nil {
				t.Fatalf("copy %s is not whole: %v", c.Path, err)
			}
		}
	}
	t.Logf("killed %d times during %d saves", kills, saved)
	if kills < 2 {
		t.Errorf("killed only %d times", kills)
	}
}

// checkJournals finds the journal of the helper that was killed: what it held was
// saved already or was about to be.
func checkJournals(t *testing.T, store *Store, saved int) {
	t.Helper()
	found, err := store.Unsaved()
	if err != nil || len(found) > 1 {
		t.Fatalf("found %d journals, %v", len(found), err)
	}
	for _, f := range found {
		if f.Err != nil {
			t.Fatalf("the journal is not whole: %v", f.Err)
		}
		d, err := Decode(f.Text)
		if err != nil {
			t.Fatal(err)
		}
		if number, err := strconv.Atoi(d.Plan().Title); err != nil || number < saved || number > saved+1 {
			t.Fatalf("the journal holds plan %q, the file %d", d.Plan().Title, saved)
		}
		if err := store.Forget(f); err != nil {
			t.Fatal(err)
		}
	}
}

// oneLife runs the helper for a while after its first save and kills it. It
// returns the last number that the helper said.
func oneLife(t *testing.T, folder string, life time.Duration) (said int, killed bool) {
	t.Helper()
	helper := exec.Command(os.Args[0])
	helper.Env = append(os.Environ(), killFolder+"="+folder)
	out, err := helper.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := helper.Start(); err != nil {
		t.Fatal(err)
	}
	timer := time.AfterFunc(10*time.Second, func() { _ = helper.Process.Kill() })
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		number, err := strconv.Atoi(lines.Text())
		if err != nil {
			t.Fatalf("the helper says %q", lines.Text())
		}
		if said == 0 {
			timer.Reset(life)
		}
		said = number
	}
	timer.Stop()
	return said, helper.Wait() != nil
}
