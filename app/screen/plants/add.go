package plants

import (
	"math"
	"slices"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/working"
	catalogue "fourturn/plants"
)

// Pot returns the pot that plants go into, or nil where the plan has none.
func (s *Screen) Pot() *planner.Pot {
	plan := s.session.Plan()
	if pot := plan.Pot(s.pot); pot != nil {
		return pot
	}
	if len(plan.Pots) == 0 {
		return nil
	}
	return &plan.Pots[0]
}

// Pots returns the pots of the plan with the one that plants go into. Pots of the same
// name are told apart by their ids.
func (s *Screen) Pots() Choice {
	plan, pot := s.session.Plan(), s.Pot()
	c := Choice{Chosen: -1}
	times := map[string]int{}
	for i := range plan.Pots {
		times[plan.Pots[i].Label()]++
	}
	for i := range plan.Pots {
		one := &plan.Pots[i]
		name := one.Label()
		if times[name] > 1 {
			name = s.words.T("plant_book.pot_of_many", words.A{"pot": name, "id": one.ID})
		}
		c.Options = append(c.Options, name)
		if one.ID == pot.ID {
			c.Chosen = i
		}
	}
	return c
}

// ChoosePot says which pot plants go into. Its site decides what lives now.
func (s *Screen) ChoosePot(i int) {
	if pots := s.session.Plan().Pots; i >= 0 && i < len(pots) {
		s.pot = pots[i].ID
		s.Update()
	}
}

// Season returns the season that plants go into the pot for: the one that was chosen,
// or the first that the chosen plant is sold for.
func (s *Screen) Season() planner.Season {
	if s.season != "" {
		return s.season
	}
	if p := s.plant(); p != nil && len(p.Seasons) > 0 {
		return planner.Season(p.Seasons[0])
	}
	return planner.Seasons[0]
}

// Seasons returns the seasons with the one that plants go into the pot for.
func (s *Screen) Seasons() Choice {
	c := Choice{Chosen: slices.Index(planner.Seasons[:], s.Season())}
	for _, season := range planner.Seasons {
		c.Options = append(c.Options, s.words.T(seasonKey(season)))
	}
	return c
}

func seasonKey(season planner.Season) string { return "plan.season." + string(season) }

// ChooseSeason says which season plants go into the pot for.
func (s *Screen) ChooseSeason(i int) {
	if i >= 0 && i < len(planner.Seasons) {
		s.season = planner.Seasons[i]
	}
}

// Add puts the chosen plant into the pot and season that are chosen, and says so.
func (s *Screen) Add() (done string, err error) {
	pot, season := s.Pot(), s.Season()
	if pot == nil {
		return "", &words.Refusal{Text: s.words.T("plant_book.no_pot")}
	}
	name := pot.Label()
	if err := s.AddTo(pot.ID, season); err != nil {
		return "", err
	}
	key := "plant_book.added"
	if p := s.plant(); p != nil && !slices.Contains(p.Seasons, catalogue.Season(season)) {
		key = "plant_book.added_off_season"
	}
	return s.words.T(key, words.A{"plant": s.plant().Name(), "season": s.words.T(seasonKey(season)), "pot": name}), nil
}

// AddTo adds the chosen plant to what a pot holds in a season. A pot planted by a
// recipe then has a planting of its own, which begins as the recipe says. Lilies and
// daylilies are refused where cats live. The error is a [*words.Refusal].
func (s *Screen) AddTo(potID string, season planner.Season) error {
	p, plan := s.plant(), s.session.Plan()
	if p == nil {
		return &words.Refusal{Text: s.words.T("plant_book.none_chosen")}
	}
	if f, refused := catalogue.Refused(p, s.household()); refused {
		return &words.Refusal{Text: s.words.Finding(f, s.units())}
	}
	pot := plan.Pot(potID)
	if pot == nil || !slices.Contains(planner.Seasons[:], season) {
		return &words.Refusal{Text: s.words.T("plant_book.no_pot")}
	}
	args := []finding.Arg{
		{Name: "plant", Value: working.Text(p.Name())},
		{Name: "season", Value: working.Text(seasonKey(season))},
		{Name: "pot", Value: working.Text(pot.Label())},
	}
	planting := plantingOf(plan, pot, season)
	if slices.ContainsFunc(planting.Plants, func(part planner.Part) bool { return part.Plant == p.ID }) {
		return &words.Refusal{Text: s.words.T("plant_book.already", s.argsOf(args))}
	}
	planting.Plants = with(planting.Plants, planner.Part{Plant: p.ID})
	err := s.session.Do("plant_book.edit_add", args, func(plan planner.Plan) (planner.Plan, error) {
		return plan.WithPot(potID, func(pot *planner.Pot) { setPlanting(pot, planting) })
	})
	if err != nil {
		return &words.Refusal{Text: s.words.T("plant_book.refused", words.A{"cause": err.Error()})}
	}
	return nil
}

func (s *Screen) argsOf(args []finding.Arg) words.A {
	a := words.A{}
	for _, arg := range args {
		a[arg.Name] = s.words.Value(arg.Value, s.units())
	}
	return a
}

// plantingOf returns a copy of what the pot holds in a season, its recipe written out.
func plantingOf(plan *planner.Plan, pot *planner.Pot, season planner.Season) planner.Planting {
	planting := planner.Planting{Season: season}
	for _, one := range pot.Plantings {
		if one.Season == season {
			planting = one
		}
	}
	if recipe := plan.Recipe(planting.Recipe); len(planting.Plants) == 0 && recipe != nil {
		planting.Plants = recipe.Parts
	}
	planting.Plants = slices.Clone(planting.Plants)
	return planting
}

func setPlanting(pot *planner.Pot, planting planner.Planting) {
	for i := range pot.Plantings {
		if pot.Plantings[i].Season == planting.Season {
			pot.Plantings[i] = planting
			return
		}
	}
	pot.Plantings = append(pot.Plantings, planting)
}

// with returns the parts with one more that says no share of its own. It gets an even
// part of the surface: the others give way in proportion where they fill the pot.
func with(parts []planner.Part, more planner.Part) []planner.Part {
	given, open := 0.0, 0
	for _, part := range parts {
		if part.Share > 0 {
			given += part.Share
		} else {
			open++
		}
	}
	n := float64(len(parts))
	if left := n / (n + 1); given > 0 && (open == 0 || given > left) {
		for i := range parts {
			parts[i].Share = math.Round(parts[i].Share/given*left*thousand) / thousand
		}
	}
	return append(parts, more)
}

// thousand keeps shares to a tenth of a per cent, as a person would write them.
const thousand = 1000
