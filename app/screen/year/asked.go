package year

import (
	"slices"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/vessel"
)

// asked is what is asked of the pots that are shown.
type asked struct {
	name   string
	client wanted
	place  place
	shape  vessel.Kind
}

// wanted is a client that is asked for; the empty name is one's own pots.
type wanted struct {
	asked bool
	name  string
}

// place is a site or one spot that is asked for; both "" ask for any.
type place struct{ site, spot string }

// Choice is a list to choose from, "any" first, with what is chosen. With no more than
// one there is nothing to choose.
type Choice struct {
	Options []string
	Chosen  int
}

// Query returns the name that is looked for.
func (s *Screen) Query() string { return s.asked.name }

// Search looks for pots by name, place, client and what stands in them, as one types.
func (s *Screen) Search(typed string) { s.ask(func(a *asked) { a.name = typed }) }

// Asked reports whether not all pots are shown.
func (s *Screen) Asked() bool { return s.asked != asked{} }

// ShowAll asks for nothing any more.
func (s *Screen) ShowAll() { s.ask(func(a *asked) { *a = asked{} }) }

func (s *Screen) ask(change func(*asked)) {
	change(&s.asked)
	s.forAll = nil
}

// clients returns the clients of the plan by name, one's own first where there are
// others.
func (s *Screen) clients() []string {
	var list []string
	for i := range s.session.Plan().Pots {
		list = append(list, s.session.Plan().Pots[i].Client)
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// Clients returns whose pots can be asked for.
func (s *Screen) Clients() Choice {
	c := Choice{Options: []string{s.words.T("year.any_client")}}
	list := s.clients()
	if len(list) < 2 {
		return c
	}
	for i, name := range list {
		if s.asked.client == (wanted{true, name}) {
			c.Chosen = i + 1
		}
		if name == "" {
			name = s.words.T("year.own_pots")
		}
		c.Options = append(c.Options, name)
	}
	return c
}

// SetClient asks for the pots of one client.
func (s *Screen) SetClient(i int) {
	s.ask(func(a *asked) {
		a.client = wanted{}
		if list := s.clients(); i > 0 && i <= len(list) {
			a.client = wanted{true, list[i-1]}
		}
	})
}

// places returns the sites with their spots; a site alone where there are several.
func (s *Screen) places() (list []place, names []string) {
	plan := s.session.Plan()
	several := len(plan.Sites) > 1
	for i := range plan.Sites {
		site := &plan.Sites[i]
		if several {
			list, names = append(list, place{site: site.ID}), append(names, site.Label())
		}
		for k := range plan.Spots {
			spot := &plan.Spots[k]
			if spot.Site != site.ID {
				continue
			}
			name := spot.Label()
			if several {
				name = s.words.T("year.spot_of_site", words.A{"site": site.Label(), "spot": name})
			}
			list, names = append(list, place{spot: spot.ID}), append(names, name)
		}
	}
	return list, names
}

// Places returns the sites and spots whose pots can be asked for.
func (s *Screen) Places() Choice {
	list, names := s.places()
	return Choice{Options: append([]string{s.words.T("year.any_place")}, names...), Chosen: slices.Index(list, s.asked.place) + 1}
}

// SetPlace asks for the pots of a site or a spot.
func (s *Screen) SetPlace(i int) {
	s.ask(func(a *asked) {
		a.place = place{}
		if list, _ := s.places(); i > 0 && i <= len(list) {
			a.place = list[i-1]
		}
	})
}

// shapes returns the shapes that pots of the plan have.
func (s *Screen) shapes() (list []vessel.Kind) {
	have := map[vessel.Kind]bool{}
	for i := range s.session.Plan().Pots {
		have[s.session.Plan().Pots[i].Vessel.Kind] = true
	}
	for _, k := range vessel.Kinds {
		if have[k] {
			list = append(list, k)
		}
	}
	return list
}

// Shapes returns the shapes that can be asked for.
func (s *Screen) Shapes() Choice {
	c := Choice{Options: []string{s.words.T("year.any_shape")}}
	for i, k := range s.shapes() {
		c.Options = append(c.Options, s.words.T("vessel.kind."+string(k)))
		if s.asked.shape == k {
			c.Chosen = i + 1
		}
	}
	return c
}

// SetShape asks for the pots of a shape.
func (s *Screen) SetShape(i int) {
	s.ask(func(a *asked) {
		a.shape = ""
		if list := s.shapes(); i > 0 && i <= len(list) {
			a.shape = list[i-1]
		}
	})
}

// visible returns the pots that answer what is asked.
func (s *Screen) visible() []int {
	all := s.outlook()
	if all == nil {
		return nil
	}
	if s.forAll == all {
		return s.shown
	}
	s.forAll, s.shown = all, make([]int, 0, len(all.Pots))
	typed := strings.Fields(words.Fold(s.asked.name))
	for i := range all.Pots {
		if s.answers(all, i, typed) {
			s.shown = append(s.shown, i)
		}
	}
	return s.shown
}

func (s *Screen) answers(all *planner.Outlook, i int, typed []string) bool {
	a, p := &s.asked, &all.Pots[i]
	switch {
	case a.client.asked && p.Pot.Client != a.client.name,
		a.shape != "" && p.Pot.Vessel.Kind != a.shape,
		a.place.spot != "" && p.Pot.Spot != a.place.spot,
		a.place.site != "" && (p.Spot == nil || p.Spot.Site != a.place.site):
		return false
	}
	if len(typed) == 0 {
		return true
	}
	text := s.text(all, i)
	for _, word := range typed {
		if !strings.Contains(text, word) {
			return false
		}
	}
	return true
}

// text returns all by which a pot is found, folded when it is first asked for.
func (s *Screen) text(all *planner.Outlook, i int) string {
	if s.textOf != all {
		s.textOf, s.texts = all, make([]string, len(all.Pots))
	}
	if s.texts[i] == "" {
		s.texts[i] = words.Fold(s.written(all, &all.Pots[i]))
	}
	return s.texts[i]
}

// written returns all by which a pot is found.
func (s *Screen) written(all *planner.Outlook, p *planner.PotOutlook) string {
	parts := []string{p.Pot.Label(), p.Pot.Client}
	if p.Spot != nil {
		parts = append(parts, p.Spot.Label())
	}
	for k := range p.Stands {
		st := &p.Stands[k]
		parts = append(parts, s.name(all.Plan, st))
		for _, plant := range st.Plants {
			if plant.Known != nil {
				parts = append(parts, plant.Known.Name())
			}
		}
	}
	return strings.Join(parts, " ")
}

// About says how many pots are shown, and the appetite for risk.
func (s *Screen) About() string {
	pots := s.words.T("year.pots", words.A{"count": s.Rows()})
	if s.Asked() {
		pots = s.words.T("year.pots_of", words.A{"count": len(s.session.Plan().Pots), "shown": s.Rows()})
	}
	return s.words.T("year.about", words.A{"pots": pots, "risk": s.Risk()})
}
