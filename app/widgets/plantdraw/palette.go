package plantdraw

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/plants/sketch"
)

// Palette is what tones are mixed from.
type Palette struct {
	Paper color.NRGBA // what is drawn on
	Ink   color.NRGBA
	Faint color.NRGBA // ink, pressed lightly
	Mono  bool        // ink and paper only, hatched
	Dim   float64     // how much darker colours are, 0 to 1, as by lamplight
}

// Print is black ink on white paper.
var Print = Palette{
	Paper: color.NRGBA{R: 255, G: 255, B: 255, A: 255}, Ink: color.NRGBA{A: 255}, Faint: color.NRGBA{R: 90, G: 90, B: 90, A: 255}, Mono: true,
}

// PaletteOf returns the palette of a theme on a ground of a colour, such as
// [theme.ColorSurface].
func PaletteOf(t fyne.Theme, variant fyne.ThemeVariant, ground fyne.ThemeColorName) Palette {
	paper := nrgba(t.Color(ground, variant))
	ink := nrgba(t.Color(fynetheme.ColorNameForeground, variant))
	p := Palette{Paper: paper, Ink: ink}
	if luma(paper) < 0.5 { // by lamplight the pen is dark all the same, and colours are dimmed
		p.Ink = mixed(color.NRGBA{A: 255}, paper, 0.25)
		p.Dim = 0.12
		p.Faint = mixed(ink, paper, 0.45)
		return p
	}
	p.Faint = mixed(ink, paper, 0.42)
	return p
}

func nrgba(c color.Color) color.NRGBA { return color.NRGBAModel.Convert(c).(color.NRGBA) }

func luma(c color.NRGBA) float64 {
	return (0.2126*float64(c.R) + 0.7152*float64(c.G) + 0.0722*float64(c.B)) / 255
}

// mixed returns a colour that is a share t of the way from a to b.
func mixed(a, b color.NRGBA, t float64) color.NRGBA {
	one := func(x, y uint8) uint8 { return uint8(math.Round(float64(x) + (float64(y)-float64(x))*t)) }
	return color.NRGBA{R: one(a.R, b.R), G: one(a.G, b.G), B: one(a.B, b.B), A: 255}
}

// tone returns what a tone is painted with.
func (p Palette) tone(t sketch.Tone) color.NRGBA {
	switch t.Kind {
	case sketch.Ink:
		return p.Ink
	case sketch.Faint:
		return p.Faint
	case sketch.Paper:
		return p.Paper
	case sketch.Tinted:
		r, g, b := sketch.RGB(t.Colour)
		c := color.NRGBA{R: r, G: g, B: b, A: 255}
		if t.Shade < 0 {
			c = mixed(c, color.NRGBA{R: 34, G: 38, B: 30, A: 255}, math.Min(1, -t.Shade))
		} else {
			c = mixed(c, color.NRGBA{R: 255, G: 253, B: 240, A: 255}, math.Min(1, t.Shade))
		}
		return mixed(c, color.NRGBA{A: 255}, p.Dim)
	case sketch.None:
	}
	return color.NRGBA{}
}
