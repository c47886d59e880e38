package theme

import (
	"encoding/binary"
	"fmt"
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/assets"
)

// luminance is relative luminance by WCAG 2.2.
func luminance(c color.Color) float64 {
	r, g, b := linear(c)
	return 0.2126*r + 0.7152*g + 0.0722*b
}

// linear returns the channels without gamma, 0 to 1 (IEC 61966-2-1).
func linear(c color.Color) (r, g, b float64) {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	lin := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return lin(n.R), lin(n.G), lin(n.B)
}

// contrast is the contrast ratio by WCAG 2.2, 1 to 21.
func contrast(a, b color.Color) float64 {
	la, lb := luminance(a), luminance(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

// WCAG's own examples: black on white is 21:1; #777777 on white is 4.48:1, the
// well-known grey that just fails.
func TestContrastAgainstKnownPairs(t *testing.T) {
	white, black, grey := rgb(0xffffff), rgb(0), rgb(0x777777)
	for _, c := range []struct {
		a, b color.Color
		want float64
	}{{white, black, 21}, {white, white, 1}, {grey, white, 4.48}} {
		if got := contrast(c.a, c.b); math.Abs(got-c.want) > 0.005 {
			t.Errorf("contrast %v %v = %.3f, want %.2f", c.a, c.b, got, c.want)
		}
	}
}

// look is one palette as a person can choose it.
type look struct {
	name          string
	theme         *Theme
	variant       fyne.ThemeVariant
	text, graphic float64 // least contrast
}

func looks() []look {
	var all []look
	for _, high := range []bool{false, true} {
		for _, safe := range []bool{false, true} {
			text, graphic := 4.5, 3.0
			if high {
				text, graphic = 7, 4.5
			}
			if high && safe {
				graphic = 3 // the colour-safe categories are the same with high contrast
			}
			th := New(Options{HighContrast: high, ColorSafe: safe})
			name := fmt.Sprintf("high=%v safe=%v", high, safe)
			all = append(all, look{"light " + name, th, fynetheme.VariantLight, text, graphic})
			all = append(all, look{"dark " + name, th, fynetheme.VariantDark, text, graphic})
		}
	}
	return all
}

var grounds = []fyne.ThemeColorName{fynetheme.ColorNameBackground, ColorSurface, ColorMargin}

// textPairs lists which text stands on which ground anywhere in the program.
func textPairs() map[fyne.ThemeColorName][]fyne.ThemeColorName {
	washes := []fyne.ThemeColorName{
		ColorNoteWash, ColorCautionWash, ColorWarningWash, ColorErrorWash,
		ColorGoodWash, ColorColdWash, ColorWarmWash, ColorSoil, ColorWater,
	}
	for i := range Categories {
		washes = append(washes, CategoryWash(i))
	}
	with := func(more ...fyne.ThemeColorName) []fyne.ThemeColorName {
		return append(append([]fyne.ThemeColorName{}, grounds...), more...)
	}
	return map[fyne.ThemeColorName][]fyne.ThemeColorName{
		fynetheme.ColorNameForeground:          with(washes...),
		ColorInkSoft:                           with(ColorNoteWash, ColorCautionWash, ColorWarningWash, ColorErrorWash),
		fynetheme.ColorNamePlaceHolder:         grounds,
		fynetheme.ColorNameHyperlink:           grounds,
		ColorPen:                               with(ColorNoteWash),
		fynetheme.ColorNamePrimary:             grounds,
		ColorLate:                              with(ColorErrorWash),
		fynetheme.ColorNameError:               with(ColorErrorWash),
		fynetheme.ColorNameWarning:             with(ColorWarningWash),
		fynetheme.ColorNameSuccess:             with(ColorGoodWash),
		ColorCaution:                           with(ColorCautionWash),
		fynetheme.ColorNameForegroundOnPrimary: {fynetheme.ColorNamePrimary},
		fynetheme.ColorNameForegroundOnError:   {fynetheme.ColorNameError},
		fynetheme.ColorNameForegroundOnSuccess: {fynetheme.ColorNameSuccess},
		fynetheme.ColorNameForegroundOnWarning: {fynetheme.ColorNameWarning},
	}
}

// graphicPairs lists which lines and signs stand on which ground.
func graphicPairs() map[fyne.ThemeColorName][]fyne.ThemeColorName {
	pairs := map[fyne.ThemeColorName][]fyne.ThemeColorName{
		ColorOutline:                         grounds,
		fynetheme.ColorNameInputBorder:       grounds,
		fynetheme.ColorNameScrollBar:         grounds,
		ColorRibbon:                          grounds,
		ColorToday:                           grounds,
		ColorPen:                             grounds,
		ColorSoilMark:                        {fynetheme.ColorNameBackground, ColorSurface},
		ColorWaterMark:                       {fynetheme.ColorNameBackground, ColorSurface, ColorWater},
		ColorCold:                            {fynetheme.ColorNameBackground, ColorSurface, ColorColdWash},
		ColorWarm:                            {fynetheme.ColorNameBackground, ColorSurface, ColorWarmWash},
		ColorSun:                             {fynetheme.ColorNameBackground, ColorSurface},
		ColorGood:                            {fynetheme.ColorNameBackground, ColorSurface, ColorGoodWash},
		fynetheme.ColorNameForeground:        {ColorWarmWash, ColorColdWash},
		fynetheme.ColorNameSeparator:         nil, // ruled lines carry no meaning
		fynetheme.ColorNameInnerWindowBorder: nil,
	}
	for i := range Categories {
		pairs[CategoryEdge(i)] = []fyne.ThemeColorName{fynetheme.ColorNameBackground, ColorSurface, CategoryWash(i)}
	}
	return pairs
}

func TestContrastOfText(t *testing.T) {
	test.NewTempApp(t)
	for _, l := range looks() {
		check(t, l, textPairs(), l.text)
	}
}

func TestContrastOfGraphics(t *testing.T) {
	test.NewTempApp(t)
	for _, l := range looks() {
		check(t, l, graphicPairs(), l.graphic)
	}
}

func check(t *testing.T, l look, pairs map[fyne.ThemeColorName][]fyne.ThemeColorName, least float64) {
	t.Helper()
	for name, on := range pairs {
		for _, ground := range on {
			a, b := l.theme.Color(name, l.variant), l.theme.Color(ground, l.variant)
			if got := contrast(a, b); got < least {
				t.Errorf("%s: %s %s on %s %s is %.2f:1, want %.1f:1", l.name, name, hex(a), ground, hex(b), got, least)
			}
		}
	}
}

// machado holds the simulation matrices for a wholly missing kind of cone, for
// linear RGB: Machado, Oliveira, Fernandes (2009), table 1, severity 1.0.
var machado = map[string][9]float64{
	"all cones": {1, 0, 0, 0, 1, 0, 0, 0, 1},
	"protan":    {0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998},
	"deuteran":  {0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881},
	"tritan":    {1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900},
}

// lab returns CIE L*a*b* of a colour as seen through a matrix; white D65.
func lab(c color.Color, m [9]float64) [3]float64 {
	r, g, b := linear(c)
	clamp := func(v float64) float64 { return math.Max(0, math.Min(1, v)) }
	r, g, b = clamp(m[0]*r+m[1]*g+m[2]*b), clamp(m[3]*r+m[4]*g+m[5]*b), clamp(m[6]*r+m[7]*g+m[8]*b)
	f := func(v float64) float64 {
		if v > 216.0/24389 {
			return math.Cbrt(v)
		}
		return (24389.0/27*v + 16) / 116
	}
	x := f((0.4124564*r + 0.3575761*g + 0.1804375*b) / 0.95047)
	y := f(0.2126729*r + 0.7151522*g + 0.0721750*b)
	z := f((0.0193339*r + 0.1191920*g + 0.9503041*b) / 1.08883)
	return [3]float64{116*y - 16, 500 * (x - y), 200 * (y - z)}
}

func TestSafeCategoriesStayApart(t *testing.T) {
	const least = 20
	for name, set := range map[string][Categories]pair{"light": safeLight, "dark": safeDark} {
		for eyes, m := range machado {
			for i := range Categories {
				for j := range i {
					a, b := lab(rgb(set[i].edge), m), lab(rgb(set[j].edge), m)
					d := math.Sqrt(math.Pow(a[0]-b[0], 2) + math.Pow(a[1]-b[1], 2) + math.Pow(a[2]-b[2], 2))
					if d < least {
						t.Errorf("%s, %s: categories %d and %d differ by %.1f, want %d", name, eyes, j, i, d, least)
					}
				}
			}
		}
	}
}

func TestEveryColourIsDefined(t *testing.T) {
	for _, l := range looks() {
		test.AssertAllColorNamesDefined(t, l.theme, l.name)
	}
	for name, b := range map[string]base{"light": light, "dark": dark, "lightContrast": lightContrast, "darkContrast": darkContrast} {
		for colour, c := range b.build() {
			if c.A == 0 {
				t.Errorf("%s: %s is not seen", name, colour)
			}
		}
	}
}

func TestModeOverridesTheDesktop(t *testing.T) {
	test.NewTempApp(t)
	name := fynetheme.ColorNameBackground
	system := New(Options{})
	if system.Color(name, fynetheme.VariantDark) == system.Color(name, fynetheme.VariantLight) {
		t.Error("the page must follow the desktop")
	}
	if got := New(Options{Mode: Light}).Color(name, fynetheme.VariantDark); got != system.Color(name, fynetheme.VariantLight) {
		t.Errorf("light page on a dark desktop is %v", got)
	}
	if got := New(Options{Mode: Dark}).Color(name, fynetheme.VariantLight); got != system.Color(name, fynetheme.VariantDark) {
		t.Errorf("dark page on a light desktop is %v", got)
	}
}

func TestTextScale(t *testing.T) {
	test.NewTempApp(t)
	for _, c := range []struct{ asked, want float32 }{{0, 14}, {1, 14}, {1.5, 21}, {0.1, 14 * MinTextScale}, {9, 28}} {
		if got := New(Options{TextScale: c.asked}).Size(fynetheme.SizeNameText); got != c.want {
			t.Errorf("scale %v: text is %v, want %v", c.asked, got, c.want)
		}
	}
	if got := New(Options{TextScale: 2}).Size(fynetheme.SizeNamePadding); got != Half {
		t.Errorf("padding grew to %v with the text", got)
	}
}

func TestFontsHaveTheirLicences(t *testing.T) {
	entries, err := assets.Fonts.ReadDir("fonts")
	if err != nil {
		t.Fatal(err)
	}
	total, licences := int64(0), 0
	for _, e := range entries {
		info, err := e.Info()
		if err != nil {
			t.Fatal(err)
		}
		total += info.Size()
		if info.Size() > 3000 && len(e.Name()) > 11 && e.Name()[len(e.Name())-11:] == "LICENSE.txt" {
			licences++
		}
	}
	if licences != 2 {
		t.Errorf("%d licences, want one for each of the two families", licences)
	}
	if total > 3<<19 {
		t.Errorf("fonts are %d bytes, want at most 1.5 MiB", total)
	}
}

// Figures must have one width in every style of running text.
func TestFiguresAreTabular(t *testing.T) {
	a := test.NewTempApp(t)
	a.Settings().SetTheme(New(Options{}))
	for _, style := range []fyne.TextStyle{{}, {Bold: true}, {Italic: true}} {
		want := fyne.MeasureText("00000000", 14, style).Width
		for d := '1'; d <= '9'; d++ {
			text := ""
			for range 8 {
				text += string(d)
			}
			if got := fyne.MeasureText(text, 14, style).Width; math.Abs(float64(got-want)) > 0.6 {
				t.Errorf("style %+v: 8 × %c is %v wide, 0 is %v", style, d, got, want)
			}
		}
	}
}

// The serif has no other font to fall back on, so it must hold every sign that a
// heading or a formula can need.
func TestSerifCoversFormulas(t *testing.T) {
	test.NewTempApp(t)
	const signs = "ÄÖÜäöüßáéíóúñ¿¡«»„“”‚‘’–—…·⋅×÷−±≈≤≥≠°²³¹⁰⁴⁻½¼¾€£Ωπθ√∑∫∞→←₀₁₂₃αβλρσΔμηφτε"
	for name, source := range map[string]fyne.Resource{"heading": HeadingFont(), "formula": FormulaFont()} {
		has := covered(t, source.Content())
		if has['ж'] {
			t.Errorf("%s: Cyrillic was left out, but is found: the reader of the table is wrong", name)
		}
		for _, r := range signs {
			if !has[r] {
				t.Errorf("%s: no %c (%U)", name, r, r)
			}
		}
	}
}

// covered reads which characters of the basic plane a TrueType font holds, from
// its character map of format 4 (OpenType specification 1.9, "cmap").
func covered(t *testing.T, font []byte) map[rune]bool {
	t.Helper()
	be := binary.BigEndian
	u16 := func(at int) int { return int(be.Uint16(font[at:])) }
	u32 := func(at int) int { return int(be.Uint32(font[at:])) }
	cmap := 0
	for i := range u16(4) {
		if record := 12 + 16*i; string(font[record:record+4]) == "cmap" {
			cmap = u32(record + 8)
		}
	}
	has := map[rune]bool{}
	for i := range u16(cmap + 2) {
		sub := cmap + u32(cmap+4+8*i+4)
		if u16(sub) != 4 {
			continue
		}
		segments := u16(sub+6) / 2
		for s := range segments {
			end, start := u16(sub+14+2*s), u16(sub+16+2*segments+2*s)
			for c := start; c <= end && c < 0xffff; c++ {
				has[rune(c)] = true
			}
		}
	}
	return has
}

func TestDrawingsUseKnownColours(t *testing.T) {
	test.NewTempApp(t)
	th := New(Options{})
	for _, name := range DrawingNames {
		day := Drawing(name, th, fynetheme.VariantLight)
		night := Drawing(name, th, fynetheme.VariantDark)
		if day.Name() == night.Name() {
			t.Errorf("%s: the same name by day and by night", name)
		}
		source, _ := assets.Drawings.ReadFile("drawings/" + string(name) + ".svg")
		for _, m := range placeholder.FindAllSubmatch(source, -1) {
			if _, ok := th.light[fyne.ThemeColorName("fourturn."+string(m[1]))]; !ok {
				t.Errorf("%s: unknown colour %s", name, m[1])
			}
		}
	}
}
