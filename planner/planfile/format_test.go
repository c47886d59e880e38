package planfile

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// The example of FORMAT.md is a plan, and it is what the program itself would
// write, but for its comments and how a number was typed.
func TestTheExampleOfTheFormatIsAPlan(t *testing.T) {
	page, err := os.ReadFile("FORMAT.md")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(page), "```yaml\n")
	example, _, found := strings.Cut(rest, "```")
	if !found {
		t.Fatal("no example")
	}
	d, err := Decode([]byte(example))
	if err != nil || len(d.Warnings()) > 0 {
		t.Fatal(err, d.Warnings())
	}
	if d.Plan().Pots[0].Vessel.TopDiameter == 0 || len(d.Plan().Recipes) == 0 {
		t.Error("the example shows no size or no recipe")
	}
	written, err := Encode(d.Plan())
	if err != nil {
		t.Fatal(err)
	}
	plain := regexp.MustCompile(` +#.*`).ReplaceAllString(example, "")
	if string(written) != plain {
		t.Errorf("the program would write\n%s\nand not\n%s", written, plain)
	}
}

// FORMAT.md names every key that the reader knows.
func TestTheFormatNamesEveryKey(t *testing.T) {
	page, err := os.ReadFile("FORMAT.md")
	if err != nil {
		t.Fatal(err)
	}
	keys := slices.Concat(planForm.keys(), householdForm.keys(), siteForm.keys(), frostForm.keys(), spotForm.keys(),
		mixForm.keys(), feedingForm.keys(), productForm.keys(), packForm.keys(), recipeForm.keys(), partForm.keys(),
		monthMeansForm.keys(), recordForm.keys(), recordMonthForm.keys(), seasonForm.keys(), freezeForm.keys(), heatForm.keys(),
		potForm.keys(), ringForm.keys(), linerForm.keys(), plantingForm.keys(), entryForm.keys())
	for _, key := range keys {
		if !strings.Contains(string(page), "`"+key+"`") {
			t.Errorf("%s is not described", key)
		}
	}
}
