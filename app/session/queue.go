package session

import (
	"context"
	"sync"
)

// queue runs functions one after the other outside the interface goroutine. The
// zero queue is ready.
type queue struct {
	mu      sync.Mutex
	waiting []func()
	running bool
	idle    chan struct{} // closed when the queue runs empty
}

// add puts a function at the end of the queue.
func (q *queue) add(work func()) {
	q.mu.Lock()
	defer q.mu.Unlock()
	q.waiting = append(q.waiting, work)
	if !q.running {
		q.running = true
		q.idle = make(chan struct{})
		go q.run()
	}
}

func (q *queue) run() {
	for {
		q.mu.Lock()
		if len(q.waiting) == 0 {
			q.running = false
			close(q.idle)
			q.mu.Unlock()
			return
		}
		work := q.waiting[0]
		q.waiting = q.waiting[1:]
		q.mu.Unlock()
		work()
	}
}

// wait returns when all that was added is done, or when the context is.
func (q *queue) wait(ctx context.Context) {
	q.mu.Lock()
	running, idle := q.running, q.idle
	q.mu.Unlock()
	if !running {
		return
	}
	select {
	case <-idle:
	case <-ctx.Done():
	}
}
