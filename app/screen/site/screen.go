// Package site is a place with its climate: the year as it normally is, the odds of
// freezes and of heat, the four planting seasons with their spread, the spots where pots
// stand, and where all that is from.
//
// It draws nothing. A person finds a station by name or by the place's latitude and
// longitude, corrects for height, and may give data of their own: frost dates, monthly
// means, or a daily record, which is looked at before it is taken in.
package site

import (
	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Session is the open plan with what is worked out for it.
type Session = session.Session[*planner.Outlook]

// Screen is the page of a site.
type Screen struct {
	session   *Session
	words     *words.Words
	chosen    string               // site
	spot      string               // chosen spot
	tried     float64              // a risk that is tried and not yet the plan's; 0 for none
	threshold quantity.Temperature // of the freezes asked for
	spell     climate.HotSpell     // asked for
	pot       quantity.Length      // width of the pot whose roots are asked for
}

// What is asked for until somebody asks for something else: the freeze of NOAA's
// definition; the days of the heat-zone map, three in a row, as a heat wave is counted
// in many countries; a pot of the trade's 40 cm.
const (
	firstThreshold quantity.Temperature = 0
	firstHot       quantity.Temperature = 30
	firstRun                            = 3
	firstPot                            = 40 * quantity.Centimetre
)

// New returns the page of a session.
func New(s *Session, w *words.Words) *Screen {
	return &Screen{
		session: s, words: w, threshold: firstThreshold,
		spell: climate.HotSpell{Above: firstHot, Days: firstRun}, pot: firstPot,
	}
}

// Chosen returns the site that is looked at, or nil where the plan has none.
func (s *Screen) Chosen() *planner.Site {
	plan := s.session.Plan()
	if site := plan.Site(s.chosen); site != nil {
		return site
	}
	if len(plan.Sites) == 0 {
		return nil
	}
	return &plan.Sites[0]
}

// Outlook returns what is worked out for the chosen site, at the risk that is tried;
// nil where its climate is not known.
func (s *Screen) Outlook() *planner.SiteOutlook {
	all, _ := s.session.Outlook()
	site := s.Chosen()
	if all == nil || site == nil {
		return nil
	}
	for i := range all.Sites {
		if all.Sites[i].Site.ID != site.ID || !all.Sites[i].Known {
			continue
		}
		if s.tried != 0 {
			return all.Sites[i].AtRisk(s.tried)
		}
		return &all.Sites[i]
	}
	return nil
}

// Fault says why the chosen site has no climate though it should, or "".
func (s *Screen) Fault() string {
	all, _ := s.session.Outlook()
	site := s.Chosen()
	if all == nil || site == nil || s.Outlook() != nil {
		return ""
	}
	for _, f := range all.Findings {
		if len(f.Where) > 1 && f.Where[0] == "sites" && f.Where[1] == site.ID {
			return words.Capital(s.words.Finding(f, s.session.Plan().Units))
		}
	}
	return ""
}

// Today returns the day that was worked out for, or no day before that.
func (s *Screen) Today() civil.Date {
	all, _ := s.session.Outlook()
	if all == nil {
		return 0
	}
	return all.Today
}

func (s *Screen) units() quantity.System { return s.session.Plan().Units }

// height writes a height above the sea or a difference of two.
func (s *Screen) height(l quantity.Length) string {
	if s.units() == quantity.USCustomary {
		return s.words.T("site.feet", words.A{"n": s.words.Number(float64(l/quantity.Foot), 0)})
	}
	return s.words.T("site.metres", words.A{"n": s.words.Number(float64(l), 0)})
}

// edit changes the chosen site as one step that can be taken back.
func (s *Screen) edit(name string, edit func(*planner.Site)) error {
	site := s.Chosen()
	if site == nil {
		return nil
	}
	id := site.ID
	return s.refused(s.session.Do(name, about(site), func(p planner.Plan) (planner.Plan, error) {
		return p.WithSite(id, edit)
	}))
}

func about(site *planner.Site) []finding.Arg {
	return []finding.Arg{{Name: "site", Value: working.Text(site.Label())}}
}

func (s *Screen) refused(err error) error {
	if err != nil {
		return &words.Refusal{Text: s.words.T("site.refused", words.A{"cause": err.Error()})}
	}
	return nil
}
