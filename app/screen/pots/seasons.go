package pots

import (
	"slices"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// SeasonRow is what the chosen pot holds in one season of the coming year.
type SeasonRow struct {
	Season   planner.Season
	Label    string // the season
	Planting string // what is planted
	Plants   string // with counts
	Start    Figure // the change-out day
	Spread   string // earliest to latest day
	Figures  []Figure
	Recipes  Choice // to choose from; the first is none
}

// SeasonRows returns the four seasons, each with the planting that stands or comes
// next.
func (s *Screen) SeasonRows() []SeasonRow {
	pot := s.Chosen()
	if pot == nil {
		return nil
	}
	all, _ := s.session.Outlook()
	out := s.outlook(pot)
	rows := make([]SeasonRow, 0, len(planner.Seasons))
	for _, season := range planner.Seasons {
		row := SeasonRow{Season: season, Label: s.words.T("plan.season." + string(season)), Recipes: s.recipes(pot, season)}
		if out != nil {
			if stand := nextStand(out, season, all); stand != nil {
				s.fillRow(&row, stand)
			}
		}
		rows = append(rows, row)
	}
	return rows
}

// nextStand returns the stand of a season that is there today or comes next.
func nextStand(out *planner.PotOutlook, season planner.Season, all *planner.Outlook) *planner.Stand {
	for i := range out.Stands {
		if st := &out.Stands[i]; st.Season == season && st.To > all.Today {
			return st
		}
	}
	return nil
}

func (s *Screen) fillRow(row *SeasonRow, stand *planner.Stand) {
	row.Planting = s.plantingName(stand)
	var plants []string
	for _, p := range stand.Plants {
		count := 0
		if !p.Count.IsZero() {
			count = int(p.Count.Number())
		}
		plants = append(plants, s.words.T("pots.plants", words.A{"n": s.words.Count(count), "plant": plantName(p)}))
	}
	row.Plants = s.words.List(plants...)
	if f, ok := s.figure("pots.change_out", stand.Start); ok {
		row.Start = f
	}
	if !stand.Earliest.IsZero() && !stand.Latest.IsZero() {
		row.Spread = s.words.DateRange(stand.Earliest, stand.Latest)
	}
	for _, one := range []struct {
		key    string
		figure planner.Figure
	}{{"pots.fresh_mix", stand.Mix}, {"pots.charge", stand.Charge}, {"pots.spoons", stand.Spoons}, {"pots.spent", stand.Spent}} {
		if f, ok := s.figure(one.key, one.figure); ok {
			row.Figures = append(row.Figures, f)
		}
	}
}

// recipes returns the plan's recipes for a season with that of the pot.
func (s *Screen) recipes(pot *planner.Pot, season planner.Season) Choice {
	c := Choice{Options: []string{s.words.T("pots.no_planting")}}
	current := plantingOf(pot, season)
	for _, r := range s.seasonRecipes(season) {
		c.Options = append(c.Options, r.Name)
		if current != nil && current.Recipe == r.ID && len(current.Plants) == 0 {
			c.Chosen = len(c.Options) - 1
		}
	}
	if current != nil && c.Chosen == 0 {
		c.Options = append(c.Options, s.words.T("pots.own_planting"))
		c.Chosen = len(c.Options) - 1
	}
	return c
}

func (s *Screen) seasonRecipes(season planner.Season) []planner.Recipe {
	var list []planner.Recipe
	for _, r := range s.session.Plan().Recipes {
		if r.Season == season {
			list = append(list, r)
		}
	}
	return list
}

func plantingOf(pot *planner.Pot, season planner.Season) *planner.Planting {
	for i := range pot.Plantings {
		if pot.Plantings[i].Season == season {
			return &pot.Plantings[i]
		}
	}
	return nil
}

// SetRecipe plants the chosen pot by a recipe in a season; 0 leaves it bare then, and
// the pot's own planting at the end of the list stays as it is.
func (s *Screen) SetRecipe(season planner.Season, i int) error {
	pot := s.Chosen()
	recipes := s.seasonRecipes(season)
	if pot == nil || i < 0 || i > len(recipes) || i == s.recipes(pot, season).Chosen {
		return nil
	}
	args := append(s.about(pot), finding.Arg{Name: "season", Value: working.Text("plan.season." + string(season))})
	return s.do("pots.edit_planting", args, func(p *planner.Pot) {
		p.Plantings = slices.DeleteFunc(p.Plantings, func(one planner.Planting) bool { return one.Season == season })
		if i > 0 {
			at := slices.IndexFunc(p.Plantings, func(one planner.Planting) bool { return inYear(one.Season) > inYear(season) })
			if at < 0 {
				at = len(p.Plantings)
			}
			p.Plantings = slices.Insert(p.Plantings, at, planner.Planting{Season: season, Recipe: recipes[i-1].ID})
		}
	})
}

// inYear is the place of a season in the year.
func inYear(season planner.Season) int { return slices.Index(planner.Seasons[:], season) }
