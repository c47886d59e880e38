// Package plantest makes random plans for property tests: every list filled or
// empty, ids and texts of any script, numbers as people type them and numbers
// with all their digits. Only tests import it.
package plantest

import (
	"fmt"
	"math"

	"pgregory.net/rapid"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// Plan draws a plan that can be written to a file.
func Plan() *rapid.Generator[*planner.Plan] {
	return rapid.Custom(func(t *rapid.T) *planner.Plan {
		p := &planner.Plan{
			ID:       word(t),
			Title:    Text().Draw(t, "title"),
			Units:    quantity.System(rapid.IntRange(0, 1).Draw(t, "units")),
			Currency: rapid.SampledFrom([]string{"", "EUR", "USD"}).Draw(t, "currency"),
			Risk:     share(t, 0.01, 0.99),
			Household: planner.Household{
				Cats: rapid.Bool().Draw(t, "cats"), Dogs: rapid.Bool().Draw(t, "dogs"), Children: rapid.Bool().Draw(t, "children"),
			},
			Mix: planner.MixSettings{
				Settling: share(t, 0.01, 0.5), Refresh: share(t, 0.1, 1), RetireAfter: rapid.IntRange(0, 40).Draw(t, "retire"),
				Substrate: rapid.SampledFrom([]string{"", "pine_bark"}).Draw(t, "substrate"),
				Pail:      quantity.Volume(decimal(t, 1, 20, 1)), Scoop: quantity.Volume(decimal(t, 10, 500, quantity.Millilitre.Litres())),
			},
		}
		p.Sites = each(t, "sites", func(t *rapid.T, id string) planner.Site {
			s := planner.Site{
				ID: id, Name: Text().Draw(t, "name"), Station: word(t), Elevation: maybe(t, quantity.Length(decimal(t, -400, 4000, 1))),
				LapseRate: decimal(t, 1, 10, 1), FreezeStation: word(t), Means: means(t), Record: record(t),
				Frost: planner.FrostDates{Last: monthDay(t), First: monthDay(t), Odds: share(t, 0.05, 0.95)},
			}
			if s.Latitude = maybe(t, decimal(t, -90, 90, 1)); s.Latitude != nil {
				longitude := decimal(t, -180, 180, 1)
				s.Longitude = &longitude
			}
			return s
		})
		p.Spots = each(t, "spots", func(t *rapid.T, id string) planner.Spot {
			return planner.Spot{
				ID: id, Name: Text().Draw(t, "name"), Site: one(t, ids(p.Sites, func(s planner.Site) string { return s.ID })),
				Light: rapid.SampledFrom([]planner.Light{"", planner.Sun, planner.PartSun, planner.Shade}).Draw(t, "light"), Shelter: word(t),
				NightOffset: maybe(t, decimal(t, -15, 15, 1)), DayOffset: maybe(t, decimal(t, -15, 15, 1)),
			}
		})
		p.Products = each(t, "products", product)
		p.Blends = each(t, "blends", func(t *rapid.T, id string) planner.Blend {
			return blend(t, id, ids(p.Products, func(s planner.Product) string { return s.ID }))
		})
		p.Mix.Blend = one(t, ids(p.Blends, func(s planner.Blend) string { return s.ID }))
		p.Recipes = each(t, "recipes", func(t *rapid.T, id string) planner.Recipe {
			return planner.Recipe{ID: id, Name: Text().Draw(t, "name"), Season: season(t), Light: planner.Sun, Parts: parts(t)}
		})
		products := ids(p.Products, func(s planner.Product) string { return s.ID })
		p.Feeding = planner.FeedingSettings{
			SlowRelease: one(t, products), Turn: some(t, products), Interval: rapid.IntRange(0, 60).Draw(t, "interval"),
			Can: quantity.Volume(decimal(t, 1, 100, 1)), FirstDay: rapid.SampledFrom([]string{"", "saturday"}).Draw(t, "day"),
			OnTop: rapid.Bool().Draw(t, "on top"), Basis: rapid.SampledFrom([]planner.ChargeBasis{"", planner.ChargeAll, planner.ChargeFresh}).Draw(t, "basis"),
			WaterEC: decimal(t, 0.1, 3, 1), Leaching: share(t, 0.05, 0.5), Injector: decimal(t, 15, 200, 1),
			PartsAdded: rapid.Bool().Draw(t, "added"), Lead: rapid.IntRange(0, 90).Draw(t, "lead"),
			Rules:   feedRules(t),
			Release: planner.ReleaseSettings{Spent: share(t, 0.75, 0.95), ActivationEnergy: decimal(t, 37, 46, 1)},
		}
		p.Year = wishes(t)
		spots := ids(p.Spots, func(s planner.Spot) string { return s.ID })
		recipes := ids(p.Recipes, func(s planner.Recipe) string { return s.ID })
		p.Pots = each(t, "pots", func(t *rapid.T, id string) planner.Pot { return pot(t, id, spots, recipes) })
		pots := ids(p.Pots, func(s planner.Pot) string { return s.ID })
		p.Reminders = planner.Reminders{At: rapid.SampledFrom([]string{"", "08:00", "23:59"}).Draw(t, "at"), Quiet: rapid.Bool().Draw(t, "quiet")}
		for range rapid.IntRange(0, 3).Draw(t, "snoozes") {
			p.Snoozed = append(p.Snoozed, planner.Snooze{
				Kind: rapid.SampledFrom([]planner.DueKind{planner.DueFeed, planner.DueChangeOut}).Draw(t, "kind"),
				Pots: some(t, pots), Season: season(t), Until: date(t, false), Set: date(t, true),
			})
		}
		p.Log = each(t, "log", func(t *rapid.T, id string) planner.Entry {
			return planner.Entry{
				ID: id, Date: date(t, false),
				Kind: rapid.SampledFrom([]planner.EntryKind{planner.Fed, planner.Skipped, planner.Planted, planner.Diseased, planner.Lost, planner.Lovely, planner.Noted, planner.TopDressed}).Draw(t, "kind"),
				Pots: some(t, pots), Product: one(t, products), Season: season(t), Text: Text().Draw(t, "text"),
				Mass: quantity.Mass(decimal(t, 1, 500, quantity.Gram.Kilograms())),
			}
		})
		return p
	})
}

func product(t *rapid.T, id string) planner.Product {
	p := planner.Product{
		ID: id, Name: Text().Draw(t, "name"),
		Kind:      rapid.SampledFrom([]planner.ProductKind{planner.SlowRelease, planner.Soluble, planner.PottingMix, planner.Ingredient}).Draw(t, "kind"),
		Analysis:  rapid.SampledFrom([]string{"", "14-14-14", "0-0-50", "12.5-4-8"}).Draw(t, "analysis"),
		Longevity: decimal(t, 1, 18, 1), Reference: quantity.Temperature(decimal(t, 10, 30, 1)),
		Coated: share(t, 0.1, 1), RateLabel: Text().Draw(t, "label"), Solubility: decimal(t, 100, 600, 1), Conductivity: decimal(t, 0.1, 2, 1),
		Rate: decimal(t, 1, 10, 1), Strength: decimal(t, 50, 500, 1), SpoonMass: quantity.Mass(decimal(t, 5, 30, quantity.Gram.Kilograms())),
		InShed: decimal(t, 0, 300, 1),
	}
	for range rapid.IntRange(0, 3).Draw(t, "packs") {
		pack := planner.Pack{Price: decimal(t, 1, 100, 1)}
		if p.Kind.ByVolume() {
			pack.Volume = quantity.Volume(decimal(t, 10, 70, 1))
		} else {
			pack.Mass = quantity.Mass(decimal(t, 1, 25, 1))
		}
		p.Packs = append(p.Packs, pack)
	}
	if p.Kind.ByVolume() && rapid.Bool().Draw(t, "bulk") {
		litres := func() quantity.Volume { return quantity.Volume(decimal(t, 100, 3000, 1)) }
		p.Bulk = planner.Bulk{Price: decimal(t, 1, 200, 1), Per: litres(), Step: litres(), Minimum: litres(), Delivery: decimal(t, 1, 90, 1)}
		p.Expansion = decimal(t, 1, 3, 1)
	}
	return p
}

func blend(t *rapid.T, id string, products []string) planner.Blend {
	b := planner.Blend{ID: id, Name: Text().Draw(t, "name"), Shrinkage: maybe(t, share(t, 0, 0.5))}
	for _, product := range some(t, products) {
		b.Parts = append(b.Parts, planner.BlendPart{Product: product, Parts: decimal(t, 1, 9, 1)})
	}
	return b
}

func feedRules(t *rapid.T) planner.FeedRules {
	return planner.FeedRules{
		StarterWeeks: decimal(t, 1, 6, 1), ChargeWeeks: decimal(t, 1, 12, 1), StopBefore: rapid.IntRange(0, 30).Draw(t, "stop"),
		Coldest: maybe(t, quantity.Temperature(decimal(t, -5, 15, 1))), HeatAbove: quantity.Temperature(decimal(t, 20, 40, 1)), HeatShare: share(t, 0.1, 1),
		YoungDays: rapid.IntRange(0, 60).Draw(t, "young"), YoungShare: share(t, 0.1, 1), RestFrom: monthDay(t), RestTo: monthDay(t),
	}
}

func pot(t *rapid.T, id string, spots, recipes []string) planner.Pot {
	p := planner.Pot{
		ID: id, Name: Text().Draw(t, "name"), Spot: one(t, spots), Client: Text().Draw(t, "client"), Vessel: Vessel(t),
		Refresh:  rapid.SampledFrom([]planner.RefreshPolicy{"", planner.ReplaceShare, planner.TopUp, planner.AllFresh}).Draw(t, "refresh"),
		MixSince: date(t, true), Notes: Text().Draw(t, "notes"), RefreshShare: share(t, 0.1, 1),
		RetireAfter: rapid.IntRange(0, 40).Draw(t, "retire"), PlantMass: quantity.Mass(decimal(t, 1, 30, 1)),
	}
	wanted(t, &p, recipes)
	for _, s := range planner.Seasons {
		if rapid.Bool().Draw(t, "planted") {
			p.Plantings = append(p.Plantings, planner.Planting{Season: s, Recipe: one(t, recipes), Plants: parts(t), Start: date(t, true)})
		}
	}
	return p
}

func parts(t *rapid.T) []planner.Part {
	var list []planner.Part
	for range rapid.IntRange(0, 3).Draw(t, "parts") {
		list = append(list, planner.Part{
			Plant: "plant-" + word(t), Role: rapid.SampledFrom([]planner.Role{"", planner.Thriller, planner.Filler, planner.Spiller}).Draw(t, "role"),
			Count: rapid.IntRange(0, 9).Draw(t, "count"), Share: share(t, 0.01, 1), Stays: rapid.Bool().Draw(t, "stays"),
		})
	}
	return list
}

// Text draws a text that is awkward to write: words that mean something in YAML,
// several lines, quotes, other scripts.
func Text() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.Just(""),
		rapid.SampledFrom([]string{
			"Urn by the door", "no", "12", "1e3", "~", "null", "true", "2027-05-01", "- a", "a: b", "a #b", "'", `"`, "two\nlines", "two\nlines\n",
			"\n", " lead", "trail ", "tab\there", "{x}", "[y]", "*a", "&b", "!c", "%d", "@e", "`f`", "|", ">", "Kübel für Überwinterung", "鉢", "a\r\nb",
			"a\u2028b", "a\u0085b", "\ufeff", "😀", "a\n\n\n", "a\n b\n# c\n", "...", "---", "?", "x,y", "=", "<<", "0x1F", "1_000", "12:30:45",
		}),
		rapid.StringN(0, 20, 80),
	)
}

func word(t *rapid.T) string { return rapid.StringMatching(`[a-z][a-z0-9_]{0,8}`).Draw(t, "word") }

// id draws an id; some look like numbers, booleans or dates.
func id() *rapid.Generator[string] {
	return rapid.OneOf(rapid.StringMatching(`[a-z][a-z0-9_-]{0,6}`), rapid.SampledFrom([]string{"12", "no", "true", "null", "2027-05-01", "é", "鉢1", "0x1F"}))
}

// each draws up to four things with different ids.
func each[T any](t *rapid.T, label string, make func(*rapid.T, string) T) []T {
	var list []T
	for _, name := range rapid.SliceOfNDistinct(id(), 0, 4, func(s string) string { return s }).Draw(t, label) {
		list = append(list, make(t, name))
	}
	return list
}

func ids[T any](list []T, id func(T) string) []string {
	var all []string
	for _, one := range list {
		all = append(all, id(one))
	}
	return all
}

// one draws one of several ids, or none.
func one(t *rapid.T, ids []string) string {
	return rapid.SampledFrom(append([]string{""}, ids...)).Draw(t, "one")
}

// some draws some of several ids, each at most once.
func some(t *rapid.T, ids []string) []string {
	var list []string
	for _, id := range ids {
		if rapid.Bool().Draw(t, "some") {
			list = append(list, id)
		}
	}
	return list
}

func season(t *rapid.T) planner.Season {
	return rapid.SampledFrom(append([]planner.Season{""}, planner.Seasons[:]...)).Draw(t, "season")
}

func date(t *rapid.T, orNone bool) civil.Date {
	if orNone && rapid.Bool().Draw(t, "no date") {
		return 0
	}
	return civil.Date(rapid.IntRange(int(civil.New(civil.MinYear, 1, 1)), int(civil.New(civil.MaxYear, 12, 31))).Draw(t, "date"))
}

func monthDay(t *rapid.T) civil.MonthDay {
	if rapid.Bool().Draw(t, "no day") {
		return civil.MonthDay{}
	}
	return civil.New(2000, 1, 1).AddDays(rapid.IntRange(0, 365).Draw(t, "day")).MonthDay()
}

func maybe[T any](t *rapid.T, v T) *T {
	if rapid.Bool().Draw(t, "none") {
		return nil
	}
	return &v
}

// decimal draws a number between two others, times a unit: as typed with one
// decimal, or with all its digits.
func decimal(t *rapid.T, low, high, unit float64) float64 {
	if rapid.Bool().Draw(t, "typed") {
		tenths := rapid.IntRange(int(math.Ceil(low*10)), int(high*10)).Draw(t, "tenths")
		var x float64
		if _, err := fmt.Sscan(fmt.Sprintf("%d.%d", tenths/10, max(tenths, -tenths)%10), &x); err != nil {
			panic("plantest: " + err.Error())
		}
		return x * unit
	}
	return rapid.Float64Range(low, high).Draw(t, "digits") * unit
}

func share(t *rapid.T, low, high float64) float64 {
	if rapid.Bool().Draw(t, "per cent") {
		return float64(rapid.IntRange(int(math.Ceil(low*100)), int(high*100)).Draw(t, "percent")) / 100
	}
	return rapid.Float64Range(low, high).Draw(t, "share")
}
