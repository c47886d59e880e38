package planner

import (
	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/nutrition"
	"fourturn/planner/rotation"
)

// Days that are planned for around today: far enough back to show the planting
// that stands, far enough ahead for a whole year's cycle and its reminders.
const (
	daysBack  = 150
	daysAhead = 550
)

// WorkOut works everything out for a plan on a day. It never fails: what cannot be
// worked out is left out, and a finding says why. It only reads its arguments and
// may run on any goroutine.
func WorkOut(plan *Plan, ref Reference, today civil.Date) *Outlook {
	o := &Outlook{Plan: plan, ref: ref, Today: today, First: today.AddDays(-daysBack), Last: today.AddDays(daysAhead)}
	w := &workOut{
		Outlook: o, history: historyOf(plan), thermals: map[string]*nutrition.Thermal{}, openings: map[stayKey]*opening{},
		kinetics: kineticsOf(plan), rules: feedRulesOf(plan), labels: map[string]*slowRelease{},
		yearSpots: map[string]*yearSpot{}, workdays: workdaysOf(plan),
	}
	w.slow = w.labelOf(plan.Feeding.SlowRelease)
	w.sites()
	w.spots()
	w.searchDays()
	o.Pots = make([]PotOutlook, len(plan.Pots))
	for i := range plan.Pots {
		o.Pots[i] = w.pot(&plan.Pots[i], w.searches[i])
	}
	w.rounds()
	w.due()
	w.buying()
	w.remember()
	w.balances()
	w.shed()
	w.nameParts()
	w.Findings = gathered(w.Findings)
	return o
}

// workOut is one run of the front door.
type workOut struct {
	*Outlook
	history   history
	slow      *slowRelease            // nil where the plan has none
	places    map[string]*place       // of spots, by id
	years     map[yearKey]seasonDays  // season days, shared by the pots of a site
	climates  map[string]*siteClimate // of spots, by id
	thermals  map[string]*nutrition.Thermal
	openings  map[stayKey]*opening
	kinetics  nutrition.Kinetics
	rules     nutrition.FeedRules
	labels    map[string]*slowRelease // of slow-release products, by id; nil for what cannot be read
	recipes   map[string]*Recipe      // by id
	fedRounds int                     // rounds that the log tells of
	workdays  rotation.DayRules       // on which the person works
	yearSpots map[string]*yearSpot    // by id of the spot
	searches  []*yearSearch           // by pot; nil where there is nothing to search for
}

// place is a spot with its site.
type place struct {
	spot *Spot
	site *SiteOutlook
}

func (w *workOut) find(code string, severity finding.Severity, where finding.Where, args ...finding.Arg) {
	w.Findings = append(w.Findings, finding.Finding{Code: code, Severity: severity, Where: where, Args: args})
}

func (w *workOut) spots() {
	w.places = make(map[string]*place, len(w.Plan.Spots))
	for i := range w.Plan.Spots {
		spot := &w.Plan.Spots[i]
		w.places[spot.ID] = &place{spot: spot, site: w.siteOf(spot.Site)}
	}
	w.recipes = make(map[string]*Recipe, len(w.Plan.Recipes))
	for i := range w.Plan.Recipes {
		w.recipes[w.Plan.Recipes[i].ID] = &w.Plan.Recipes[i]
	}
}
