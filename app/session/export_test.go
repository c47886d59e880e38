package session

// Hang makes the queue of plan files wait, like a drive that does not answer.
func (s *Session[O]) Hang(until <-chan struct{}) { s.disk.add(func() { <-until }) }
