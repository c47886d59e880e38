package theme

import (
	"fmt"
	"hash/fnv"
	"image/color"
	"regexp"

	"fyne.io/fyne/v2"

	"fourturn/assets"
)

// DrawingName names one of the larger drawings, each 240 by 150 units.
type DrawingName string

// The drawings of empty rooms.
const (
	DrawingDue       DrawingName = "due"
	DrawingPots      DrawingName = "pots"
	DrawingYear      DrawingName = "year"
	DrawingFeeding   DrawingName = "feeding"
	DrawingMix       DrawingName = "mix"
	DrawingPlantBook DrawingName = "plant_book"
	DrawingSite      DrawingName = "site"
	DrawingSearch    DrawingName = "search" // nothing was found
)

// DrawingNames lists every drawing.
var DrawingNames = []DrawingName{
	DrawingDue, DrawingPots, DrawingYear, DrawingFeeding,
	DrawingMix, DrawingPlantBook, DrawingSite, DrawingSearch,
}

var placeholder = regexp.MustCompile(`\{(\w+)\}`)

// Drawing returns a drawing in the colours of the theme. Its name holds a hash of
// its content, because the toolkit keeps pictures by name.
func Drawing(name DrawingName, t fyne.Theme, variant fyne.ThemeVariant) fyne.Resource {
	source, err := assets.Drawings.ReadFile("drawings/" + string(name) + ".svg")
	if err != nil {
		panic("theme: drawing is missing: " + string(name))
	}
	content := placeholder.ReplaceAllFunc(source, func(match []byte) []byte {
		key := fyne.ThemeColorName("fourturn." + string(match[1:len(match)-1]))
		return []byte(hex(t.Color(key, variant)))
	})
	sum := fnv.New32a()
	sum.Write(content)
	return fyne.NewStaticResource(fmt.Sprintf("drawing-%s-%08x.svg", name, sum.Sum32()), content)
}

func hex(c color.Color) string {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	return fmt.Sprintf("#%02x%02x%02x", n.R, n.G, n.B)
}
