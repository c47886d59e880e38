package find

import (
	"fmt"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/plants"
)

// The rooms that show what a plan holds.
const (
	roomPots   = "pots"
	roomMix    = "mix"
	roomPlants = "plants"
	roomSite   = "site"
	roomYear   = "year"
)

// collector gathers everything that can be found, kind by kind.
type collector struct {
	plan    *planner.Plan
	words   *words.Words
	entries []entry
}

// add adds a hit that answers to its title and to more words.
func (c *collector) add(hit Hit, also ...string) {
	c.entries = append(c.entries, entry{
		hit: hit, title: words.Fold(hit.Title),
		also: words.Fold(strings.Join(append(also, hit.About), " ")),
	})
}

func (c *collector) addPots() {
	var clients []string
	counts := map[string]int{}
	first := map[string]string{}
	spots := map[string]string{}
	for i := range c.plan.Spots {
		spots[c.plan.Spots[i].ID] = c.plan.Spots[i].Name
	}
	for i := range c.plan.Pots {
		pot := &c.plan.Pots[i]
		about := c.words.T("find.pot")
		if spot := spots[pot.Spot]; spot != "" {
			about = c.words.T("find.pot_at", words.A{"spot": spot})
		}
		c.add(Hit{Kind: Pot, Title: pot.Label(), About: about, Room: roomPots, ID: pot.ID}, pot.Client, pot.Notes)
		if pot.Client == "" {
			continue
		}
		if counts[pot.Client] == 0 {
			clients = append(clients, pot.Client)
			first[pot.Client] = pot.ID
		}
		counts[pot.Client]++
	}
	for _, client := range clients {
		about := c.words.T("find.client", words.A{"count": counts[client]})
		c.add(Hit{Kind: Client, Title: client, About: about, Room: roomPots, ID: first[client]})
	}
}

func (c *collector) addPlants(book *plants.Book) {
	for _, p := range book.Plants() {
		also := append([]string{p.Family}, p.Names...)
		also = append(also, p.Botanical...)
		also = append(also, p.Synonyms...)
		about := c.words.T("find.plant")
		if len(p.Botanical) > 0 {
			about = c.words.T("find.plant_named", words.A{"botanical": p.Botanical[0]})
		}
		c.add(Hit{Kind: Plant, Title: p.Name(), About: about, Room: roomPlants, ID: p.ID}, also...)
	}
}

// addRecipes leads to the first pot that is planted by the recipe, or to the year
// where none is.
func (c *collector) addRecipes(book *plants.Book) {
	pots := map[string][]string{}
	for i := range c.plan.Pots {
		for k := range c.plan.Pots[i].Plantings {
			recipe := c.plan.Pots[i].Plantings[k].Recipe
			pots[recipe] = append(pots[recipe], c.plan.Pots[i].ID)
		}
	}
	for i := range c.plan.Recipes {
		r := &c.plan.Recipes[i]
		season := c.words.T("plan.season." + string(r.Season))
		hit := Hit{Kind: Recipe, Title: r.Label(), Room: roomYear}
		used := pots[r.ID]
		if len(used) > 0 {
			hit.Room, hit.ID = roomPots, used[0]
		}
		hit.About = c.words.T("find.recipe", words.A{"season": season, "count": len(used)})
		var names []string
		for _, part := range r.Parts {
			if p, ok := book.Plant(part.Plant); ok {
				names = append(names, p.Name())
			}
		}
		c.add(hit, names...)
	}
}

func (c *collector) addProducts() {
	for i := range c.plan.Products {
		p := &c.plan.Products[i]
		about := c.words.T("find.product." + string(p.Kind))
		c.add(Hit{Kind: Product, Title: c.plan.ProductLabel(p.ID), About: about, Room: roomMix, ID: p.ID}, p.Analysis)
	}
}

func (c *collector) addPlaces() {
	for i := range c.plan.Sites {
		s := &c.plan.Sites[i]
		c.add(Hit{Kind: Site, Title: s.Label(), About: c.words.T("find.site"), Room: roomSite, ID: s.ID})
	}
	for i := range c.plan.Spots {
		s := &c.plan.Spots[i]
		about := c.words.T("find.spot", words.A{"count": c.plan.PotsAt(s.ID)})
		c.add(Hit{Kind: Spot, Title: s.Label(), About: about, Room: roomSite, ID: s.ID})
	}
}

func (c *collector) addAround(around Around) {
	for _, r := range around.Rooms {
		c.add(Hit{Kind: Room, Title: r.Label, About: c.words.T("find.room"), Keys: r.Keys, Room: r.Name})
	}
	for _, a := range around.Actions {
		c.add(Hit{Kind: Action, Title: a.Label, About: c.words.T("find.action"), Keys: a.Keys, Action: a.Name})
	}
}

// String names a hit for tests.
func (h Hit) String() string { return fmt.Sprintf("%s %s", h.Kind, h.Title) }
