package year

import (
	"slices"

	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/working"
	"fourturn/plants"
)

// Option is one thing that can be taken or refused.
type Option struct {
	Label  string
	Detail string
	do     func(*planner.Pot)
}

// Swaps returns the plantings that can stand instead of one: the plan's recipes for
// the season that suit the light of the spot, without what is refused for the pot.
func (s *Screen) Swaps(row, segment int) []Option {
	pot, st := s.at(row, segment)
	if st == nil {
		return nil
	}
	light := planner.NoLight
	if spot := s.pot(row).Spot; spot != nil {
		light = spot.Light
	}
	var list []Option
	plan := s.session.Plan()
	for i := range plan.Recipes {
		r := &plan.Recipes[i]
		suits := r.Light == planner.NoLight || light == planner.NoLight || r.Light == light
		same := st.Planting.Recipe == r.ID && len(st.Planting.Plants) == 0
		if r.Season != st.Season || !suits || same || s.refuses(pot, r) {
			continue
		}
		season, id := st.Season, r.ID
		list = append(list, Option{Label: r.Name, Detail: s.partNames(r.Parts), do: func(p *planner.Pot) {
			for k := range p.Plantings {
				if p.Plantings[k].Season == season {
					p.Plantings[k].Recipe, p.Plantings[k].Plants = id, nil
				}
			}
		}})
	}
	return list
}

// Swap puts another planting in the place of one; its pinned day stays.
func (s *Screen) Swap(row, segment int, o Option) error {
	return s.take("year.edit_swap", row, segment, o)
}

// Refusals returns what can be refused of a planting: itself, each of its plants, and
// each colour that they come in.
func (s *Screen) Refusals(row, segment int) []Option {
	pot, st := s.at(row, segment)
	if st == nil {
		return nil
	}
	var list []Option
	add := func(label, detail string, ban planner.Ban) {
		if slices.ContainsFunc(pot.Bans, func(b planner.Ban) bool { ban.ID = b.ID; return b == ban }) {
			return
		}
		list = append(list, Option{Label: label, Detail: detail, do: func(p *planner.Pot) {
			ban.ID = planner.FreeID("refused", func(id string) bool {
				return slices.ContainsFunc(p.Bans, func(b planner.Ban) bool { return b.ID == id })
			})
			p.Bans = append(slices.Clone(p.Bans), ban)
		}})
	}
	if r := s.session.Plan().Recipe(st.Planting.Recipe); r != nil && len(st.Planting.Plants) == 0 {
		add(s.words.T("year.refuse_planting", words.A{"planting": r.Name}), s.words.T("year.refuse_planting_why"), planner.Ban{Recipe: r.ID})
	}
	var colours []plants.Colour
	for _, p := range st.Plants {
		if p.Known == nil {
			continue
		}
		add(s.words.T("year.refuse_plant", words.A{"plant": p.Known.Name()}), s.words.T("year.refuse_plant_why"), planner.Ban{Plant: p.Plant})
		if len(p.Known.Colours) == 1 {
			colours = append(colours, p.Known.Colours[0])
		}
	}
	slices.Sort(colours)
	for _, c := range slices.Compact(colours) {
		add(s.words.T("year.refuse_colour", words.A{"colour": s.words.T(c.Key())}), s.words.T("year.refuse_colour_why"), planner.Ban{Colour: string(c)})
	}
	return list
}

// Refuse keeps something from being offered for the pot again.
func (s *Screen) Refuse(row, segment int, o Option) error {
	return s.take("year.edit_refuse", row, segment, o)
}

// Allow takes back what was refused for a pot, by its number in the story.
func (s *Screen) Allow(row, ban int) error {
	p := s.pot(row)
	if p == nil || ban < 0 || ban >= len(p.Pot.Bans) {
		return nil
	}
	id := p.Pot.Bans[ban].ID
	args := []finding.Arg{{Name: "pot", Value: working.Text(p.Pot.Label())}, {Name: "what", Value: working.Text(s.banText(p.Pot.Bans[ban]))}}
	return s.edit("year.edit_allow", args, p.Pot.ID, func(pot *planner.Pot) {
		pot.Bans = slices.DeleteFunc(slices.Clone(pot.Bans), func(b planner.Ban) bool { return b.ID == id })
	})
}

func (s *Screen) take(name string, row, segment int, o Option) error {
	pot, st := s.at(row, segment)
	if st == nil || o.do == nil {
		return nil
	}
	args := []finding.Arg{{Name: "pot", Value: working.Text(pot.Label())}, {Name: "what", Value: working.Text(o.Label)}}
	return s.edit(name, args, pot.ID, o.do)
}

// edit changes one pot by a named edit.
func (s *Screen) edit(name string, args []finding.Arg, id string, edit func(*planner.Pot)) error {
	err := s.session.Do(name, args, func(plan planner.Plan) (planner.Plan, error) {
		if plan.Pot(id) == nil {
			return plan, session.ErrNothingToDo
		}
		return plan.WithPot(id, edit)
	})
	if err != nil {
		return &words.Refusal{Text: s.words.T("year.refused", words.A{"cause": err.Error()})}
	}
	return nil
}

// banText writes out what is refused.
func (s *Screen) banText(b planner.Ban) string {
	plan := s.session.Plan()
	switch {
	case b.Recipe != "":
		name := b.Recipe
		if r := plan.Recipe(b.Recipe); r != nil && r.Name != "" {
			name = r.Name
		}
		return s.words.T("year.refuse_planting", words.A{"planting": name})
	case b.Plant != "":
		return s.words.T("year.refuse_plant", words.A{"plant": s.plantName(b.Plant)})
	default:
		return s.words.T("year.refuse_colour", words.A{"colour": s.words.T(plants.Colour(b.Colour).Key())})
	}
}

// plantName returns the name of a plant that some pot holds, or its id.
func (s *Screen) plantName(id string) string {
	if known := s.known()[id]; known != nil {
		return known.Name()
	}
	return id
}

// known returns the plants that the outlook's pots hold, by id.
func (s *Screen) known() map[string]*plants.Plant {
	all := s.outlook()
	if all == nil {
		return nil
	}
	if s.plantsOf != all {
		s.plantsOf, s.plantsBy = all, map[string]*plants.Plant{}
		for i := range all.Pots {
			for k := range all.Pots[i].Stands {
				for _, p := range all.Pots[i].Stands[k].Plants {
					if p.Known != nil {
						s.plantsBy[p.Plant] = p.Known
					}
				}
			}
		}
	}
	return s.plantsBy
}

func (s *Screen) partNames(parts []planner.Part) string {
	var names []string
	for _, p := range parts {
		names = append(names, s.plantName(p.Plant))
	}
	return s.words.List(names...)
}

// refuses reports whether something of a recipe is refused for a pot.
func (s *Screen) refuses(pot *planner.Pot, r *planner.Recipe) bool {
	return slices.ContainsFunc(pot.Bans, func(b planner.Ban) bool {
		if b.Recipe != "" && b.Recipe == r.ID {
			return true
		}
		return slices.ContainsFunc(r.Parts, func(p planner.Part) bool { return s.banned(b, p.Plant) })
	})
}

// isRefused reports whether what stands is refused for its pot.
func (s *Screen) isRefused(pot *planner.Pot, st *planner.Stand) bool {
	return slices.ContainsFunc(pot.Bans, func(b planner.Ban) bool {
		if b.Recipe != "" && b.Recipe == st.Planting.Recipe && len(st.Planting.Plants) == 0 {
			return true
		}
		return slices.ContainsFunc(st.Plants, func(p planner.PlantCount) bool { return s.banned(b, p.Plant) })
	})
}

// banned reports whether a ban is of a plant, or of the only colour that it comes in.
func (s *Screen) banned(b planner.Ban, plant string) bool {
	if b.Plant != "" {
		return b.Plant == plant
	}
	known := s.known()[plant]
	return b.Colour != "" && known != nil && len(known.Colours) == 1 && string(known.Colours[0]) == b.Colour
}
