package plants

import (
	"slices"

	"gopkg.in/yaml.v3"

	"fourturn/planner/quantity"
)

// attribute is one field of a plant and how files write it.
type attribute struct {
	part[Plant]
	field Field
}

// attributes is every field in the order of the files. It is filled once and
// never changed; init breaks the circle with the codec that reads field names.
var attributes []attribute

func init() { attributes = plantAttributes() }

func field[V any](f Field, at func(*Plant) *V, c codec[V]) attribute {
	return attribute{partOf(string(f), at, c), f}
}

func (a attribute) must() attribute {
	a.required = true
	return a
}

func plantAttributes() []attribute {
	return slices.Concat(nameAttributes(), growingAttributes(), temperatureAttributes(), looksAttributes())
}

func nameAttributes() []attribute {
	return []attribute{
		field(FieldNames, func(p *Plant) *[]string { return &p.Names }, listCodec(textCodec)).must(),
		field(FieldBotanical, func(p *Plant) *[]string { return &p.Botanical }, listCodec(textCodec)).must(),
		field(FieldSynonyms, func(p *Plant) *[]string { return &p.Synonyms }, listCodec(textCodec)),
		field(FieldFamily, func(p *Plant) *string { return &p.Family }, textCodec).must(),
		field(FieldKind, func(p *Plant) *Kind { return &p.Kind }, wordCodec(Kinds[:])).must(),
		field(FieldSeasons, func(p *Plant) *[]Season { return &p.Seasons }, listCodec(wordCodec(Seasons[:]))).must(),
	}
}

func growingAttributes() []attribute {
	return []attribute{
		field(FieldRole, func(p *Plant) *Role { return &p.Role }, wordCodec(Roles[:])).must(),
		field(FieldLight, func(p *Plant) *[]Light { return &p.Light }, listCodec(wordCodec(Lights[:]))).must(),
		field(FieldWater, func(p *Plant) *Level { return &p.Water }, wordCodec(Levels[:])).must(),
		field(FieldFeeder, func(p *Plant) *Feeder { return &p.Feeder }, wordCodec(Feeders[:])),
		field(FieldHeight, func(p *Plant) *Span { return &p.Height }, spanCodec).must(),
		field(FieldSpread, func(p *Plant) *quantity.Length { return &p.Spread }, lengthCodec).must(),
		field(FieldSpacing, func(p *Plant) *quantity.Length { return &p.Spacing }, lengthCodec).must(),
		field(FieldSold, func(p *Plant) *[]Sold { return &p.Sold }, soldCodec),
		field(FieldShows, func(p *Plant) *Maybe[Weeks] { return &p.Shows }, maybeCodec(weeksCodec)),
		field(FieldChill, func(p *Plant) *Maybe[Weeks] { return &p.Chill }, maybeCodec(weeksCodec)),
		field(FieldDiseases, func(p *Plant) *[]string { return &p.Diseases }, listCodec(textCodec)),
	}
}

func temperatureAttributes() []attribute {
	temperature := maybeCodec(temperatureCodec)
	return []attribute{
		field(FieldFrostClass, func(p *Plant) *FrostClass { return &p.FrostClass }, wordCodec(FrostClasses[:])),
		field(FieldLowestInPot, func(p *Plant) *Maybe[quantity.Temperature] { return &p.LowestInPot }, temperature),
		field(FieldPlantingOutNight, func(p *Plant) *Maybe[quantity.Temperature] { return &p.PlantingOutNight }, temperature),
		field(FieldHeatLimit, func(p *Plant) *Maybe[quantity.Temperature] { return &p.HeatLimit }, temperature),
		field(FieldRootZoneLimit, func(p *Plant) *Maybe[quantity.Temperature] { return &p.RootZoneLimit }, temperature),
		field(FieldZone, func(p *Plant) *Maybe[int] { return &p.Zone }, maybeCodec(countCodec)),
		field(FieldTemperatureClass, func(p *Plant) *TemperatureClass { return &p.TemperatureClass }, wordCodec(TemperatureClasses[:])),
		field(FieldBaseTemperature, func(p *Plant) *Maybe[quantity.Temperature] { return &p.BaseTemperature }, temperature),
		field(FieldOptimumTemperature, func(p *Plant) *Maybe[quantity.Temperature] { return &p.OptimumTemperature }, temperature),
	}
}

func looksAttributes() []attribute {
	return []attribute{
		field(FieldToxicity, func(p *Plant) *Toxicity { return &p.Toxicity }, toxicityCodec),
		field(FieldInvasive, func(p *Plant) *[]Invasive { return &p.Invasive }, sequenceCodec(invasiveCodec)),
		field(FieldColours, func(p *Plant) *[]Colour { return &p.Colours }, listCodec(wordCodec(Colours[:]))),
		field(FieldFoliage, func(p *Plant) *Foliage { return &p.Foliage }, foliageCodec),
		field(FieldScent, func(p *Plant) *Scent { return &p.Scent }, wordCodec(Scents[:])),
		field(FieldPollinators, func(p *Plant) *[]Pollinator { return &p.Pollinators }, listCodec(wordCodec(Pollinators[:]))),
		field(FieldEdible, func(p *Plant) *[]EdiblePart { return &p.Edible }, listCodec(wordCodec(EdibleParts[:]))),
		field(FieldDrawing, func(p *Plant) *Drawing { return &p.Drawing }, drawingCodec),
		field(FieldNotes, func(p *Plant) *string { return &p.Notes }, textCodec),
		field(FieldConflicts, func(p *Plant) *[]Conflict { return &p.Conflicts }, sequenceCodec(conflictCodec)),
	}
}

func attributeOf(f Field) (attribute, bool) {
	for _, a := range attributes {
		if a.field == f {
			return a, true
		}
	}
	return attribute{}, false
}

// soldCodec reads the sizes that a plant is sold in with the weeks from each to
// full: {cell_pack: 6, pot_10cm: 4, bulb: unknown}.
var soldCodec = codec[[]Sold]{
	read: func(r *reader, n *yaml.Node) ([]Sold, bool) {
		entries, ok := r.mapping(n)
		sold := make([]Sold, 0, len(entries))
		for _, e := range entries {
			s := Sold{Size: e.key}
			if e.value.Value != "unknown" {
				weeks, good := numberCodec.read(r, e.value)
				ok = ok && good
				s.WeeksToFull = Some(weeks)
			}
			sold = append(sold, s)
		}
		return sold, ok
	},
	write: func(sold []Sold) *yaml.Node {
		if len(sold) == 0 {
			return nil
		}
		n := flow(yaml.MappingNode)
		for _, s := range sold {
			value := scalar("unknown")
			if weeks, known := s.WeeksToFull.Get(); known {
				value = numberCodec.write(weeks)
			}
			n.Content = append(n.Content, scalar(s.Size), value)
		}
		return n
	},
}
