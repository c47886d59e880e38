package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"fourturn/app/words"
	"fourturn/assets"
)

// say runs a command line on 8 June 2027 and returns what it wrote and its exit code.
func say(t *testing.T, args ...string) (out, complaint string, code int) {
	t.Helper()
	var o, e bytes.Buffer
	term := &terminal{
		out: &o, err: &e, words: words.New("en"),
		now: func() time.Time { return time.Date(2027, 6, 8, 9, 0, 0, 0, time.UTC) },
	}
	code = run(term, args)
	return o.String(), e.String(), code
}

func example(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "example.yaml")
	if err := os.WriteFile(path, assets.Example, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestVersionAndHelp(t *testing.T) {
	if out, _, code := say(t, "--version"); code != exitGood || out != "fourturn "+appVersion+"\n" {
		t.Errorf("--version: %q, %d", out, code)
	}
	out, _, code := say(t, "help")
	if code != exitGood {
		t.Errorf("help ends with %d", code)
	}
	for _, c := range commands() {
		if !strings.Contains(out, "fourturn "+c.name) {
			t.Errorf("help does not name %s", c.name)
		}
	}
}

func TestUnknownWordsGetHelp(t *testing.T) {
	for _, args := range [][]string{{"prune"}, {"--prune"}, {"figures"}, {"figures", "a", "b"}, {"figures", "a", "--xml"}, {"calendar", "a"}, {"calendar", "a", "-o"}, {"check"}, {"figures", "a", "--today", "soon"}} {
		out, complaint, code := say(t, args...)
		if code != exitUsage || out != "" || complaint == "" {
			t.Errorf("%v: code %d, out %q, complaint %q", args, code, out, complaint)
		}
	}
}

func TestFiguresOfTheExample(t *testing.T) {
	out, complaint, code := say(t, "figures", example(t))
	if code != exitGood || complaint != "" {
		t.Fatalf("code %d: %s", code, complaint)
	}
	for _, want := range []string{"Copper Kettle Yard", "Half barrel", "Des Moines", "20-20-20 soluble"} {
		if !strings.Contains(out, want) {
			t.Errorf("the figures do not name %q", want)
		}
	}
	if strings.Contains(out, "⟦") {
		t.Error("a text is missing:\n" + out)
	}
}

// fullDisk takes a number of bytes and no more.
type fullDisk struct{ room int }

func (d *fullDisk) Write(p []byte) (int, error) {
	if len(p) > d.room {
		return d.room, syscall.ENOSPC
	}
	d.room -= len(p)
	return len(p), nil
}

func TestFiguresThatDoNotArriveAreAFault(t *testing.T) {
	plan := example(t)
	whole, _, _ := say(t, "figures", plan)
	for _, room := range []int{0, 1, len(whole) / 2, len(whole) - 1} {
		for _, args := range [][]string{{plan}, {plan, "--json"}} {
			var complaint bytes.Buffer
			term := &terminal{
				out: &fullDisk{room}, err: &complaint, words: words.New("en"),
				now: func() time.Time { return time.Date(2027, 6, 8, 9, 0, 0, 0, time.UTC) },
			}
			if code := runFigures(term, args); code != exitFault || !strings.Contains(complaint.String(), "no space left") {
				t.Errorf("room for %d bytes, %v: code %d, %q", room, args[1:], code, complaint.String())
			}
		}
	}
}

func TestAHugeFileIsRefusedWithAMessage(t *testing.T) {
	path := filepath.Join(t.TempDir(), "huge.yaml")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(f.Truncate(1<<40), f.Close()); err != nil { // a terabyte with nothing in it
		t.Skip("this file system makes no such file: ", err)
	}
	if _, complaint, code := say(t, "check", path); code != exitFault || !strings.Contains(complaint, "larger than 32 MB") {
		t.Errorf("code %d, %q", code, complaint)
	}
}

func TestTheExampleOfTheDemoReplacesNothing(t *testing.T) {
	folder := t.TempDir()
	var complaint bytes.Buffer
	term := &terminal{out: io.Discard, err: &complaint, words: words.New("en")}
	first, err := writeExample(term, folder)
	if err != nil || filepath.Base(first) != "example.yaml" {
		t.Fatalf("%q, %v", first, err)
	}
	if again, err := writeExample(term, folder); err != nil || again != first || complaint.Len() > 0 {
		t.Errorf("the second time it went to %q, %v: %s", again, err, complaint.String())
	}
	if err := os.WriteFile(first, []byte("fourturn: 1\ntitle: Mine\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	second, err := writeExample(term, folder)
	if err != nil || filepath.Base(second) != "example-2.yaml" || !strings.Contains(complaint.String(), "left as it is") {
		t.Errorf("beside a plan it went to %q, %v: %s", second, err, complaint.String())
	}
	if text, err := os.ReadFile(first); err != nil || !bytes.Contains(text, []byte("Mine")) {
		t.Errorf("the plan that was there now holds %q, %v", text, err)
	}
}

func TestFiguresAsJSON(t *testing.T) {
	out, _, code := say(t, "figures", example(t), "--json")
	if code != exitGood {
		t.Fatalf("code %d", code)
	}
	var document struct {
		Format string `json:"format"`
		Today  string `json:"today"`
		Pots   []struct {
			ID   string `json:"id"`
			Fill struct {
				Value   float64 `json:"value"`
				Working struct {
					Formula string `json:"formula"`
					Inputs  []any  `json:"inputs"`
				} `json:"working"`
			} `json:"volume_to_fill_line_L"`
		} `json:"pots"`
	}
	if err := json.Unmarshal([]byte(out), &document); err != nil {
		t.Fatal(err)
	}
	if document.Format != "fourturn figures 1" || document.Today != "2027-06-08" || len(document.Pots) < 8 {
		t.Errorf("format %q, today %q, %d pots", document.Format, document.Today, len(document.Pots))
	}
	for _, p := range document.Pots {
		if p.Fill.Value <= 0 || p.Fill.Working.Formula == "" || len(p.Fill.Working.Inputs) == 0 {
			t.Errorf("%s: volume %v with working %+v", p.ID, p.Fill.Value, p.Fill.Working)
		}
	}
}

func TestCheckNamesThePlace(t *testing.T) {
	path := filepath.Join(t.TempDir(), "bad.yaml")
	text := strings.Replace(string(assets.Example), "height: 40 cm\n    wall: 15 mm", "height: 80 m\n    wall: 15 mm", 1)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	out, complaint, code := say(t, "check", path)
	if code != exitFault {
		t.Errorf("a pot of 80 m ends with %d", code)
	}
	line := 1 + strings.Count(text[:strings.Index(text, "height: 80 m")], "\n")
	if want := path + ":" + strconv.Itoa(line) + ":"; !strings.Contains(out+complaint, want) {
		t.Errorf("no %q in\n%s%s", want, out, complaint)
	}
	if after, err := os.ReadFile(path); err != nil || string(after) != text {
		t.Error("check changed the file")
	}
}

func TestBrokenFilesAreLeftAlone(t *testing.T) {
	for name, text := range map[string]string{
		"no yaml": "fourturn: 1\npots: [", "unknown key": "fourturn: 1\npotz: {}\n", "wrong type": "fourturn: 1\npots: 7\n", "future": "fourturn: 99\ntitle: later\n", "empty": "",
	} {
		path := filepath.Join(t.TempDir(), "plan.yaml")
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		_, complaint, code := say(t, "figures", path)
		if name != "future" && (code != exitFault || !strings.Contains(complaint, path)) {
			t.Errorf("%s: code %d, %q", name, code, complaint)
		}
		if after, err := os.ReadFile(path); err != nil || string(after) != text {
			t.Errorf("%s: the file was changed", name)
		}
	}
	if _, complaint, code := say(t, "figures", filepath.Join(t.TempDir(), "gone.yaml")); code != exitFault || !strings.Contains(complaint, "gone.yaml") {
		t.Errorf("a file that is not there: %d, %q", code, complaint)
	}
}

func TestCalendarIsUpdatedNotDoubled(t *testing.T) {
	plan := example(t)
	file := filepath.Join(t.TempDir(), "year.ics")
	if _, complaint, code := say(t, "calendar", plan, "-o", file); code != exitGood {
		t.Fatal(complaint)
	}
	first, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if _, complaint, code := say(t, "calendar", plan, "-o", file); code != exitGood {
		t.Fatal(complaint)
	}
	again, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if n, m := bytes.Count(first, []byte("BEGIN:VEVENT")), bytes.Count(again, []byte("BEGIN:VEVENT")); n != m || n == 0 {
		t.Errorf("%d entries became %d", n, m)
	}
	if !bytes.Contains(first, []byte("\r\n")) {
		t.Error("lines do not end in CRLF")
	}
}

func TestTheExampleIsSound(t *testing.T) {
	plan := examplePlan()
	if len(plan.Pots) < 8 {
		t.Errorf("the example has %d pots", len(plan.Pots))
	}
	kinds := map[string]bool{}
	for _, p := range plan.Pots {
		kinds[string(p.Vessel.Kind)] = true
	}
	if len(kinds) < 8 {
		t.Errorf("the example has %d shapes", len(kinds))
	}
	out, complaint, code := say(t, "check", example(t))
	if code != exitGood {
		t.Errorf("the example does not pass its own check: %s%s", out, complaint)
	}
}
