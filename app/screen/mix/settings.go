package mix

import (
	"slices"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/mix"
	"fourturn/planner/quantity"
)

// Settings returns how pots are filled: settling, what is replaced, which mix, and what
// it is measured with.
func (s *Screen) Settings() Group {
	w, m := s.words, s.session.Plan().Mix
	set := func(change func(*planner.MixSettings)) error {
		return s.do("mix_buying.edit_settings", "", func(p planner.Plan) (planner.Plan, error) {
			change(&p.Mix)
			return p, nil
		})
	}
	settling, refresh, retire := m.Settling, m.Refresh, m.RetireAfter
	if settling == 0 {
		settling = mix.DefaultSettling
	}
	if refresh == 0 {
		refresh = mix.DefaultShare
	}
	if retire == 0 {
		retire = mix.DefaultRetireAfter
	}
	g := Group{Key: "settings", Title: w.T("mix_buying.settings"), Summary: w.T("mix_buying.settings_summary", words.A{
		"settling": w.Percent(settling), "refresh": w.Percent(refresh), "retire": retire,
	})}
	blends, chosen := s.blends()
	substrates, substrate := s.substrates()
	const mostRetire = 100
	g.Fields = []Field{
		s.choice("blend", "mix_buying.filled_with", "", blends, chosen, func(i int) error {
			return set(func(m *planner.MixSettings) {
				m.Blend = ""
				if i > 0 {
					m.Blend = s.session.Plan().Blends[i-1].ID
				}
			})
		}),
		s.choice("substrate", "mix_buying.substrate", w.T("mix_buying.help_substrate"), substrates, substrate, func(i int) error {
			return set(func(m *planner.MixSettings) {
				m.Substrate = mix.Substrates[i].Key
				if i == 0 {
					m.Substrate = ""
				}
			})
		}),
		s.number("settling", "mix_buying.settling", w.T("mix_buying.help_settling", words.A{"usual": w.Percent(mix.DefaultSettling)}), m.Settling, mix.LeastSettling, mix.MostSettling, true,
			func(x float64) error { return set(func(m *planner.MixSettings) { m.Settling = x }) }),
		s.number("refresh", "mix_buying.refresh", w.T("mix_buying.help_refresh", words.A{"usual": w.Percent(mix.DefaultShare)}), m.Refresh, 0.01, 1, true,
			func(x float64) error { return set(func(m *planner.MixSettings) { m.Refresh = x }) }),
		s.whole("retire_after", "mix_buying.retire", w.T("mix_buying.help_retire", words.A{"usual": mix.DefaultRetireAfter}), m.RetireAfter, 1, mostRetire,
			func(n int) error { return set(func(m *planner.MixSettings) { m.RetireAfter = n }) }),
		s.volume("pail", "mix_buying.pail", w.T("mix_buying.help_pail"), m.Pail, 100*quantity.Millilitre, 500, // as the plan file allows
			func(v quantity.Volume) error { return set(func(m *planner.MixSettings) { m.Pail = v }) }),
		s.volume("scoop", "mix_buying.scoop", w.T("mix_buying.help_scoop"), m.Scoop, quantity.Millilitre, 10,
			func(v quantity.Volume) error { return set(func(m *planner.MixSettings) { m.Scoop = v }) }),
	}
	g.Notes = []string{w.T("mix_buying.settings_sources")}
	return g
}

// blends are what pots can be filled with, ready mix first.
func (s *Screen) blends() (names []string, chosen int) {
	plan := s.session.Plan()
	names = []string{s.words.T("mix_buying.ready_mix")}
	for i := range plan.Blends {
		names = append(names, plan.Blends[i].Label())
		if plan.Blends[i].ID == plan.Mix.Blend {
			chosen = i + 1
		}
	}
	return names, chosen
}

func (s *Screen) substrates() (names []string, chosen int) {
	for i, one := range mix.Substrates {
		names = append(names, s.words.T(one.Name()))
		if one.Key == s.session.Plan().Mix.Substrate {
			chosen = i
		}
	}
	return names, chosen
}

// Blends returns the blends of the plan, each with how many parts of what.
func (s *Screen) Blends() []Group {
	plan := s.session.Plan()
	groups := make([]Group, 0, len(plan.Blends))
	for i := range plan.Blends {
		groups = append(groups, s.blend(&plan.Blends[i]))
	}
	return groups
}

func (s *Screen) blend(b *planner.Blend) Group {
	w := s.words
	edit := func(change func(*planner.Blend)) error {
		return s.do("mix_buying.edit_blend", b.Label(), func(p planner.Plan) (planner.Plan, error) { return p.WithBlend(b.ID, change) })
	}
	g := Group{Key: "blend/" + b.ID, Title: b.Label(), Summary: w.T("mix_buying.no_parts"), Remove: func() error {
		return s.do("mix_buying.edit_remove", b.Label(), func(p planner.Plan) (planner.Plan, error) { return p.WithoutBlend(b.ID) })
	}}
	g.Fields = append(g.Fields, s.name(b.Name, func(name string) error { return edit(func(b *planner.Blend) { b.Name = name }) }))
	var parts []string
	for _, p := range s.session.Plan().Products {
		if !p.Kind.ByVolume() {
			continue
		}
		id, now := p.ID, partsOf(b, p.ID)
		label := s.session.Plan().ProductLabel(id)
		const least, most = 0.01, 1000 // as the plan file allows
		f := s.number("part/"+id, "mix_buying.part", w.T("mix_buying.help_part"), now, least, most, false, func(x float64) error {
			return edit(func(b *planner.Blend) { setPart(b, id, x) })
		})
		f.Label = label
		g.Fields = append(g.Fields, f)
		if now > 0 {
			parts = append(parts, w.T("mix_buying.parts_of", words.A{"n": w.Number(now, 2), "product": label}))
		}
	}
	if len(parts) > 0 {
		g.Summary = w.List(parts...)
	}
	g.Fields = append(g.Fields, s.shrinkage(b, edit))
	g.Notes = []string{w.T("mix_buying.blend_sources")}
	return g
}

// shrinkage is the field of what is lost on mixing; nothing typed is the usual share,
// and 0 % is none.
func (s *Screen) shrinkage(b *planner.Blend, edit func(func(*planner.Blend)) error) Field {
	w := s.words
	const most = 0.6
	f := s.number("shrinkage", "mix_buying.shrinkage", w.T("mix_buying.help_shrinkage", words.A{"usual": w.Percent(mix.UsualShrinkage)}), 0, 0, most, true,
		func(x float64) error { return edit(func(b *planner.Blend) { b.Shrinkage = &x }) })
	if b.Shrinkage != nil {
		f.Value = w.Percent(*b.Shrinkage)
	}
	given := f.Take
	f.Take = func(typed string) error {
		if typed == "" {
			return edit(func(b *planner.Blend) { b.Shrinkage = nil })
		}
		return given(typed)
	}
	return f
}

func partsOf(b *planner.Blend, product string) float64 {
	for _, p := range b.Parts {
		if p.Product == product {
			return p.Parts
		}
	}
	return 0
}

func setPart(b *planner.Blend, product string, parts float64) {
	b.Parts = slices.DeleteFunc(b.Parts, func(p planner.BlendPart) bool { return p.Product == product && parts == 0 })
	for i := range b.Parts {
		if b.Parts[i].Product == product {
			b.Parts[i].Parts = parts
			return
		}
	}
	if parts > 0 {
		b.Parts = append(b.Parts, planner.BlendPart{Product: product, Parts: parts})
	}
}
