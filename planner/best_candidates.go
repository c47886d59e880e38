package planner

import (
	"cmp"
	"slices"
	"strings"

	"fourturn/planner/arrange"
	"fourturn/planner/civil"
	"fourturn/planner/rotation"
	"fourturn/plants"
)

// yearCandidate is a planting to choose from, in the plan's terms and the search's.
type yearCandidate struct {
	planting Planting
	seasons  []Season // that it is for; none means any
	searched rotation.Planting
}

func (c *yearCandidate) isFor(season Season) bool {
	return len(c.seasons) == 0 || slices.Contains(c.seasons, season)
}

// How many plantings are taken from the book, for each season: judgements, so that some
// fifty are weighed in all, of which none is nearly another.
const (
	singlesASeason = 6 // of one kind of plant
	rolesASeason   = 3 // thrillers, fillers and spillers that are put together
	likedTaste     = 1.25
)

// The shares of a combination by role: a judgement; published guidance is by eye.
var roleShares = map[plants.Role]float64{plants.Thriller: 0.3, plants.Filler: 0.4, plants.Spiller: 0.3}

// usualPrices are prices of one plant by size, in any currency, where none are known:
// from memory, for comparing plantings and not for a quote.
var usualPrices = map[string]float64{
	"bunch": 2, "bulb": 0.7, "cell_pack": 1.5, "pot_10cm": 4.5, "quart": 8, "gallon": 16, "gallon_3": 45,
}

// gather lists the candidates: what the pot is planted with, the plan's recipes, and what
// the book offers.
func (b *yearRequest) gather(w *workOut) {
	seen := map[string]bool{}
	add := func(id string, planting Planting, parts []Part, seasons ...Season) {
		if seen[id] || len(parts) == 0 {
			return
		}
		seen[id] = true
		if c, ok := b.candidate(w, id, planting, parts, seasons); ok {
			b.candidates = append(b.candidates, c)
		}
	}
	for i := range b.first.Pot.Plantings {
		p := &b.first.Pot.Plantings[i]
		own := Planting{Season: p.Season, Recipe: p.Recipe, Plants: p.Plants}
		add(b.idOf(p), own, w.parts(p), p.Season)
	}
	for i := range b.o.Plan.Recipes {
		r := &b.o.Plan.Recipes[i]
		if r.Light == NoLight || b.first.Spot.Light == NoLight || r.Light == b.first.Spot.Light {
			var seasons []Season
			if r.Season != "" {
				seasons = []Season{r.Season}
			}
			add("recipe."+r.ID, Planting{Recipe: r.ID}, r.Parts, seasons...)
		}
	}
	suited := b.suited(w)
	for _, season := range Seasons {
		ranked := b.ranked(suited, season)
		for i, p := range ranked {
			if i >= singlesASeason {
				break
			}
			parts := []Part{{Plant: p.ID, Share: 1}}
			add("plant."+p.ID, Planting{Plants: parts}, parts, seasonsOf(p)...)
		}
		for _, parts := range together(ranked) {
			ids := make([]string, len(parts))
			for i, part := range parts {
				ids[i] = part.Plant
			}
			add("plants."+strings.Join(ids, "+"), Planting{Plants: parts}, parts, season)
		}
	}
}

// idOf names a planting of the plan for pins and bans.
func (b *yearRequest) idOf(p *Planting) string {
	if p.Recipe != "" && len(p.Plants) == 0 {
		return "recipe." + p.Recipe
	}
	return "own." + string(p.Season)
}

// candidate makes a candidate of parts; ok is false where the book knows none of them or
// the person refuses one.
func (b *yearRequest) candidate(w *workOut, id string, planting Planting, parts []Part, seasons []Season) (yearCandidate, bool) {
	c := yearCandidate{planting: planting, seasons: seasons}
	searched, ok := b.spots[0].planted(id, parts)
	if !ok || slices.ContainsFunc(parts, func(p Part) bool { return b.refused(p.Plant) }) {
		return c, false
	}
	counts := b.counts(parts, w)
	for i := range searched.Parts {
		part := &searched.Parts[i]
		part.Count = counts[part.Plant.ID]
		part.Plant = b.priced(part.Plant)
	}
	searched.Taste = b.taste(parts)
	c.searched = searched
	return c, true
}

// counts returns how many of each plant go into the first pot.
func (b *yearRequest) counts(parts []Part, w *workOut) map[string]float64 {
	kinds := make([]arrange.Kind, len(parts))
	for i, part := range parts {
		kinds[i] = arrange.Kind{Spacing: usualSpacing, Share: part.Share, Fixed: part.Count}
		if plant, ok := w.ref.Book.Plant(part.Plant); ok {
			kinds[i].Spacing = plant.Spacing
		}
	}
	counts := map[string]float64{}
	for i, count := range arrange.Counts(openingOf(b.first), kinds) {
		counts[parts[i].Plant] += float64(count.Plants)
	}
	return counts
}

// priced returns a plant with the usual prices of its sizes, one for all candidates.
func (b *yearRequest) priced(p *rotation.Plant) *rotation.Plant { return b.spots[0].withPrices(p) }

func (s *yearSpot) withPrices(p *rotation.Plant) *rotation.Plant {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.priced == nil {
		s.priced = map[string]*rotation.Plant{}
	}
	known, ok := s.priced[p.ID]
	if !ok {
		copied := *p
		copied.Sizes = slices.Clone(p.Sizes)
		for i := range copied.Sizes {
			copied.Sizes[i].Price = usualPrices[copied.Sizes[i].Name]
		}
		known = &copied
		s.priced[p.ID] = known
	}
	return known
}

// refused reports whether the person refuses a plant, or all its colours.
func (b *yearRequest) refused(id string) bool {
	year := &b.o.Plan.Year
	if slices.Contains(year.RefusedPlants, id) {
		return true
	}
	p, ok := b.o.ref.Book.Plant(id)
	if !ok || len(p.Colours) == 0 {
		return false
	}
	return !slices.ContainsFunc(p.Colours, func(c plants.Colour) bool { return !slices.Contains(year.RefusedColours, string(c)) })
}

// taste is how much the person likes a planting beside others, by its parts.
func (b *yearRequest) taste(parts []Part) float64 {
	year := &b.o.Plan.Year
	liked, shares := 0.0, sharesOf(parts)
	for i, part := range parts {
		p, ok := b.o.ref.Book.Plant(part.Plant)
		if slices.Contains(year.LikedPlants, part.Plant) || ok && slices.ContainsFunc(p.Colours, func(c plants.Colour) bool {
			return slices.Contains(year.LikedColours, string(c))
		}) {
			liked += shares[i]
		}
	}
	return (1 + (likedTaste-1)*liked) * b.interest(parts)
}

// interest is how much a planting is looked at beside one of flowers in several roles, at
// the same fullness and health. Pots are changed with the seasons for colour; without
// this, evergreens that always stand full would be best all year. All are judgements.
func (b *yearRequest) interest(parts []Part) float64 {
	sum, roles := 0.0, map[Role]bool{}
	for i, share := range sharesOf(parts) {
		p, ok := b.o.ref.Book.Plant(parts[i].Plant)
		if !ok {
			sum += share
			continue
		}
		roles[cmp.Or(parts[i].Role, Role(p.Role))] = true
		sum += share * kindInterest[p.Kind]
	}
	if len(roles) == 1 {
		sum *= oneRole
	}
	return sum
}

var kindInterest = map[plants.Kind]float64{
	plants.CoolAnnual: 1, plants.WarmAnnual: 1, plants.TenderPerennial: 0.9, plants.Bulb: 1, plants.CutStems: 0.65,
	plants.Perennial: 0.8, plants.Grass: 0.7, plants.Herb: 0.65, plants.Vegetable: 0.65, plants.Shrub: 0.55, plants.Conifer: 0.5,
}

// oneRole is taken off a planting that has height, body or fall alone.
const oneRole = 0.85

// Limits of what a pot holds, judgements: a plant is at most so many times as high as its
// pot, and as wide as its opening.
const (
	highestAgainstPot = 2.5
	widestAgainstPot  = 1.5
)

// suited returns the plants of the book that suit the pot's light and size and the
// household, and that nobody refuses.
func (b *yearRequest) suited(w *workOut) []*plants.Plant {
	home := plants.Household{Cats: w.Plan.Household.Cats, Dogs: w.Plan.Household.Dogs, Children: w.Plan.Household.Children}
	height, width := b.first.Vessel.Height(), b.first.Vessel.Opening().Width
	var list []*plants.Plant
	for _, p := range w.ref.Book.Plants() {
		light := plants.Light(b.first.Spot.Light)
		switch {
		case light != "" && len(p.Light) > 0 && !slices.Contains(p.Light, light):
		case b.refused(p.ID) || harmful(p, home):
		case p.Height.Low > highestAgainstPot*height || p.Spread > widestAgainstPot*width:
		default:
			list = append(list, p)
		}
	}
	return list
}

// harmful reports whether a plant is listed as toxic to somebody who lives with the pots,
// or must not come into the household at all. One that is not listed is not called safe.
func harmful(p *plants.Plant, home plants.Household) bool {
	if _, refused := plants.Refused(p, home); refused {
		return true
	}
	for _, c := range []struct {
		lives    bool
		creature plants.Creature
	}{{home.Dogs, plants.Dogs}, {home.Cats, plants.Cats}, {home.Children, plants.People}} {
		switch p.Toxicity.For(c.creature) {
		case plants.ListedToxic, plants.ListedDangerous:
			if c.lives {
				return true
			}
		}
	}
	return false
}

// ranked returns the plants for a season by the display that each gives through it, the
// best first.
func (b *yearRequest) ranked(list []*plants.Plant, season Season) []*plants.Plant {
	s := b.spots[0]
	start, ok := s.startNear(season, b.o.Today.AddDays(halfYear))
	if !ok {
		return nil
	}
	days := s.seasonNamed(season).Days
	if days <= 0 {
		days = halfYear / 2
	}
	from, until := max(start, s.from), min(start.AddDays(days), s.until)
	if from >= until {
		return nil
	}
	value := map[string]float64{}
	var fit []*plants.Plant
	for _, p := range list {
		if len(p.Seasons) > 0 && !slices.Contains(p.Seasons, plants.Season(season)) {
			continue
		}
		planted, ok := s.planted(p.ID, []Part{{Plant: p.ID, Share: 1}})
		if !ok {
			continue
		}
		for _, v := range s.outlook.Curve(&planted, s.firstDay(&planted, from, until), until) {
			value[p.ID] += v
		}
		value[p.ID] *= b.taste([]Part{{Plant: p.ID, Share: 1}})
		fit = append(fit, p)
	}
	slices.SortStableFunc(fit, func(x, y *plants.Plant) int { return cmp.Compare(value[y.ID], value[x.ID]) })
	return fit
}

// firstDay is the first day of some on which a planting may go out, or the first of them.
func (s *yearSpot) firstDay(p *rotation.Planting, from, until civil.Date) civil.Date {
	for day := from; day < until; day++ {
		if s.outlook.MayStart(p, day, float64(s.seasons.Risk)) {
			return day
		}
	}
	return from
}

// together puts the best thrillers, fillers and spillers of a season together, so that
// no two combinations have more than one plant in common.
func together(ranked []*plants.Plant) [][]Part {
	by := map[plants.Role][]*plants.Plant{}
	for _, p := range ranked {
		if len(by[p.Role]) < rolesASeason {
			by[p.Role] = append(by[p.Role], p)
		}
	}
	var list [][]Part
	for _, pick := range [][3]int{{0, 0, 0}, {1, 1, 1}, {2, 2, 2}, {0, 1, 2}, {1, 2, 0}, {2, 0, 1}} {
		var parts []*plants.Plant
		for i, role := range plants.Roles {
			if pick[i] < len(by[role]) {
				parts = append(parts, by[role][pick[i]])
			}
		}
		if len(parts) == len(plants.Roles) && alike(parts...) {
			list = append(list, []Part{rolePart(parts[0]), rolePart(parts[1]), rolePart(parts[2])})
		}
	}
	return list
}

func rolePart(p *plants.Plant) Part {
	return Part{Plant: p.ID, Role: Role(p.Role), Share: roleShares[p.Role]}
}

// alike reports whether plants ask for much the same water and growing or standing as
// stems, so that they do together.
func alike(list ...*plants.Plant) bool {
	rank := func(p *plants.Plant) int { return slices.Index(plants.Levels[:], p.Water) }
	for _, p := range list[1:] {
		if p.Kind.Growing() != list[0].Kind.Growing() || max(rank(p)-rank(list[0]), rank(list[0])-rank(p)) > 1 {
			return false
		}
	}
	return true
}

func seasonsOf(p *plants.Plant) []Season {
	var list []Season
	for _, s := range p.Seasons {
		list = append(list, Season(s))
	}
	return list
}

func sortBySeason(list []Planting) {
	slices.SortStableFunc(list, func(a, b Planting) int {
		return slices.Index(Seasons[:], a.Season) - slices.Index(Seasons[:], b.Season)
	})
}
