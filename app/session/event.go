package session

// Event says what changed. Several may come at once.
type Event uint8

// What listeners are told of.
const (
	PlanChanged    Event = 1 << iota // the plan, and with it what can be undone
	OutlookChanged                   // what is worked out
	FileChanged                      // the file, its name, who has it open, whether there is unsaved work
	BusyChanged                      // what is going on in the background
)

// Has reports whether an event is among several.
func (e Event) Has(one Event) bool { return e&one != 0 }

// Subscribe has a function called on the interface goroutine after every change.
// The returned function ends it.
func (s *Session[O]) Subscribe(listener func(Event)) (cancel func()) {
	id := s.nextID
	s.nextID++
	s.listeners[id] = listener
	return func() { delete(s.listeners, id) }
}

// notify tells the listeners in the order in which they came.
func (s *Session[O]) notify(e Event) {
	for id := range s.nextID {
		if listener, ok := s.listeners[id]; ok {
			listener(e)
		}
	}
}

// Work is something that goes on in the background.
type Work string

// What can go on in the background.
const (
	WorkingOut  Work = "working_out"
	OpeningFile Work = "opening"
	SavingFile  Work = "saving"
)

// Busy reports whether some work goes on in the background.
func (s *Session[O]) Busy(work Work) bool { return s.busy[work] > 0 }

func (s *Session[O]) begin(work Work) {
	s.busy[work]++
	if s.busy[work] == 1 {
		s.notify(BusyChanged)
	}
}

func (s *Session[O]) end(work Work) {
	s.busy[work]--
	if s.busy[work] == 0 {
		s.notify(BusyChanged)
	}
}
