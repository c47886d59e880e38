package plants

import (
	"cmp"
	"slices"
)

// Field names one value of a plant; it is the key under which book files write it.
type Field string

// The fields.
const (
	FieldNames              Field = "names"
	FieldBotanical          Field = "botanical"
	FieldSynonyms           Field = "synonyms"
	FieldFamily             Field = "family"
	FieldKind               Field = "kind"
	FieldSeasons            Field = "seasons"
	FieldRole               Field = "role"
	FieldLight              Field = "light"
	FieldWater              Field = "water"
	FieldFeeder             Field = "feeder"
	FieldFrostClass         Field = "frost_class"
	FieldHeight             Field = "height"
	FieldSpread             Field = "spread"
	FieldSpacing            Field = "spacing"
	FieldLowestInPot        Field = "lowest_in_pot"
	FieldPlantingOutNight   Field = "planting_out_night"
	FieldHeatLimit          Field = "heat_limit"
	FieldRootZoneLimit      Field = "root_zone_limit"
	FieldTemperatureClass   Field = "temperature_class"
	FieldBaseTemperature    Field = "base_temperature"
	FieldOptimumTemperature Field = "optimum_temperature"
	FieldZone               Field = "usda_zone"
	FieldSold               Field = "sold"
	FieldShows              Field = "shows"
	FieldChill              Field = "chill"
	FieldDiseases           Field = "diseases"
	FieldToxicity           Field = "toxicity"
	FieldInvasive           Field = "invasive"
	FieldColours            Field = "colours"
	FieldFoliage            Field = "foliage"
	FieldScent              Field = "scent"
	FieldPollinators        Field = "pollinators"
	FieldEdible             Field = "edible"
	FieldDrawing            Field = "drawing"
	FieldNotes              Field = "notes"
	FieldConflicts          Field = "conflicts"
)

// Fields returns every field in the order that files and screens list them.
func Fields() []Field {
	fields := make([]Field, len(attributes))
	for i, a := range attributes {
		fields[i] = a.field
	}
	return fields
}

// inOrder sorts fields as files and screens list them.
func inOrder(fields []Field) []Field {
	slices.SortFunc(fields, func(a, b Field) int { return cmp.Compare(attributeIndex(a), attributeIndex(b)) })
	return fields
}

func attributeIndex(f Field) int {
	return slices.IndexFunc(attributes, func(a attribute) bool { return a.field == f })
}
