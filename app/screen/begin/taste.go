package begin

import (
	"slices"

	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/plants"
)

// Taste is what one likes to see, and who lives with the pots.
type Taste struct {
	Light     int // index into [Screen.Lights]
	Colours   int // index into [Screen.Palettes]
	Style     int // index into [Screen.Styles]
	Household planner.Household
}

var lights = [...]planner.Light{planner.Sun, planner.PartSun, planner.Shade}

// palette is a family of colours. Which colours go together is a judgement.
type palette struct {
	key     string
	colours []plants.Colour // none: all
}

var palettes = [...]palette{
	{"begin.colours.any", nil},
	{"begin.colours.warm", []plants.Colour{plants.Yellow, plants.Gold, plants.Orange, plants.Apricot, plants.Red, plants.Bronze}},
	{"begin.colours.cool", []plants.Colour{plants.Blue, plants.Violet, plants.Purple, plants.Lavender, plants.Silver, plants.BlueGreen}},
	{"begin.colours.soft", []plants.Colour{plants.Pink, plants.Rose, plants.Apricot, plants.Cream, plants.Lavender}},
	{"begin.colours.white", []plants.Colour{plants.White, plants.Cream, plants.Lime, plants.Green, plants.Silver}},
}

// style is what a planting is looked at for.
type style struct {
	key   string
	suits func(p *plants.Plant) bool
}

var styles = [...]style{
	{"begin.style.flowers", func(p *plants.Plant) bool {
		return isOneOf(p.Kind, plants.CoolAnnual, plants.WarmAnnual, plants.Bulb)
	}},
	{"begin.style.leaf", func(p *plants.Plant) bool {
		return isOneOf(p.Kind, plants.Grass, plants.Perennial, plants.TenderPerennial, plants.Conifer)
	}},
	{"begin.style.kitchen", func(p *plants.Plant) bool {
		return isOneOf(p.Kind, plants.Herb, plants.Vegetable) || len(p.Edible) > 0
	}},
}

func isOneOf(kind plants.Kind, kinds ...plants.Kind) bool { return slices.Contains(kinds, kind) }

// Taste returns the answers.
func (s *Screen) Taste() Taste { return s.taste }

// SetTaste takes the answers.
func (s *Screen) SetTaste(t Taste) { s.taste = t }

// Lights returns the lights to choose from.
func (s *Screen) Lights() (names []string) {
	for _, l := range lights {
		names = append(names, s.words.T("begin.light."+string(l)))
	}
	return names
}

// Palettes returns the families of colours to choose from.
func (s *Screen) Palettes() (names []string) {
	for _, p := range palettes {
		names = append(names, s.words.T(p.key))
	}
	return names
}

// Styles returns the styles to choose from.
func (s *Screen) Styles() (names []string) {
	for _, one := range styles {
		names = append(names, s.words.T(one.key))
	}
	return names
}

// Preview is what a season would be planted with.
type Preview struct{ Season, Plants string }

// Preview returns what the answers give, season by season.
func (s *Screen) Preview() (list []Preview) {
	for _, r := range s.plantings() {
		var names []string
		for _, part := range r.Parts {
			if p, ok := s.ref.Book.Plant(part.Plant); ok {
				names = append(names, p.Name())
			}
		}
		list = append(list, Preview{Season: s.words.T("plan.season." + string(r.Season)), Plants: s.words.List(names...)})
	}
	return list
}

// parts are the roles of a planting with their shares of the surface. The trade's
// pattern has no fixed shares: these are those of the example, a judgement.
var parts = [...]planner.Part{
	{Role: planner.Thriller, Share: 0.25},
	{Role: planner.Filler, Share: 0.45},
	{Role: planner.Spiller, Share: 0.30},
}

// plantings returns a recipe for each planting season that the place has.
func (s *Screen) plantings() (recipes []planner.Recipe) {
	site := s.site()
	if site == nil {
		return nil
	}
	for _, season := range site.Seasons {
		if !season.Exists {
			continue
		}
		r := planner.Recipe{
			ID: string(season.Season), Name: s.words.T("begin.recipe." + string(season.Season)),
			Season: season.Season, Light: lights[s.taste.Light],
		}
		used := map[string]bool{}
		for _, part := range parts {
			if p := s.choose(season.Season, part.Role, site, used); p != nil {
				used[p.Genus()] = true
				part.Plant = p.ID
				r.Parts = append(r.Parts, part)
			}
		}
		if len(r.Parts) > 0 {
			recipes = append(recipes, r)
		}
	}
	return recipes
}

// choose returns the plant of the book that suits best, the first where several do
// alike, or nil where none may be planted. Plants of a genus that is used already
// come last: they would share its troubles.
func (s *Screen) choose(season planner.Season, role planner.Role, site *planner.SiteOutlook, used map[string]bool) *plants.Plant {
	var best *plants.Plant
	most := -1
	for _, p := range s.ref.Book.Plants() {
		if p.Role != plants.Role(role) || !s.may(p, season, site) || used[p.Genus()] {
			continue
		}
		if score := s.suits(p, season); score > most {
			best, most = p, score
		}
	}
	return best
}

// may reports whether a plant may be planted at all.
func (s *Screen) may(p *plants.Plant, season planner.Season, site *planner.SiteOutlook) bool {
	if !slices.Contains(p.Seasons, plants.Season(season)) || !slices.Contains(p.Light, plants.Light(lights[s.taste.Light])) {
		return false
	}
	h := s.taste.Household
	for _, f := range plants.Cautions(p, plants.Household{Cats: h.Cats, Dogs: h.Dogs, Children: h.Children}) {
		if f.Severity >= finding.Caution {
			return false
		}
	}
	return season != planner.Winter || p.Kind == plants.CutStems || standsCold(p, site)
}

// belowMean is by how much the coldest night of a winter lies below the coldest mean
// night: a judgement that errs to the cold side for most places.
const belowMean = 12

// standsCold reports whether a plant in a pot lives through the winter of a site.
func standsCold(p *plants.Plant, site *planner.SiteOutlook) bool {
	lowest, known := p.LowestInPot.Get()
	if !known || len(site.Low) == 0 {
		return false
	}
	return lowest <= quantity.Temperature(slices.Min(site.Low)-belowMean)
}

// suits says how well a plant answers what one likes.
func (s *Screen) suits(p *plants.Plant, season planner.Season) (score int) {
	wanted := palettes[s.taste.Colours].colours
	if wanted == nil || slices.ContainsFunc(p.Colours, func(c plants.Colour) bool { return slices.Contains(wanted, c) }) {
		score += 4
	}
	if styles[s.taste.Style].suits(p) {
		score += 3
	}
	if isOneOf(p.Kind, usual[season]...) {
		score += 2
	}
	return score
}

// usual are the kinds that a season is mostly planted with: by warmth, and in winter
// cut stems, which need no roots.
var usual = map[planner.Season][]plants.Kind{
	planner.Spring: {plants.CoolAnnual},
	planner.Summer: {plants.WarmAnnual},
	planner.Autumn: {plants.CoolAnnual, plants.Perennial},
	planner.Winter: {plants.CutStems},
}
