package planner

import (
	"cmp"
	"slices"

	"fourturn/planner/arrange"
	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/mix"
	"fourturn/planner/rotation"
	"fourturn/planner/work"
)

// yearRequest is the search for the best year of a pot, or of pots that match.
type yearRequest struct {
	o          *Outlook
	pots       []int // those that match, besides the first
	first      *PotOutlook
	spots      []*yearSpot
	standing   *Planting
	candidates []yearCandidate
	starts     []turnStart
	most       int // change-outs a year at most
	wanted     int // change-outs a year that the person asked for, or 0
	request    rotation.Request
	beyond     []finding.Finding // wishes that no search can keep
}

// yearRequest writes the request for a pot.
func (o *Outlook) yearRequest(pot int) (*yearRequest, error) {
	first := &o.Pots[pot]
	if first.Vessel == nil || first.Site == nil || !first.Site.Known {
		return nil, ErrNoYear
	}
	w := o.again()
	b := &yearRequest{o: o, first: first}
	r := rotation.Request{
		Today: o.Today, Until: o.Today.AddMonths(bestMonths),
		Weights: rotation.DefaultWeights(), Lingers: rotation.DefaultLingers(),
		Days: w.workdays, LeadDays: o.Plan.Year.Lead, Risk: float64(w.risk()),
	}
	if worth := o.Plan.Year.DayWorth; worth > 0 {
		r.Weights.DayWorth = worth
	}
	b.addMember(w, &r, first)
	for i := range o.Pots {
		other := &o.Pots[i]
		if i != pot && first.Pot.Match != "" && other.Pot.Match == first.Pot.Match && other.Vessel != nil && other.Site != nil && other.Site.Known {
			b.pots = append(b.pots, i)
			b.addMember(w, &r, other)
		}
	}
	b.wanted = cmp.Or(first.Pot.ChangeOuts, o.Plan.Year.ChangeOuts)
	b.most, r.PerYear, r.MinStand = min(cmp.Or(b.wanted, DefaultChangeOuts), DefaultChangeOuts), DefaultChangeOuts, usualStand
	b.starts = b.turnStarts()
	b.gather(w)
	for _, c := range b.candidates {
		r.Candidates = append(r.Candidates, c.searched)
	}
	b.wish(&r)
	actuals := b.actuals(w)
	base := r
	base.Today = o.First
	now, err := base.WithActuals(o.Today, actuals)
	if err != nil {
		return nil, err
	}
	r.Members, r.History = now.Members, now.History
	b.request = r
	return b, nil
}

// addMember adds a pot to the request: what a change-out of it costs beside the plants.
func (b *yearRequest) addMember(w *workOut, r *rotation.Request, out *PotOutlook) {
	spot := w.yearSpotOf(out.Spot, out.Site)
	b.spots = append(b.spots, spot)
	volume := out.Vessel.FillVolume()
	minutes := func(kind work.Kind) float64 { return w.labour().Minutes(kind, volume) / 60 * b.o.Plan.Year.Labour }
	litre := b.o.Plan.mixPrice()
	r.Members = append(r.Members, rotation.Member{
		Outlook: spot.outlook,
		Plants:  b.plantsOf(out),
		Costs: rotation.Costs{
			ChangeOut:  minutes(work.ChangeOutWork) + litre*out.Refresh.Number(),
			ReplaceMix: minutes(work.ReplaceWork) - minutes(work.ChangeOutWork) + litre*max(0, out.Mix.Number()-out.Refresh.Number()),
		},
	})
}

// plantsOf is how many plants a pot takes against the first.
func (b *yearRequest) plantsOf(out *PotOutlook) float64 {
	return float64(out.Vessel.Opening().Area) / float64(b.first.Vessel.Opening().Area)
}

// mixPrice is what a litre of potting mix costs in the plan's best pack, or 0 where no
// price is known.
func (p *Plan) mixPrice() float64 {
	best := 0.0
	for i := range p.Products {
		if p.Products[i].Kind != PottingMix {
			continue
		}
		for _, pack := range p.Products[i].Packs {
			if price := pack.Price / float64(pack.Volume); pack.Volume > 0 && pack.Price > 0 && (best == 0 || price < best) {
				best = price
			}
		}
	}
	return best
}

// actuals returns what happened in the pots up to today, as far as it matters to what may
// follow.
func (b *yearRequest) actuals(w *workOut) []rotation.Actual {
	var list []rotation.Actual
	for member, out := range b.members() {
		for i := range out.Stands {
			s := &out.Stands[i]
			if s.From > b.o.Today {
				continue
			}
			c := w.candidate(b.spots[member], s.Planting)
			c.ID = b.idOf(s.Planting)
			list = append(list, rotation.Actual{Day: max(s.From, b.spots[member].from), Member: member, Planted: &c, MixReplaced: allReplaced(s.Balance.Reason)})
			if member == 0 {
				b.standing = s.Planting
			}
		}
		for _, e := range w.history.seen[out.Pot.ID] {
			if e.Date <= b.o.Today && e.Date >= b.o.First {
				list = append(list, seenActuals(member, out, w, b.spots[member], e)...)
			}
		}
	}
	return list
}

// allReplaced reports whether a change-out replaced all the mix.
func allReplaced(reason mix.Reason) bool {
	return slices.Contains([]mix.Reason{mix.ByPolicy, mix.ByDisease, mix.ByAge, mix.ByFirst}, reason)
}

func seenActuals(member int, out *PotOutlook, w *workOut, spot *yearSpot, e Entry) []rotation.Actual {
	stand := rotation.Standing{}
	if s := out.Standing(e.Date); s != nil {
		c := w.candidate(spot, s.Planting)
		stand.Planting = &c
	}
	var list []rotation.Actual
	for _, host := range hostsOf(stand, e) {
		list = append(list, rotation.Actual{Day: e.Date, Member: member, Disease: host.Group})
	}
	if looks := seenOn(stand, e).Condition; looks != nil {
		list = append(list, rotation.Actual{Day: e.Date, Member: member, Condition: looks})
	}
	return list
}

// members lists the pots of the request, the first in front.
func (b *yearRequest) members() []*PotOutlook {
	list := []*PotOutlook{b.first}
	for _, i := range b.pots {
		list = append(list, &b.o.Pots[i])
	}
	return list
}

// again returns a run of the front door that only looks things up.
func (o *Outlook) again() *workOut {
	w := &workOut{
		Outlook: &Outlook{Plan: o.Plan, Today: o.Today, First: o.First, Last: o.Last, Sites: o.Sites, ref: o.ref},
		history: historyOf(o.Plan), yearSpots: map[string]*yearSpot{}, workdays: workdaysOf(o.Plan),
		years: map[yearKey]seasonDays{}, climates: map[string]*siteClimate{},
	}
	w.spots()
	return w
}

// labour returns how long work takes on a pot: the work chapter's rates, in proportion
// to the person's minutes for a change-out of a usual pot.
func (w *workOut) labour() work.Labour {
	rates := work.DefaultLabour()
	minutes := w.Plan.Year.Minutes
	if minutes == 0 {
		return rates
	}
	scale := minutes / rates.Minutes(work.ChangeOutWork, UsualPot)
	for kind, rate := range rates {
		rates[kind] = work.Rate{Fixed: rate.Fixed * scale, PerLitre: rate.PerLitre * scale}
	}
	return rates
}

// UsualPot is the mix in the pot that the minutes for a change-out are asked for: one of
// about 40 cm.
const UsualPot = 30 // L

// wish adds the person's pins and bans to the request, as far as they reach into it.
func (b *yearRequest) wish(r *rotation.Request) {
	pot := b.first.Pot
	for i := range pot.Plantings {
		if p := &pot.Plantings[i]; !p.Start.IsZero() && p.Start >= b.o.Today {
			r.Pins = append(r.Pins, rotation.Pin{ID: "start." + string(p.Season), Planting: b.idOf(p), From: p.Start, Start: true})
		}
	}
	for _, p := range pot.Pins {
		if p.Last() < b.o.Today {
			continue
		}
		pin := rotation.Pin{ID: p.ID, Plant: p.Plant, Colour: p.Colour, From: max(p.From, b.o.Today), To: p.Last(), Start: p.Start}
		if p.Recipe != "" {
			pin.Planting = "recipe." + p.Recipe
		}
		if own := ownPlanting(pot, p.Season); own != nil && p.Recipe == "" {
			pin.Planting = b.idOf(own)
		}
		r.Pins = append(r.Pins, pin)
	}
	for _, ban := range pot.Bans {
		if !ban.From.IsZero() && ban.Last() < b.o.Today {
			continue
		}
		to := civil.Date(0)
		if !ban.From.IsZero() {
			to = ban.Last()
		}
		banned := rotation.Ban{Plant: ban.Plant, Colour: ban.Colour, From: ban.From, To: to}
		if ban.Recipe != "" {
			banned.Planting = "recipe." + ban.Recipe
		}
		r.Bans = append(r.Bans, banned)
	}
}

// told returns the search's findings with the place of what they are about.
func (b *yearRequest) told(found []finding.Finding) []finding.Finding {
	list := slices.Clone(b.beyond)
	for _, f := range found {
		f.Where = append(finding.Where{"pots", b.first.Pot.ID}, f.Where...)
		list = append(list, f)
	}
	return list
}

// openingOf returns the surface of a pot for counting plants.
func openingOf(out *PotOutlook) arrange.Opening {
	o := out.Vessel.Opening()
	return arrange.Opening{Area: o.Area, Perimeter: o.Perimeter}
}
