// Package logbook keeps what the program did, for somebody who has to find out why it
// stopped: a log of limited size, and a file for each crash with the stack and the
// last actions.
//
// The log holds names of actions, edits and files, and versions. It holds nothing of
// the plan, and the person's home folder is written as "~".
package logbook

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"
)

// The log: a file that is put aside when it is full, and the one before it.
const (
	logName  = "fourturn.log"
	oldName  = "fourturn.1.log"
	mostSize = 256 << 10 // bytes; some thousand actions, and still quickly read
	mostLast = 40        // lines that a crash file repeats
)

// Log is an open logbook. It may be used from any goroutine. A log that cannot be
// written is passed over: it must never keep anybody from working.
type Log struct {
	folder string
	home   string
	now    func() time.Time

	mu    sync.Mutex
	file  *os.File
	size  int64
	last  []string // the last lines, the newest last
	crash *os.File // what the runtime writes when it dies
}

// Open opens the logbook in a folder, which is made. The log works all the same where
// an error is returned; it then keeps the last lines alone.
func Open(folder string, now func() time.Time) (*Log, error) {
	home, _ := os.UserHomeDir()
	l := &Log{folder: folder, home: home, now: now}
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return l, fmt.Errorf("logbook: %w", err)
	}
	return l, l.openFile()
}

func (l *Log) openFile() error {
	file, err := os.OpenFile(filepath.Join(l.folder, logName), os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o600)
	if err != nil {
		return fmt.Errorf("logbook: %w", err)
	}
	info, err := file.Stat()
	if err != nil {
		return errors.Join(fmt.Errorf("logbook: %w", err), file.Close())
	}
	l.file, l.size = file, info.Size()
	return nil
}

// Note writes one line: what happened, and to what.
func (l *Log) Note(event string, about ...string) {
	l.mu.Lock()
	defer l.mu.Unlock()
	line := strings.TrimSpace(event + " " + strings.Join(about, " "))
	line = l.now().Format(time.RFC3339) + " " + l.private(line)
	l.last = append(l.last, line)
	l.last = l.last[max(0, len(l.last)-mostLast):]
	l.write(line + "\n")
}

// Write takes lines from the standard library's log, so that the toolkit's complaints
// are kept. It never fails.
func (l *Log) Write(text []byte) (int, error) {
	for line := range strings.Lines(string(text)) {
		l.Note("toolkit", strings.TrimSpace(line))
	}
	return len(text), nil
}

// private takes out of a line what says who the person is.
func (l *Log) private(line string) string {
	line = strings.ReplaceAll(line, "\n", " ")
	if len(l.home) > 1 {
		line = strings.ReplaceAll(line, l.home, "~")
	}
	return line
}

func (l *Log) write(text string) {
	if l.file == nil {
		return
	}
	if l.size+int64(len(text)) > mostSize {
		_ = l.file.Close()
		l.file = nil
		_ = os.Rename(filepath.Join(l.folder, logName), filepath.Join(l.folder, oldName))
		if l.openFile() != nil {
			return
		}
	}
	n, _ := l.file.WriteString(text)
	l.size += int64(n)
}

// Close closes the files.
func (l *Log) Close() {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.file != nil {
		_ = l.file.Close()
		l.file = nil
	}
	l.stopWatching()
}
