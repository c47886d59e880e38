package planfile

import (
	"encoding/json"
	"maps"
	"slices"
	"testing"
)

// The schema must know exactly the keys that the reader knows.
func TestSchemaHasTheKeysOfTheForms(t *testing.T) {
	type object struct {
		Properties map[string]json.RawMessage `json:"properties"`
	}
	var root struct {
		object
		Defs map[string]object `json:"$defs"`
	}
	if err := json.Unmarshal([]byte(Schema()), &root); err != nil {
		t.Fatal(err)
	}
	var site struct {
		Frost struct {
			OneOf []object `json:"oneOf"`
		} `json:"frost"`
	}
	properties, err := json.Marshal(root.Defs["site"].Properties)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(properties, &site); err != nil || len(site.Frost.OneOf) == 0 {
		t.Fatal("no frost dates in the schema", err)
	}
	for name, c := range map[string]struct {
		schema map[string]json.RawMessage
		form   []string
	}{
		"plan":             {root.Properties, planForm.keys()},
		"household":        {root.Defs["household"].Properties, householdForm.keys()},
		"site":             {root.Defs["site"].Properties, siteForm.keys()},
		"frost":            {site.Frost.OneOf[0].Properties, frostForm.keys()},
		"means":            {root.Defs["month_means"].Properties, monthMeansForm.keys()},
		"record":           {root.Defs["record"].Properties, recordForm.keys()},
		"month":            {root.Defs["record_month"].Properties, recordMonthForm.keys()},
		"season":           {root.Defs["record_season"].Properties, seasonForm.keys()},
		"freeze":           {root.Defs["record_freeze"].Properties, freezeForm.keys()},
		"heat":             {root.Defs["record_heat"].Properties, heatForm.keys()},
		"spot":             {root.Defs["spot"].Properties, spotForm.keys()},
		"mix":              {root.Defs["mix_settings"].Properties, mixForm.keys()},
		"year":             {root.Defs["year"].Properties, yearForm.keys()},
		"days":             {root.Defs["stretch"].Properties, daysForm.keys()},
		"pin":              {root.Defs["pin"].Properties, pinForm.keys()},
		"ban":              {root.Defs["ban"].Properties, banForm.keys()},
		"feeding":          {root.Defs["feeding"].Properties, feedingForm.keys()},
		"product":          {root.Defs["product"].Properties, productForm.keys()},
		"pack":             {root.Defs["pack"].Properties, packForm.keys()},
		"bulk":             {root.Defs["bulk"].Properties, bulkForm.keys()},
		"blend":            {root.Defs["blend"].Properties, blendForm.keys()},
		"blend part":       {root.Defs["blend_part"].Properties, blendPartForm.keys()},
		"recipe":           {root.Defs["recipe"].Properties, recipeForm.keys()},
		"part":             {root.Defs["part"].Properties, partForm.keys()},
		"pot":              {root.Defs["pot"].Properties, potForm.keys()},
		"planting":         {root.Defs["planting"].Properties, plantingForm.keys()},
		"entry":            {root.Defs["entry"].Properties, entryForm.keys()},
		"feed_rules":       {root.Defs["feed_rules"].Properties, feedRulesForm.keys()},
		"release_settings": {root.Defs["release_settings"].Properties, releaseForm.keys()},
		"reminders":        {root.Defs["reminders"].Properties, remindersForm.keys()},
		"snooze":           {root.Defs["snooze"].Properties, snoozeForm.keys()},
	} {
		got, want := slices.Sorted(maps.Keys(c.schema)), slices.Sorted(slices.Values(c.form))
		if !slices.Equal(got, want) {
			t.Errorf("%s: the schema has %v, the form %v", name, got, want)
		}
	}
}
