package nutrition

import "math/bits"

// guide looks a cycle ahead: how many rounds beyond one it would take to give every
// pot its next feed. Two pots that are due the same product on days in common need
// one; two that are due different products need two, each time, until one of them
// falls in with the other. The search looks where that is least; it is a guess and
// no part of any bound.
type guide struct {
	season  *season
	latest  []int // of each group that is due soon, the last day on which it can be fed; -1 once it is
	windows []window
}

// window is a run of days on which a group can be given one product.
type window struct{ first, last int }

// ahead is how far the guide looks, in days.
const ahead = 21

// extra returns the rounds beyond one for everybody's next feed after day t.
func (g *guide) extra(words []uint64, t int) int {
	products := g.season.rules.Products
	g.latest, g.windows = g.latest[:0], g.windows[:0]
	for i, group := range g.season.leading {
		latest, start := -1, len(g.windows)
		for p := range products {
			w := group.window(words[i*products+(p+products-1)%products], t, g.season.rules.Grace)
			latest = max(latest, w.last)
			g.windows = append(g.windows, w)
		}
		if latest < 0 || latest > t+ahead {
			g.windows = g.windows[:start]
			continue
		}
		g.latest = append(g.latest, latest)
	}
	rounds := 0
	for left := len(g.latest); left > 0; rounds++ {
		left -= g.serve()
	}
	return max(0, rounds-1)
}

// window returns the days after t on which the group can be fed, given what its word
// says of the product before.
func (g *group) window(word uint64, t, grace int) window {
	w := window{never, -1}
	if days := word & aged; days != 0 {
		oldest, youngest := bits.Len64(days)-1, bits.TrailingZeros64(days)
		w = window{max(t+1, t-oldest+g.shortest), g.dueAfter(t - youngest)}
	}
	if word&waiting != 0 {
		w = window{t + 1, max(w.last, g.graceDue(t, grace))}
	}
	if word&overdue != 0 {
		w = window{t + 1, t + 1}
	}
	return w
}

// serve holds one round on the earliest last day, with the product that serves most
// groups and one of those that cannot wait, and returns how many it served.
func (g *guide) serve() int {
	day := never
	for _, latest := range g.latest {
		if latest >= 0 {
			day = min(day, latest)
		}
	}
	products := g.season.rules.Products
	most, product := 0, 0
	for p := range products {
		served, urgent := 0, false
		for i, latest := range g.latest {
			if latest >= 0 && g.holds(i*products+p, day) {
				served++
				urgent = urgent || latest == day
			}
		}
		if urgent && served > most {
			most, product = served, p
		}
	}
	served := 0
	for i, latest := range g.latest {
		if latest >= 0 && (g.holds(i*products+product, day) || most == 0 && latest == day) {
			g.latest[i] = -1
			served++
		}
	}
	return served
}

func (g *guide) holds(i, day int) bool { return g.windows[i].first <= day && day <= g.windows[i].last }
