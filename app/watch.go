package main

import (
	"bytes"
	"fmt"
	"io"
	"log"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"

	"fourturn/app/logbook"
	"fourturn/app/words"
)

// exitCrash is the exit code after a fault of the program itself.
const exitCrash = 3

// watch keeps the log, and catches what would end the program without a word.
type watch struct {
	terminal *terminal
	book     *logbook.Log
	opengl   *openGLFaults
	end      func() // what is to be done at the end
}

// newWatch opens the logbook in the folder where the system wants such things, and has
// the toolkit's complaints go there too.
func newWatch(t *terminal) *watch {
	book, err := logbook.Open(filepath.Join(stateFolder(), "log"), t.now)
	if err != nil {
		fmt.Fprintln(t.err, err)
	}
	if err := book.Watch(); err != nil {
		fmt.Fprintln(t.err, err)
	}
	w := &watch{terminal: t, book: book, opengl: &openGLFaults{terminal: t}}
	w.opengl.leave = func() {
		w.finish()
		book.Close()
		os.Exit(exitFault)
	}
	log.SetOutput(io.MultiWriter(t.err, book, w.opengl))
	book.Note("start", appVersion, runtime.Version(), runtime.GOOS, runtime.GOARCH)
	return w
}

// guard runs the window and returns the exit code. run gets a function to be told what
// to do at the end, also after a fault.
func (w *watch) guard(run func(closing func(end func()))) (code int) {
	defer func() {
		reason := recover()
		w.finish()
		switch {
		case w.opengl.seen:
			code = exitFault
		case reason != nil:
			w.crashed(reason)
			code = exitCrash
		default:
			w.book.Note("end")
		}
	}()
	run(func(end func()) { w.end = end })
	return exitGood
}

// finish does what is to be done at the end, even where the fault has left its mark.
func (w *watch) finish() {
	end := w.end
	w.end = nil
	if end == nil {
		return
	}
	defer func() {
		if reason := recover(); reason != nil {
			w.book.Note("fault at the end", fmt.Sprint(reason))
		}
	}()
	end()
}

// crashed writes the crash file and says where it is.
func (w *watch) crashed(reason any) {
	path, err := w.book.Crash(reason, debug.Stack())
	if err != nil {
		path = err.Error()
	}
	w.terminal.complain("desktop.crashed", words.A{"path": path})
	showMessage(appName, w.terminal.words.T("desktop.crashed", words.A{"path": path}))
}

// openGLFaults sees the toolkit complain that it has no window to draw in. After that
// the toolkit ends the program at once, or waits for ever without a window: so the
// person is told here, and the program left.
type openGLFaults struct {
	terminal *terminal
	seen     bool
	leave    func() // nil goes on
}

// openGLSigns are how the toolkit says that it has no display or no OpenGL.
var openGLSigns = [...]string{"window creation error", "failed to initialise GLFW", "failed to initialise OpenGL"}

// Write looks through what the toolkit says.
func (f *openGLFaults) Write(text []byte) (int, error) {
	for _, sign := range openGLSigns {
		if !f.seen && bytes.Contains(text, []byte(sign)) {
			f.seen = true
			f.terminal.complain("desktop.no_opengl")
			showMessage(appName, f.terminal.words.T("desktop.no_opengl"))
			if f.leave != nil {
				f.leave()
			}
		}
	}
	return len(text), nil
}
