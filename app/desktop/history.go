package desktop

// historyKept is how many steps back are remembered; more than anybody goes.
const historyKept = 100

// history is where one has been, as in a browser: going somewhere new forgets
// what lay ahead.
type history struct {
	places []place
	at     int
}

// here returns the place one is at; it is zero before the first visit.
func (h *history) here() place {
	if len(h.places) == 0 {
		return place{}
	}
	return h.places[h.at]
}

// visit goes to a place and reports whether that is another than here.
func (h *history) visit(p place) bool {
	if len(h.places) > 0 && (p == h.here() || p.id == "" && p.room == h.here().room) {
		return false
	}
	if len(h.places) > 0 {
		h.places = h.places[:h.at+1]
	}
	h.places = append(h.places, p)
	if len(h.places) > historyKept {
		h.places = h.places[1:]
	}
	h.at = len(h.places) - 1
	return true
}

func (h *history) canGoBack() bool    { return h.at > 0 }
func (h *history) canGoForward() bool { return h.at < len(h.places)-1 }

// back goes one step back and reports whether there was one.
func (h *history) back() bool {
	if !h.canGoBack() {
		return false
	}
	h.at--
	return true
}

// forward goes one step ahead and reports whether there was one.
func (h *history) forward() bool {
	if !h.canGoForward() {
		return false
	}
	h.at++
	return true
}
