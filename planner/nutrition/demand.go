package nutrition

import (
	"fourturn/planner/civil"
)

// Interval is the days from one feed of a pot to its next.
type Interval struct {
	Shortest int // at least 1
	Longest  int // at least Shortest, at most [LongestInterval]
	Wanted   int // between them; 0 means the middle
}

// LongestInterval is the longest interval between feeds that rounds are planned for.
const LongestInterval = 60

// Sound reports whether the interval can be planned for.
func (i Interval) Sound() bool {
	return i.Shortest >= 1 && i.Longest >= i.Shortest && i.Longest <= LongestInterval &&
		(i.Wanted == 0 || i.Wanted >= i.Shortest && i.Wanted <= i.Longest)
}

func (i Interval) wanted() int {
	if i.Wanted != 0 {
		return i.Wanted
	}
	return (i.Shortest + i.Longest) / 2
}

// Span is a run of days, both ends included.
type Span struct{ First, Last civil.Date }

// Holds reports whether d is in the span.
func (s Span) Holds(d civil.Date) bool { return d >= s.First && d <= s.Last }

// AnyProduct as a last product means that the turn may begin with any product.
const AnyProduct = -1

// Demand is what one pot asks of the rounds.
type Demand struct {
	Pot         string   // id, for findings and for the round's list
	Interval    Interval // its own range
	Open        []Span   // days on which it may be fed, in order and apart, see [Openings]
	LastFed     civil.Date
	LastProduct int        // index in the turn of the product it had last, or [AnyProduct]; not read while LastFed is zero
	NotBefore   civil.Date // a skipped feed puts it off to this day; zero for none
}

// Feed is one feed of one pot.
type Feed struct {
	Date    civil.Date
	Product int // index in the turn
}

// follows returns the product after p in a turn of n products.
func follows(p, n int) int { return (p + 1) % n }

// NextFeeds returns the next feeds of a single pot from a day on, up to n of them,
// at its wanted interval in a turn of products: by count, whatever the dates. It
// stops where the open days end. It panics on a turn of no products or an unsound
// interval.
func NextFeeds(d Demand, products int, from civil.Date, n int) []Feed {
	if products < 1 {
		panic("nutrition: a turn needs a product")
	}
	if !d.Interval.Sound() {
		panic("nutrition: unsound interval of feeds")
	}
	product := 0
	day := from
	if !d.LastFed.IsZero() {
		day = max(day, d.LastFed.AddDays(d.Interval.wanted()))
		if d.LastProduct >= 0 && d.LastProduct < products {
			product = follows(d.LastProduct, products)
		}
	}
	day = max(day, d.NotBefore)
	var feeds []Feed
	for len(feeds) < n {
		open, ok := firstOpen(d.Open, day)
		if !ok {
			break
		}
		feeds = append(feeds, Feed{Date: open, Product: product})
		product = follows(product, products)
		day = open.AddDays(d.Interval.wanted())
	}
	return feeds
}

// firstOpen returns the first open day that is not before day.
func firstOpen(open []Span, day civil.Date) (civil.Date, bool) {
	for _, s := range open {
		if s.Last >= day {
			return max(day, s.First), true
		}
	}
	return 0, false
}
