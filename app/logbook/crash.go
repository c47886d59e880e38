package logbook

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
)

const (
	crashHead   = "crash-"
	crashEnd    = ".txt"
	dyingName   = "dying.txt" // what the runtime wrote when it died
	mostCrashes = 5
	crashTime   = "20060102-150405"
)

// Watch has the runtime write into the logbook when it dies of a fault that nobody
// caught, in whichever goroutine. What it wrote the last time becomes a crash file.
func (l *Log) Watch() error {
	l.mu.Lock()
	defer l.mu.Unlock()
	path := filepath.Join(l.folder, dyingName)
	if text, err := os.ReadFile(path); err == nil && len(text) > 0 {
		if _, err := l.keepCrash(string(text), l.tail()); err != nil {
			return err
		}
	}
	file, err := os.OpenFile(path, os.O_CREATE|os.O_TRUNC|os.O_WRONLY, 0o600)
	if err != nil {
		return fmt.Errorf("logbook: %w", err)
	}
	l.crash = file
	return debug.SetCrashOutput(file, debug.CrashOptions{})
}

func (l *Log) stopWatching() {
	if l.crash == nil {
		return
	}
	_ = debug.SetCrashOutput(nil, debug.CrashOptions{})
	_ = l.crash.Close()
	_ = os.Remove(filepath.Join(l.folder, dyingName))
	l.crash = nil
}

// tail returns the last lines of the log file.
func (l *Log) tail() []string {
	text, err := os.ReadFile(filepath.Join(l.folder, logName))
	if err != nil {
		return nil
	}
	lines := strings.Split(strings.TrimSpace(string(text)), "\n")
	return lines[max(0, len(lines)-mostLast):]
}

// Crash writes a crash file for a fault that was caught, and returns its path.
func (l *Log) Crash(reason any, stack []byte) (path string, err error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.keepCrash(fmt.Sprintf("%v\n\n%s", reason, stack), l.last)
}

func (l *Log) keepCrash(what string, last []string) (path string, err error) {
	path = filepath.Join(l.folder, crashHead+l.now().UTC().Format(crashTime)+crashEnd)
	what = strings.ReplaceAll(what, "\n", "\x00") // keeps its lines
	what = strings.ReplaceAll(l.private(what), "\x00", "\n")
	text := "Fourturn stopped.\n\n" + what + "\nLast actions:\n" + strings.Join(last, "\n") + "\n"
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		return "", fmt.Errorf("logbook: %w", err)
	}
	all := l.crashes()
	for _, old := range all[:max(0, len(all)-mostCrashes)] {
		_ = os.Remove(old)
	}
	return path, nil
}

// crashes returns the paths of the crash files, the oldest first.
func (l *Log) crashes() []string {
	all, _ := filepath.Glob(filepath.Join(l.folder, crashHead+"*"+crashEnd))
	slices.Sort(all) // the time is in the name
	return all
}

// LastCrash returns the path of the newest crash file, or "".
func (l *Log) LastCrash() string {
	all := l.crashes()
	if len(all) == 0 {
		return ""
	}
	return all[len(all)-1]
}
