package pots

import (
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/vessel"
)

// Tile is one pot on the bench.
type Tile struct {
	ID       string
	Label    string
	Detail   string         // its shape and size, such as "round, ⌀ 45 cm, 38.2 L"
	Standing string         // what stands in it now
	Vessel   *vessel.Vessel // to be drawn; nil where the size is faulty
	Worst    finding.Severity
	Marked   bool // whether there is a caution or worse to be shown
	Chosen   bool
}

// SetFilter shows the pots alone whose name, spot or client holds the text.
func (s *Screen) SetFilter(text string) { s.filter = strings.ToLower(strings.TrimSpace(text)) }

// Tiles returns the pots on the bench in the order of the plan.
func (s *Screen) Tiles() []Tile {
	plan := s.session.Plan()
	all, _ := s.session.Outlook()
	worst := map[string]finding.Severity{}
	outlooks := map[string]*planner.PotOutlook{}
	if all != nil {
		for _, f := range all.Findings {
			if len(f.Where) > 1 && f.Where[0] == "pots" {
				worst[f.Where[1]] = max(worst[f.Where[1]], f.Severity)
			}
		}
		for i := range all.Pots {
			outlooks[all.Pots[i].Pot.ID] = &all.Pots[i]
		}
	}
	chosen := s.Chosen()
	var tiles []Tile
	for i := range plan.Pots {
		pot := &plan.Pots[i]
		if !s.shows(plan, pot) {
			continue
		}
		tile := Tile{
			ID: pot.ID, Label: nameOf(pot), Vessel: built(pot), Worst: worst[pot.ID],
			Marked: worst[pot.ID] >= finding.Warning, Chosen: chosen != nil && pot.ID == chosen.ID,
		}
		tile.Detail = s.size(pot, tile.Vessel)
		if out := outlooks[pot.ID]; out != nil {
			tile.Standing = s.standing(out, all)
		}
		tiles = append(tiles, tile)
	}
	return tiles
}

func (s *Screen) shows(plan *planner.Plan, pot *planner.Pot) bool {
	if s.filter == "" {
		return true
	}
	spot := ""
	if p := plan.Spot(pot.Spot); p != nil {
		spot = p.Name
	}
	return strings.Contains(strings.ToLower(pot.Name+"\n"+spot+"\n"+pot.Client), s.filter)
}

func nameOf(pot *planner.Pot) string {
	if pot.Name != "" {
		return pot.Name
	}
	return pot.ID
}

// size writes a pot's shape and volume in one line.
func (s *Screen) size(pot *planner.Pot, v *vessel.Vessel) string {
	kind := s.words.T("vessel.kind." + string(pot.Vessel.Kind))
	if v == nil {
		return s.words.T("pots.size_faulty", words.A{"shape": kind})
	}
	return s.words.T("pots.size", words.A{"shape": kind, "volume": s.volume(v.FillVolume())})
}

func (s *Screen) volume(v quantity.Volume) string {
	return s.words.Volume(v, s.session.Plan().Units)
}

// standing writes what stands in a pot today.
func (s *Screen) standing(out *planner.PotOutlook, all *planner.Outlook) string {
	stand := out.Standing(all.Today)
	if stand == nil {
		return s.words.T("pots.bare")
	}
	return s.words.T("pots.standing", words.A{
		"planting": s.plantingName(stand), "date": s.words.ShortDate(stand.From),
	})
}

// plantingName names a planting by its recipe, its first plants, or its season.
func (s *Screen) plantingName(stand *planner.Stand) string {
	if r := s.session.Plan().Recipe(stand.Planting.Recipe); r != nil && len(stand.Planting.Plants) == 0 {
		return r.Name
	}
	if len(stand.Plants) > 0 {
		var names []string
		for _, p := range stand.Plants {
			names = append(names, plantName(p))
		}
		return s.words.List(names...)
	}
	return s.words.T("plan.season." + string(stand.Season))
}

func plantName(p planner.PlantCount) string {
	if p.Known != nil {
		return p.Known.Name()
	}
	return p.Plant
}
