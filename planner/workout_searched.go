package planner

import (
	"slices"

	"fourturn/planner/finding"
	"fourturn/planner/rotation"
	"fourturn/planner/working"
)

// searched puts the days that were searched for in the place of the seasons' own, from
// what stood when the search began.
func (w *workOut) searched(out *PotOutlook, stands []Stand) []Stand {
	s := out.search
	if s == nil || s.result == nil {
		return stands
	}
	kept := slices.DeleteFunc(stands, func(st Stand) bool {
		anchor := s.standing >= 0 && st.Season == s.spring[s.standing].planting.Season && st.From == s.request.Members[0].Standing.Since
		return st.From >= s.request.Members[0].Standing.Since && !anchor
	})
	turn := 0
	for i, c := range s.result.Best.ChangeOuts {
		if c.To < 0 {
			continue
		}
		for s.request.Turns[turn].Candidate != c.To || s.request.Turns[turn].By < c.Day {
			turn++ // it was left out
		}
		if planting := ownPlanting(out.Pot, s.turns[turn].planting.Season); planting != nil {
			kept = append(kept, s.stand(i, turn, planting))
		}
		turn++
	}
	return kept
}

// ownPlanting returns a pot's own planting of a season: that of another pot where they
// match.
func ownPlanting(pot *Pot, season Season) *Planting {
	for i := range pot.Plantings {
		if pot.Plantings[i].Season == season {
			return &pot.Plantings[i]
		}
	}
	return nil
}

// stand tells a change-out of the search.
func (s *yearSearch) stand(changeOut, turn int, planting *Planting) Stand {
	c, t, result := s.result.Best.ChangeOuts[changeOut], s.turns[turn], s.result
	st := Stand{
		Planting: planting, Season: planting.Season, From: c.Day, turn: turn + 1,
		Earliest: min(c.Safe, c.Day), Latest: max(c.Latest, c.Day), Good: Days{From: c.Good.From, To: c.Good.To},
		Start:   NewFigure(working.Date(c.Day), func() working.Trace { return result.WorkingOf(changeOut) }),
		Display: NewFigure(working.Number(c.SeasonValue, working.DisplayDay), result.Working),
	}
	st.Reasons, st.Reason = reasonKeys(c.Reasons), chiefReason(c.Reasons)
	switch fixed := s.request.Turns[turn].On; {
	case t.loose != "": // no day is safe, so that none is the first that is
		st.Earliest = c.Good.From
	case fixed.IsZero():
	case t.pinned:
		st.Pinned, st.Reason, st.Earliest = true, "plan.reason.pinned", c.Safe
		st.Start = enteredDay(c.Day, "plan.reason.pinned")
	default: // the site's own day
		st.Reason, st.Earliest, st.Latest, st.Good = t.site.reason, t.site.earliest, t.site.latest, Days{}
		st.Reasons = []string{t.site.reason}
		if trace := t.site.trace; trace != nil {
			st.Start = NewFigure(working.Date(c.Day), func() working.Trace { return trace(c.Day) })
		}
	}
	return st
}

// chiefReason picks the reason that tells a person most: what holds the coming planting
// back, before what drives the one that stands out.
func chiefReason(reasons []rotation.Reason) string {
	for _, chief := range []rotation.Reason{
		rotation.FirstSafe, rotation.Heat, rotation.Frost, rotation.FirstSold, rotation.LastSafe, rotation.LastSold,
		rotation.Cold, rotation.Faded, rotation.Season,
	} {
		if slices.Contains(reasons, chief) {
			return string(chief)
		}
	}
	return string(reasons[0])
}

// remarkOnSearch tells of turns whose days could not be searched for, and of plants that
// follow their like in the same mix.
func (w *workOut) remarkOnSearch(out *PotOutlook, where finding.Where) {
	s := out.search
	if s == nil {
		return
	}
	if s.err != nil {
		w.find("plan.days_not_searched", finding.Note, where)
		return
	}
	for i := range out.Stands {
		st := &out.Stands[i]
		if st.turn == 0 || !st.first {
			continue
		}
		at := append(slices.Clone(where), "plantings", string(st.Season))
		turn := &s.turns[st.turn-1]
		if turn.loose != "" {
			w.find(turn.loose, finding.Note, at, finding.Arg{Name: "date", Value: working.Date(st.From)})
		}
		if before := st.turn - 2; before >= 0 && overtook(turn, &s.turns[before]) {
			w.find("plan.pin_after_next", finding.Warning, at, finding.Arg{Name: "date", Value: working.Date(st.From)},
				textArg("season", "plan.season."+string(s.turns[before].planting.Season)))
		}
	}
	w.remarkOnMix(out, where)
}

// overtook reports whether a pinned turn comes after one that the seasons put behind it.
func overtook(turn, before *searchedTurn) bool {
	return turn.pinned && turn.site.exists && before.site.exists && before.site.best > turn.site.best
}

// remarkOnMix tells of the first plants that follow their like, or a host of their
// disease, in the same mix.
func (w *workOut) remarkOnMix(out *PotOutlook, where finding.Where) {
	s := out.search
	for _, b := range s.result.Breaches() {
		c := s.result.Best.ChangeOuts[b.ChangeOut]
		k := slices.IndexFunc(out.Stands, func(st Stand) bool { return st.From == c.Day })
		if k < 0 || !out.Stands[k].first || w.couldStay(b) {
			continue
		}
		at := append(slices.Clone(where), "plantings", string(out.Stands[k].Season))
		w.find("plan.same_"+b.Kind, finding.Note, at, textArg("name", w.nameOfHost(b)), finding.Arg{Name: "date", Value: working.Date(c.Day)})
	}
}

// couldStay reports whether a plant that follows itself is one that lasts: it might as
// well have stayed in the pot.
func (w *workOut) couldStay(b rotation.Breach) bool {
	p, ok := w.ref.Book.Plant(b.Name)
	return b.Kind == "plant" && ok && p.Kind.Lasting()
}

// nameOfHost returns the name of a plant or a disease, or a family as it is.
func (w *workOut) nameOfHost(b rotation.Breach) string {
	switch b.Kind {
	case "plant":
		if p, ok := w.ref.Book.Plant(b.Name); ok {
			return p.Name()
		}
	case "disease":
		if d, ok := w.ref.Book.Disease(b.Name); ok {
			return d.Name
		}
	}
	return b.Name
}

func textArg(name, text string) finding.Arg {
	return finding.Arg{Name: name, Value: working.Text(text)}
}
