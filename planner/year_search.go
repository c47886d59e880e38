package planner

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/rotation"
)

// yearSearch is the search for the change-out days of a pot's own plantings. Pots that
// ask the same share the answer.
type yearSearch struct {
	spots    []*yearSpot
	spring   []turnDay // the turns as the seasons and the person have them, by day
	standing int       // position in spring of what stands when the search begins; -1 is an empty pot
	from     civil.Date
	turns    []searchedTurn // parallel to request.Turns
	request  rotation.Request
	key      string
	yearAnswer
}

// searchedTurn is a turn of the search with what it came from.
type searchedTurn struct {
	turnDay
	loose string // key of why its day was not searched for; empty where it was
}

// turnDay is the change-out of a planting as the seasons and the person have it.
type turnDay struct {
	planting *Planting
	day      civil.Date // the pinned day, else that of the site's seasons
	site     seasonDay  // as the site's seasons have it
	pinned   bool
}

// How long a planting stands at least: as long as the shortest season that is planted
// for; where that leaves no days, as among days that the person chose, a week (judgement).
const (
	usualStand = 28
	looseStand = 7
)

// searchDays looks for the change-out days of all pots at once, those that ask the same
// together.
func (w *workOut) searchDays() {
	w.ref.Years.begin(w.ref.Book)
	w.searches = make([]*yearSearch, len(w.Plan.Pots))
	matching := map[string][]int{}
	for i := range w.Plan.Pots {
		if match := w.Plan.Pots[i].Match; match != "" {
			matching[match] = append(matching[match], i)
		}
	}
	var requests []rotation.Request
	asked := map[string]int{}
	var first []*yearSearch
	for i := range w.Plan.Pots {
		s := w.searchFor(i, matching)
		if w.searches[i] = s; s == nil {
			continue
		}
		if a, ok := w.ref.Years.answer(s.key); ok {
			s.yearAnswer = a
			continue
		}
		if _, ok := asked[s.key]; !ok {
			asked[s.key] = len(requests)
			requests, first = append(requests, s.request), append(first, s)
		}
	}
	results, errs := planDays(requests)
	for k, s := range first {
		w.ref.Years.keep(s.key, yearAnswer{results[k], errs[k]})
	}
	for _, s := range w.searches {
		if s == nil || s.result != nil || s.err != nil {
			continue
		}
		k := asked[s.key]
		s.yearAnswer = yearAnswer{results[k], errs[k]}
	}
}

// planDays plans many pots at once. Where plantings cannot stand as long as usual, they
// stand as long as they can.
func planDays(requests []rotation.Request) ([]*rotation.Result, []error) {
	results, errs := rotation.PlanAll(requests)
	var again []rotation.Request
	var which []int
	for k, err := range errs {
		if errors.Is(err, rotation.ErrNoDays) {
			r := requests[k]
			r.MinStand = looseStand
			again, which = append(again, r), append(which, k)
		}
	}
	later, failed := rotation.PlanAll(again)
	for i, k := range which {
		results[k], errs[k] = later[i], failed[i]
	}
	return results, errs
}

// searchFor prepares the search of a pot, or returns nil where there is nothing to
// search for. Pots that match, listed by their word, share that of the first of them.
func (w *workOut) searchFor(i int, matching map[string][]int) *yearSearch {
	pot := &w.Plan.Pots[i]
	if pot.Match == "" {
		return w.searchOf([]int{i})
	}
	if k := matching[pot.Match][0]; k != i {
		if !samePlantings(pot, &w.Plan.Pots[k]) {
			w.find("plan.match_differs", finding.Warning, finding.Where{"pots", pot.ID, "match"}, textArg("other", w.Plan.Pots[k].Label()))
			return w.searchOf([]int{i})
		}
		return w.searches[k]
	}
	differs := func(k int) bool { return !samePlantings(pot, &w.Plan.Pots[k]) }
	return w.searchOf(slices.DeleteFunc(slices.Clone(matching[pot.Match]), differs))
}

// samePlantings reports whether two pots hold the same plantings.
func samePlantings(a, b *Pot) bool {
	return slices.EqualFunc(a.Plantings, b.Plantings, func(x, y Planting) bool {
		return x.Season == y.Season && x.Recipe == y.Recipe && x.Start == y.Start && slices.Equal(x.Plants, y.Plants)
	})
}

// searchOf prepares the search of pots that get the same plantings on the same days.
func (w *workOut) searchOf(pots []int) *yearSearch {
	pot := &w.Plan.Pots[pots[0]]
	at := w.places[pot.Spot]
	if at == nil || at.site == nil || !at.site.Known || len(pot.Plantings) == 0 {
		return nil
	}
	s := &yearSearch{spring: w.turnDays(pot, at.spot, at.site)}
	if len(s.spring) == 0 {
		return nil
	}
	for _, i := range pots {
		other := w.places[w.Plan.Pots[i].Spot]
		if other == nil || other.site == nil || !other.site.Known {
			continue
		}
		s.spots = append(s.spots, w.yearSpotOf(other.spot, other.site))
	}
	happened := w.happenedTo(pots, pot)
	s.begin(w, happened)
	s.ask(w, happened)
	return s
}

// turnDays lists the change-outs of a pot as the seasons and the person have them, by
// day. Of two on one day the later season's stands.
func (w *workOut) turnDays(pot *Pot, spot *Spot, site *SiteOutlook) []turnDay {
	var list []turnDay
	for i := range pot.Plantings {
		planting := &pot.Plantings[i]
		for year := w.First.Year() - 1; year <= w.Last.AddDays(yearAfter).Year(); year++ {
			day := w.daysOfSpot(spot, site, year)[planting.Season]
			t := turnDay{planting: planting, day: day.best, site: day}
			if chosen := planting.Start; !chosen.IsZero() && (day.exists && nearest(chosen, day.best) || !day.exists && chosen.Year() == year) {
				t.day, t.pinned = chosen, true
			} else if !day.exists {
				continue
			}
			list = append(list, t)
		}
	}
	return inTurn(list, func(t turnDay) civil.Date { return t.day })
}

// happening is what the log says of pots: the last change-out and what was seen since.
type happening struct {
	planted Entry // zero Date: none
	seen    []Entry
}

// happenedTo returns what the log says of pots that match: the latest of any of them.
func (w *workOut) happenedTo(pots []int, pot *Pot) happening {
	var h happening
	for _, i := range pots {
		for _, e := range w.history.planted[w.Plan.Pots[i].ID] {
			grown := slices.ContainsFunc(pot.Plantings, func(p Planting) bool { return p.Season == e.Season })
			if grown && e.Date <= w.Today && e.Date >= h.planted.Date && e.Date >= w.First.AddDays(-yearBefore) {
				h.planted = e
			}
		}
	}
	for _, i := range pots {
		for _, e := range w.history.seen[w.Plan.Pots[i].ID] {
			if e.Date <= w.Today && e.Date >= h.planted.Date && !h.planted.Date.IsZero() {
				h.seen = append(h.seen, e)
			}
		}
	}
	return h
}

// begin finds what stands when the search begins: what was last logged, else what the
// seasons say for the first day shown.
func (s *yearSearch) begin(w *workOut, h happening) {
	s.standing = -1
	if day := h.planted.Date; !day.IsZero() {
		s.from = day
		for k, t := range s.spring {
			if t.planting.Season == h.planted.Season && (s.standing < 0 || far(t.day, day) < far(s.spring[s.standing].day, day)) {
				s.standing = k
			}
		}
		return
	}
	s.from = w.First
	for k, t := range s.spring {
		if t.day <= w.First {
			s.standing, s.from = k, t.day
		}
	}
}

// far is how many days lie between two days.
func far(a, b civil.Date) int { return max(int(a-b), int(b-a)) }

// ask writes the request of the search.
func (s *yearSearch) ask(w *workOut, h happening) {
	since := s.from
	r := rotation.Request{
		Until: w.Last.AddDays(yearAfter), PerYear: DefaultChangeOuts, Weights: rotation.DefaultWeights(),
		Lingers: rotation.DefaultLingers(), TellOnly: true, Days: w.workdays, Risk: float64(w.risk()), MinStand: usualStand,
	}
	candidates := map[*Planting]int{}
	number := func(p *Planting) int {
		n, ok := candidates[p]
		if !ok {
			n = len(r.Candidates)
			candidates[p] = n
			r.Candidates = append(r.Candidates, w.candidate(s.spots[0], p))
		}
		return n
	}
	stand := rotation.Standing{Since: since}
	if s.standing >= 0 {
		p := w.candidate(s.spots[0], s.spring[s.standing].planting)
		stand.Planting = &p
	}
	for _, e := range h.seen {
		s.from = max(s.from, e.Date)
		stand = seenOn(stand, e)
		r.History = append(r.History, hostsOf(stand, e)...)
	}
	r.Today = s.from
	for _, spot := range s.spots {
		r.Members = append(r.Members, rotation.Member{Outlook: spot.outlook, Standing: stand})
	}
	s.request = r
	s.addTurns(w, number, stand)
	s.request.Candidates = r.Candidates
	s.loosen(w)
	s.key = s.keyOf(stand)
}

// seenOn returns what stands with what was seen of it.
func seenOn(stand rotation.Standing, e Entry) rotation.Standing {
	looks := 1.0
	switch e.Kind {
	case Lost:
		looks = 0
	case Lovely:
	case Fed, Skipped, Planted, Diseased, TopDressed, Noted:
		return stand
	}
	stand.Condition = &looks
	return stand
}

// hostsOf returns the disease groups that were seen, as hosts in the mix: that named by
// the entry, else all of the plants that stood.
func hostsOf(stand rotation.Standing, e Entry) []rotation.Host {
	if e.Kind != Diseased || stand.Planting == nil {
		return nil
	}
	var hosts []rotation.Host
	for _, part := range stand.Planting.Parts {
		for _, group := range part.Plant.Groups {
			if named := strings.Contains(strings.ToLower(e.Text), strings.ReplaceAll(group, "-", " ")); named {
				return []rotation.Host{{Group: group, Last: e.Date, Diseased: true}}
			}
			hosts = append(hosts, rotation.Host{Group: group, Last: e.Date, Diseased: true})
		}
	}
	return hosts
}

// addTurns lists the turns after what stands. Each may go out until half way to the day
// of the one after it.
func (s *yearSearch) addTurns(w *workOut, number func(*Planting) int, stand rotation.Standing) {
	last := s.request.Until.AddDays(-1)
	before := s.from.AddDays(-1)
	for k := s.standing + 1; k < len(s.spring) && s.spring[k].day <= last; k++ {
		t := s.spring[k]
		by := half(s.spring, k)
		switch {
		case by <= s.from.AddDays(lateTurn): // the pot has gone on without it
			continue
		case k == s.standing+1 && stand.Condition != nil && *stand.Condition == 0 && t.day > s.from.AddDays(lostLead):
			// What was lost may be planted again while its season lasts.
			again := s.spring[s.standing]
			again.pinned = false
			until := t.day.AddDays(-lostLead)
			s.put(again, rotation.Turn{Candidate: number(again.planting), By: until, Optional: true})
			before = until
		}
		turn := rotation.Turn{Candidate: number(t.planting), By: by}
		if t.pinned && t.day > before {
			turn.On = t.day
		} else if t.site.endless {
			turn.On = w.workday(max(t.day, before.AddDays(1)))
		}
		s.put(t, turn)
		before = by
	}
}

// Days around a change-out, judgements: one whose last day is so near was passed over;
// what was lost is not planted again so shortly before the next.
const (
	lateTurn = 10
	lostLead = 21
)

func (s *yearSearch) put(t turnDay, turn rotation.Turn) {
	s.turns = append(s.turns, searchedTurn{turnDay: t})
	s.request.Turns = append(s.request.Turns, turn)
}

// half returns the day half way from a turn to the one after it.
func half(list []turnDay, k int) civil.Date {
	const last = 90 // days, where none comes after
	if k+1 == len(list) {
		return list[k].day.AddDays(last)
	}
	return middle(list[k].day, list[k+1].day)
}

// loosen lets the turns for which there is no day go out on any, and says why; one of
// plants that nothing is known of goes out on the day of the site's season.
func (s *yearSearch) loosen(w *workOut) {
	before := s.from.AddDays(-1)
	none := s.request.WithoutDays()
	for k := range s.request.Turns {
		turn, t := &s.request.Turns[k], &s.turns[k]
		switch parts := s.request.Candidates[turn.Candidate].Parts; {
		case !turn.On.IsZero():
		case parts[0].Plant == anyPlant:
			turn.On = min(max(w.workday(t.day), before.AddDays(1)), turn.By)
		case slices.Contains(none, k):
			t.loose = s.why(turn, before)
			turn.AnyDay = true
		}
		before = turn.By
	}
}

// why tells why a turn has no day.
func (s *yearSearch) why(turn *rotation.Turn, before civil.Date) string {
	for _, part := range s.request.Candidates[turn.Candidate].Parts {
		sold := len(part.Plant.Sold) == 0 || slices.ContainsFunc(part.Plant.Sold, func(w rotation.Window) bool {
			return w.From <= turn.By && w.To > before
		})
		if !sold {
			return "plan.not_sold_then"
		}
	}
	return "plan.no_safe_day"
}

// anyPlant stands for plants that nothing is known of: alive and as good on any day.
var anyPlant = &rotation.Plant{ID: "any", Lowest: -90, PlantOut: -90, HeatLimit: noHeatLimit, Hardened: true, Sizes: []rotation.Size{{Fullness: 1}}}

// candidate returns a planting of the plan as a search sees it.
func (w *workOut) candidate(spot *yearSpot, p *Planting) rotation.Planting {
	if c, ok := spot.planted(string(p.Season), w.parts(p)); ok {
		return c
	}
	return rotation.Planting{ID: string(p.Season), Parts: []rotation.Part{{Plant: anyPlant, Share: 1}}}
}

// workdaysOf returns the days on which work may be done.
func workdaysOf(plan *Plan) rotation.DayRules {
	var rules rotation.DayRules
	for day := time.Sunday; day <= time.Saturday; day++ {
		if slices.Contains(plan.Year.Weekdays, weekdayNames[day]) {
			rules.Weekdays = append(rules.Weekdays, day)
		}
	}
	for _, days := range plan.Year.Refused {
		rules.Refused = append(rules.Refused, rotation.Window{From: days.From, To: days.Last()})
	}
	return rules
}

// workday returns the first day from a day on on which work may be done, or the day
// itself where there is none for half a year.
func (w *workOut) workday(day civil.Date) civil.Date {
	for d := day; d < day.AddDays(halfYear); d++ {
		if w.workdays.Allows(d) {
			return d
		}
	}
	return day
}

// keyOf tells all that the answer depends on: pots with one key have one answer.
func (s *yearSearch) keyOf(stand rotation.Standing) string {
	var b strings.Builder
	for _, spot := range s.spots {
		b.WriteString(spot.key)
		b.WriteByte(' ')
	}
	r := &s.request
	fmt.Fprintf(&b, "%d %d %g %v %v", r.Today, r.Until, r.Risk, r.Days.Weekdays, r.Days.Refused)
	tell := func(p *rotation.Planting) {
		fmt.Fprintf(&b, "\n%s", p.ID)
		for _, part := range p.Parts {
			fmt.Fprintf(&b, " %s/%d/%g/%v", part.Plant.ID, part.Size, part.Share, part.Stays)
		}
	}
	if stand.Planting != nil {
		fmt.Fprintf(&b, "\n%d", stand.Since)
		if stand.Condition != nil {
			fmt.Fprintf(&b, " %g", *stand.Condition)
		}
		tell(stand.Planting)
	}
	for i := range r.Candidates {
		tell(&r.Candidates[i])
	}
	fmt.Fprintf(&b, "\n%v\n%v", r.Turns, r.History)
	return b.String()
}
