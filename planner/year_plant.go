package planner

import (
	"slices"

	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/quantity"
	"fourturn/planner/rotation"
	"fourturn/plants"
)

// What is taken of a plant where the book has no figure. All are judgements, but for the
// chill and the warmth of bulbs: 12 weeks and more at 4.4 to 7.2 °C, flowers three to four
// weeks after (Iowa State University Extension).
const (
	noHeatLimit  quantity.Temperature = 60
	usualWeeks                        = 6.0 // to full, of the size sold
	chillBelow   quantity.Temperature = 9
	usualChill                        = 12.0 // weeks
	bulbHeat                          = 400  // degree-days above the base from the end of the chill
	usualRoots   quantity.Temperature = -9.4
	soldBefore                        = 28 // days before a planting season begins that its plants are sold
	soldToTheEnd                      = 14 // days before its end that they are sold out
)

// frostLowest is the lowest temperature taken for a frost class where the book has none
// for the plant: within the ranges of published lists, see [plants.FrostClass.Lowest].
var frostLowest = map[plants.FrostClass]quantity.Temperature{
	plants.Hardy: -7, plants.HalfHardy: -2.2, plants.Tender: 0, plants.VeryTender: 2,
}

// plantingNight is the mean night for planting out taken for a frost class where the
// book has none: extension guidance, from memory.
var plantingNight = map[plants.FrostClass]quantity.Temperature{
	plants.Hardy: 1.7, plants.HalfHardy: 4.4, plants.Tender: 8.3, plants.VeryTender: 12.8,
}

// translate returns a plant of the book as a search sees it at the spot.
func (s *yearSpot) translate(known *plants.Plant) *rotation.Plant {
	p := &rotation.Plant{
		ID: known.ID, Family: known.Family, Hardened: true,
		Lowest:    known.LowestInPot.Or(frostLowest[known.FrostClass]),
		PlantOut:  known.PlantingOutNight.Or(plantingNight[known.FrostClass]),
		HeatLimit: known.HeatLimit.Or(noHeatLimit),
		Base:      known.BaseTemperature.Or(4), Optimum: known.OptimumTemperature.Or(0),
		Cut: known.Kind == plants.CutStems, Overwinters: known.Kind.Lasting(),
		DiesBack:  known.Kind == plants.Perennial && !known.Foliage.Evergreen,
		RootLimit: known.RootZoneLimit.Or(usualRoots), Groups: known.Diseases,
		Sold: s.sold(known.Seasons), Shows: s.shown(known.Seasons),
	}
	if p.Optimum <= p.Base {
		p.Optimum = 0
	}
	if weeks, ok := known.Shows.Get(); ok {
		p.DisplayWeeks = (weeks.Low + weeks.High) / 2
	}
	if known.Kind == plants.Bulb {
		chill := known.Chill.Or(plants.Weeks{Low: usualChill, High: usualChill})
		p.Bulb = &rotation.Bulb{ChillWeeks: chill.Low, ChillBelow: chillBelow, HeatSum: bulbHeat}
	}
	for _, colour := range known.Colours {
		p.Colours = append(p.Colours, string(colour))
	}
	for _, colour := range known.Foliage.Colours {
		p.Colours = append(p.Colours, string(colour))
	}
	for _, sold := range known.Sold {
		p.Sizes = append(p.Sizes, rotation.Size{Name: sold.Size, WeeksToFull: sold.WeeksToFull.Or(usualWeeks), Fullness: fullnessOf(known, sold)})
	}
	if len(p.Sizes) == 0 {
		p.Sizes = []rotation.Size{{WeeksToFull: usualWeeks}}
	}
	return p
}

// fullnessOf is 1 for what does not grow on from the size that it is sold in.
func fullnessOf(known *plants.Plant, sold plants.Sold) float64 {
	if weeks, ok := sold.WeeksToFull.Get(); !known.Kind.Growing() || ok && weeks == 0 {
		return 1
	}
	return 0
}

// sold returns the days on which plants of some planting seasons are bought: from some
// weeks before a season begins at the spot until it nears its end (judgement).
func (s *yearSpot) sold(of []plants.Season) []rotation.Window {
	return s.windows(of, -soldBefore, -soldToTheEnd)
}

// shown returns the planting seasons themselves.
func (s *yearSpot) shown(of []plants.Season) []rotation.Window { return s.windows(of, 0, 0) }

// windows returns the days of some planting seasons in every year, or none where they are
// the whole year; begin and end move their ends by days.
func (s *yearSpot) windows(of []plants.Season, begin, end int) []rotation.Window {
	var list []rotation.Window
	exist := 0
	for _, season := range s.seasons.List {
		if season.Exists {
			exist++
		}
	}
	found := 0
	for _, season := range s.seasons.List {
		if !season.Exists || !slices.Contains(of, plants.Season(season.Name)) {
			continue
		}
		if found++; season.AllYear {
			return nil
		}
		for year := s.from.Year() - 1; year <= s.until.Year(); year++ {
			first := season.Start.In(year)
			list = append(list, rotation.Window{From: first.AddDays(begin), To: lastOf(season, first).AddDays(end)})
		}
	}
	if found == exist {
		return nil
	}
	slices.SortFunc(list, func(a, b rotation.Window) int { return int(a.From - b.From) })
	return list
}

// lastOf returns the last day of a season that begins on a day.
func lastOf(season climate.Season, first civil.Date) civil.Date {
	if season.Days <= 0 {
		return first
	}
	return first.AddDays(season.Days - 1)
}

// usualSize is the position of the size that a plant is usually bought in among those it
// is sold in: a 10 cm pot, else the first.
func usualSize(p *rotation.Plant) int {
	return max(0, slices.IndexFunc(p.Sizes, func(s rotation.Size) bool { return s.Name == "pot_10cm" }))
}

// planted returns a planting as a search sees it, without the plants that the book does
// not know; ok is false where none is left.
func (s *yearSpot) planted(id string, parts []Part) (rotation.Planting, bool) {
	p := rotation.Planting{ID: id}
	shares := sharesOf(parts)
	total := 0.0
	for i, part := range parts {
		plant := s.plant(part.Plant)
		if plant == nil {
			continue
		}
		total += shares[i]
		p.Parts = append(p.Parts, rotation.Part{
			Plant: plant, Size: usualSize(plant), Share: shares[i], Role: rotation.Role(part.Role), Stays: part.Stays,
		})
	}
	for i := range p.Parts {
		p.Parts[i].Share /= total
	}
	return p, len(p.Parts) > 0
}

// sharesOf returns the share of each part: its own, and what is left evenly for those
// that name none; together 1.
func sharesOf(parts []Part) []float64 {
	shares := make([]float64, len(parts))
	named, open := 0.0, 0
	for i, part := range parts {
		shares[i] = part.Share
		named += part.Share
		if part.Share == 0 {
			open++
		}
	}
	// A part without a share beside others that take all gets a little all the same.
	rest := max(1-named, 0.1*float64(open))
	total := 0.0
	for i := range shares {
		if shares[i] == 0 {
			shares[i] = rest / float64(open)
		}
		total += shares[i]
	}
	for i := range shares {
		shares[i] /= total
	}
	return shares
}
