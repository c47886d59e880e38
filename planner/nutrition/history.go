package nutrition

import (
	"cmp"
	"slices"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// EventKind says what became of a feed.
type EventKind int

// What can become of a feed.
const (
	Fed     EventKind = iota // given, on its day or late
	Skipped                  // left out, for rain, say
)

// Event is one thing that happened to the feeding of one pot.
type Event struct {
	Date    civil.Date // the day it really happened
	Kind    EventKind
	Product int // index in the turn of what was in the can, for Fed; [AnyProduct] for something else
}

// History is what one pot really had, in order.
type History struct {
	events []Event
}

// NewHistory puts the events of one pot in order. The same feed entered twice, on one
// day with one product, counts once.
func NewHistory(events []Event) History {
	ordered := slices.Clone(events)
	slices.SortStableFunc(ordered, func(a, b Event) int {
		return cmp.Or(cmp.Compare(a.Date, b.Date), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Product, b.Product))
	})
	return History{slices.Compact(ordered)}
}

// Events returns what happened, in order.
func (h History) Events() []Event { return slices.Clone(h.events) }

// Feeds returns the feeds that were given, in order.
func (h History) Feeds() []Feed {
	var feeds []Feed
	for _, e := range h.events {
		if e.Kind == Fed {
			feeds = append(feeds, Feed{e.Date, e.Product})
		}
	}
	return feeds
}

// Next returns the product that comes next in a turn: the one after the last that
// was really given, whatever had been planned and whenever it was. ok is false where
// the turn may begin anywhere.
func (h History) Next(products int) (product int, ok bool) {
	for _, e := range slices.Backward(h.events) {
		if e.Kind == Fed && e.Product >= 0 && e.Product < products {
			return follows(e.Product, products), true
		}
	}
	return 0, false
}

// Since returns the demand as the history leaves it: its interval counts from the
// last feed of any kind, its turn from the last product of the turn, and a feed
// skipped after that is put off by some days, at least one.
func (h History) Since(d Demand, products, putOff int) Demand {
	d.LastFed, d.LastProduct, d.NotBefore = 0, AnyProduct, 0
	if next, ok := h.Next(products); ok {
		d.LastProduct = (next + products - 1) % products
	}
	for _, e := range h.events {
		switch e.Kind {
		case Fed:
			d.LastFed, d.NotBefore = e.Date, 0
		case Skipped:
			d.NotBefore = e.Date.AddDays(max(1, putOff))
		}
	}
	return d
}

// Findings reports what went against the turn or came too soon after the feed
// before, at or after a day.
func (h History) Findings(pot string, interval Interval, products int, since civil.Date) []finding.Finding {
	var found []finding.Finding
	feeds := h.Feeds()
	for i := 1; i < len(feeds); i++ {
		last, f := feeds[i-1], feeds[i]
		if f.Date < since {
			continue
		}
		args := []finding.Arg{
			{Name: "pot", Value: working.Text(pot)},
			{Name: "date", Value: working.Date(f.Date)},
			{Name: "before", Value: working.Date(last.Date)},
			{Name: "days", Value: working.Number(float64(f.Date-last.Date), working.Day)},
			{Name: "product", Value: working.Number(float64(f.Product+1), working.None)},
		}
		where := finding.Where{"pots", pot}
		if int(f.Date-last.Date) < interval.Shortest {
			found = append(found, finding.Finding{Code: "nutrition.fed_too_soon", Severity: finding.Note, Where: where, Args: args})
		}
		if products > 1 && f.Product >= 0 && f.Product == last.Product {
			found = append(found, finding.Finding{Code: "nutrition.turn_broken", Severity: finding.Note, Where: where, Args: args})
		}
	}
	return found
}
