package main

import "sync"

// desk is the interface goroutine where there is no window to give one: it runs
// what is posted when it is told to wait for something.
type desk struct {
	mu     sync.Mutex
	posted []func()
	came   chan struct{}
}

func newDesk() *desk { return &desk{came: make(chan struct{}, 1)} }

// post keeps a function until the desk waits. It may be called from anywhere.
func (d *desk) post(f func()) {
	d.mu.Lock()
	d.posted = append(d.posted, f)
	d.mu.Unlock()
	select {
	case d.came <- struct{}{}:
	default:
	}
}

// until runs what is posted until a condition holds.
func (d *desk) until(holds func() bool) {
	for !holds() {
		if !d.run() && !holds() {
			<-d.came
		}
	}
}

// run runs what is posted by now and reports whether there was anything.
func (d *desk) run() bool {
	d.mu.Lock()
	posted := d.posted
	d.posted = nil
	d.mu.Unlock()
	for _, f := range posted {
		f()
	}
	return len(posted) > 0
}
