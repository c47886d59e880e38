package site

import (
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/climate"
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// Names returns the sites of the plan with the number of the chosen one.
func (s *Screen) Names() (names []string, chosen int) {
	chosen = -1
	site := s.Chosen()
	for i := range s.session.Plan().Sites {
		one := &s.session.Plan().Sites[i]
		names = append(names, one.Label())
		if one.ID == site.ID {
			chosen = i
		}
	}
	return names, chosen
}

// Name returns what the site that is looked at is called, or "".
func (s *Screen) Name() string {
	if site := s.Chosen(); site != nil {
		return site.Label()
	}
	return ""
}

// Choose looks at another site.
func (s *Screen) Choose(i int) {
	if sites := s.session.Plan().Sites; i >= 0 && i < len(sites) {
		s.chosen, s.spot, s.tried = sites[i].ID, "", 0
	}
}

// ChooseID looks at the site with an id, or at a spot with it; false where there is none.
func (s *Screen) ChooseID(id string) (spot, ok bool) {
	plan := s.session.Plan()
	if plan.Site(id) != nil {
		s.chosen, s.spot = id, ""
		return false, true
	}
	if at := plan.Spot(id); at != nil {
		s.chosen, s.spot = at.Site, id
		return true, true
	}
	return false, false
}

// AddSite adds a site without a climate, with one spot, and looks at it.
func (s *Screen) AddSite() error {
	plan := s.session.Plan()
	id := planner.FreeID("site", func(id string) bool { return plan.Site(id) != nil })
	name := s.words.T("site.new_name", words.A{"n": len(plan.Sites) + 1})
	err := s.session.Do("site.edit_add", []finding.Arg{{Name: "site", Value: working.Text(name)}}, func(p planner.Plan) (planner.Plan, error) {
		p.Sites = append(p.Sites[:len(p.Sites):len(p.Sites)], planner.Site{ID: id, Name: name})
		return s.withFirstSpot(p, id), nil
	})
	if err == nil {
		s.chosen, s.spot = id, ""
	}
	return s.refused(err)
}

// withFirstSpot adds a spot in the open, in the sun.
func (s *Screen) withFirstSpot(p planner.Plan, site string) planner.Plan {
	p.Spots = append(p.Spots[:len(p.Spots):len(p.Spots)], planner.Spot{
		ID:   planner.FreeID(climate.Open.Key, func(id string) bool { return p.Spot(id) != nil }),
		Name: s.words.T("site.first_spot"), Site: site, Light: planner.Sun,
	})
	return p
}

// Rename gives the site a name.
func (s *Screen) Rename(typed string) error {
	name := strings.TrimSpace(typed)
	if name == "" {
		return &words.Refusal{Text: s.words.T("site.name_empty")}
	}
	return s.edit("site.edit_name", func(site *planner.Site) { site.Name = name })
}

// Losses says what goes with the chosen site: its spots, and how many pots stand there.
func (s *Screen) Losses() (spots, pots int) {
	site, plan := s.Chosen(), s.session.Plan()
	if site == nil {
		return 0, 0
	}
	for i := range plan.Spots {
		if plan.Spots[i].Site == site.ID {
			spots++
			pots += plan.PotsAt(plan.Spots[i].ID)
		}
	}
	return spots, pots
}

// Remove takes the chosen site out of the plan, with its spots. Pots stay, at no spot.
func (s *Screen) Remove() error {
	site := s.Chosen()
	if site == nil {
		return nil
	}
	id := site.ID
	err := s.session.Do("site.edit_remove", about(site), func(p planner.Plan) (planner.Plan, error) { return p.WithoutSite(id) })
	if err == nil {
		s.chosen, s.spot = "", ""
	}
	return s.refused(err)
}
