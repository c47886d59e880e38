package logbook_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fourturn/app/logbook"
)

func clock() func() time.Time {
	now := time.Date(2027, time.February, 28, 23, 59, 58, 0, time.UTC)
	return func() time.Time {
		now = now.Add(time.Second)
		return now
	}
}

func open(t *testing.T, folder string) *logbook.Log {
	t.Helper()
	l, err := logbook.Open(folder, clock())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(l.Close)
	return l
}

func read(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestTheLogIsTurnedOverBySize(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "log")
	l := open(t, folder)
	long := strings.Repeat("x", 1000)
	for i := range 700 {
		l.Note("action", fmt.Sprint(i), long)
	}
	for _, name := range []string{"fourturn.log", "fourturn.1.log"} {
		info, err := os.Stat(filepath.Join(folder, name))
		if err != nil || info.Size() > 256<<10 || info.Size() < 1000 {
			t.Errorf("%s: %v, %v", name, info, err)
		}
	}
	if !strings.Contains(read(t, filepath.Join(folder, "fourturn.log")), "action 699 ") {
		t.Error("the newest line is not in the log")
	}
}

func TestTheLogSaysNothingOfThePerson(t *testing.T) {
	t.Setenv("HOME", "/home/somebody")
	t.Setenv("USERPROFILE", "/home/somebody")
	folder := t.TempDir()
	l := open(t, folder)
	fmt.Fprintf(l, "Fyne error:  Preferences load error\n  Cause: open /home/somebody/.config/x: denied\n")
	path, err := l.Crash("open /home/somebody/plan.yaml", []byte("main.go:1"))
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range []string{filepath.Join(folder, "fourturn.log"), path} {
		if text := read(t, file); strings.Contains(text, "somebody") || !strings.Contains(text, "~/") {
			t.Errorf("%s holds %q", file, text)
		}
	}
}

func TestACrashFileHasStackAndLastActions(t *testing.T) {
	l := open(t, t.TempDir())
	if l.LastCrash() != "" {
		t.Error("there was a crash before")
	}
	for i := range 100 {
		l.Note("action", fmt.Sprintf("number-%d", i))
	}
	var path string
	for range 9 {
		var err error
		if path, err = l.Crash("mix: negative share", []byte("goroutine 1 [running]:\nmix.Fill\n")); err != nil {
			t.Fatal(err)
		}
	}
	text := read(t, path)
	for _, want := range []string{"mix: negative share", "goroutine 1 [running]:\nmix.Fill", "number-99", "number-60"} {
		if !strings.Contains(text, want) {
			t.Errorf("the crash file lacks %q:\n%s", want, text)
		}
	}
	if l.LastCrash() != path {
		t.Errorf("the last crash is %q, not %q", l.LastCrash(), path)
	}
	if all, _ := filepath.Glob(filepath.Join(filepath.Dir(path), "crash-*")); len(all) != 5 {
		t.Errorf("%d crash files are kept", len(all))
	}
}

// A fault in another goroutine cannot be caught by the window: the runtime writes it down, and the
// next start makes a crash file of it.
func TestAFaultBesideTheInterfaceIsKept(t *testing.T) {
	if folder := os.Getenv("LOGBOOK_TEST_DIES"); folder != "" {
		l, err := logbook.Open(folder, clock())
		if err != nil || l.Watch() != nil {
			t.Fatal(err)
		}
		l.Note("action", "last-of-all")
		panic("rotation: no such day") // nobody in the program catches it
	}
	folder := t.TempDir()
	program := exec.Command(os.Args[0], "-test.run", "^TestAFaultBesideTheInterfaceIsKept$")
	program.Env = append(os.Environ(), "LOGBOOK_TEST_DIES="+folder)
	if err := program.Run(); err == nil {
		t.Fatal("the program did not die")
	}
	l := open(t, folder)
	if err := l.Watch(); err != nil {
		t.Fatal(err)
	}
	if l.LastCrash() == "" {
		t.Fatal("no crash file")
	}
	text := read(t, l.LastCrash())
	for _, want := range []string{"rotation: no such day", "goroutine ", "last-of-all"} {
		if !strings.Contains(text, want) {
			t.Errorf("the crash file lacks %q", want)
		}
	}
	before := l.LastCrash()
	l.Close()
	again := open(t, folder)
	if err := again.Watch(); err != nil || again.LastCrash() != before {
		t.Errorf("the crash was told twice: %v, %q", err, again.LastCrash())
	}
}

func TestAFolderThatCannotBeWritten(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	l, err := logbook.Open(filepath.Join(file, "log"), clock())
	if err == nil {
		t.Error("a file is no folder")
	}
	l.Note("action") // does no harm
	if _, err := l.Crash("reason", nil); err == nil {
		t.Error("a crash file was written nowhere")
	}
}
