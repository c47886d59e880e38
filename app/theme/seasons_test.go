package theme

import (
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2/test"
)

// seasons are the categories that the year and the site draw the four planting seasons
// in.
const seasons = 4

// apart returns the least difference in CIE L*a*b* (1976) between the colours of two
// seasons, as seen through a matrix.
func apart(colour func(i int) color.Color, m [9]float64) float64 {
	least := math.Inf(1)
	for i := range seasons {
		for j := range i {
			a, b := lab(colour(i), m), lab(colour(j), m)
			least = min(least, math.Sqrt(math.Pow(a[0]-b[0], 2)+math.Pow(a[1]-b[1], 2)+math.Pow(a[2]-b[2], 2)))
		}
	}
	return least
}

// With the colour-safe set the grounds of the four seasons differ for every kind of eyes
// by what can be seen when they lie side by side: a difference of 2.3 is just noticeable
// (M. Mahy, L. Van Eycken and A. Oosterlinck, "Evaluation of Uniform Color Spaces
// Developed after the Adoption of CIELAB and CIELUV", Color Research and Application 19,
// 1994). Their edges lie far apart. The other sets hold that for eyes with all cones;
// to others two of their grounds can look alike (the least is 1.4), and the hatch of each
// season tells it.
func TestSeasonsStayApart(t *testing.T) {
	test.NewTempApp(t)
	const noticed, far = 2.3, 20
	for _, l := range looks() {
		for eyes, m := range machado {
			wash := apart(func(i int) color.Color { return l.theme.Color(CategoryWash(i), l.variant) }, m)
			edge := apart(func(i int) color.Color { return l.theme.Color(CategoryEdge(i), l.variant) }, m)
			t.Logf("%s, %s: washes %.1f, edges %.1f", l.name, eyes, wash, edge)
			if !l.theme.Options().ColorSafe && eyes != "all cones" {
				continue
			}
			if wash < noticed || edge < far {
				t.Errorf("%s, %s: washes of two seasons differ by %.1f, edges by %.1f; want %.1f and %d", l.name, eyes, wash, edge, noticed, far)
			}
		}
	}
}
