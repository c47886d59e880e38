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
	Detail   string         // its shape and size, such as "round, 38.2 L"
	Standing string         // what stands in it now
	Line     string         // what stands in it and its volume, for one short line
	Vessel   *vessel.Vessel // to be drawn; nil where the size is faulty
	Grows    []Grown        // what stands in it now, to be drawn
	Worst    finding.Severity
	Marked   bool // whether there is a caution or worse to be shown
	Chosen   bool
}

// shown is which pots a filter lets through, kept until plan or filter change.
type shown struct {
	plan   *planner.Plan
	filter string
	pots   []int // indices into the plan's
}

// SetFilter shows the pots alone whose name, spot or client holds each word of the
// text, whatever its accents.
func (s *Screen) SetFilter(text string) { s.filter = fold(text) }

// Shown returns how many pots are on the bench, in the order of the plan.
func (s *Screen) Shown() int { return len(s.filtered()) }

// Place returns where the chosen pot stands on the bench, or -1.
func (s *Screen) Place() int {
	chosen := s.Chosen()
	if chosen == nil {
		return -1
	}
	for place, i := range s.filtered() {
		if s.session.Plan().Pots[i].ID == chosen.ID {
			return place
		}
	}
	return -1
}

// Tile returns the pot at a place of the bench. It is asked only for what is in
// sight, so that a thousand pots cost what ten do.
func (s *Screen) Tile(place int) Tile {
	plan := s.session.Plan()
	pot := &plan.Pots[s.filtered()[place]]
	all, _ := s.session.Outlook()
	chosen := s.Chosen()
	tile := Tile{ID: pot.ID, Label: pot.Label(), Chosen: chosen != nil && pot.ID == chosen.ID}
	out := s.outlook(pot)
	if out != nil {
		tile.Worst = s.index.worst[pot.ID]
		tile.Marked = tile.Worst >= finding.Warning
		tile.Standing = s.standing(out, all)
	}
	if out != nil && all.Plan == plan {
		tile.Vessel = out.Vessel
		tile.Grows = growing(out, all.Today)
	} else {
		tile.Vessel = built(pot) // the outlook is of another plan
	}
	tile.Detail = s.size(pot, tile.Vessel)
	tile.Line = tile.Detail
	if out != nil && tile.Vessel != nil {
		tile.Line = s.words.T("pots.tile", words.A{"planting": s.standsNow(out, all), "volume": s.volume(tile.Vessel.FillVolume())})
	}
	return tile
}

func (s *Screen) filtered() []int {
	plan := s.session.Plan()
	if s.shown.plan == plan && s.shown.filter == s.filter {
		return s.shown.pots
	}
	spots := map[string]string{}
	for i := range plan.Spots {
		spots[plan.Spots[i].ID] = plan.Spots[i].Name
	}
	wanted := strings.Fields(s.filter)
	pots := make([]int, 0, len(plan.Pots))
	for i := range plan.Pots {
		pot := &plan.Pots[i]
		if len(wanted) == 0 || holdsAll(fold(pot.Label()+"\n"+spots[pot.Spot]+"\n"+pot.Client), wanted) {
			pots = append(pots, i)
		}
	}
	s.shown = shown{plan: plan, filter: s.filter, pots: pots}
	return pots
}

func holdsAll(text string, wanted []string) bool {
	for _, word := range wanted {
		if !strings.Contains(text, word) {
			return false
		}
	}
	return true
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

// standsNow names what stands in a pot today.
func (s *Screen) standsNow(out *planner.PotOutlook, all *planner.Outlook) string {
	if stand := out.Standing(all.Today); stand != nil {
		return s.plantingName(stand)
	}
	return s.words.T("pots.bare")
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
