package theme

import (
	"image/color"

	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"
)

// Mode says which of the two pages is shown.
type Mode int

// The modes.
const (
	System Mode = iota // as the desktop asks
	Light
	Dark
)

// Options are what a person can choose about the look.
type Options struct {
	Mode         Mode
	HighContrast bool    // stronger text and lines, white or black paper
	ColorSafe    bool    // categories for eyes that see fewer colours
	TextScale    float32 // 1 is 14 points; 0 means 1; kept within 0.8 and 2
}

// The bounds of the text scale: below, captions stop being readable; above, the
// smallest window loses its columns.
const (
	MinTextScale float32 = 0.8
	MaxTextScale float32 = 2
)

// Theme is Fourturn's look for the toolkit. It never changes; to change an
// option, make another and set it in the app's settings.
type Theme struct {
	options     Options
	light, dark palette
}

var _ fyne.Theme = (*Theme)(nil)

// New returns the look with the chosen options.
func New(options Options) *Theme {
	if options.TextScale == 0 {
		options.TextScale = 1
	}
	options.TextScale = max(MinTextScale, min(options.TextScale, MaxTextScale))
	byDay, byNight := light, dark
	if options.HighContrast {
		byDay, byNight = lightContrast, darkContrast
	}
	t := &Theme{options: options, light: byDay.build(), dark: byNight.build()}
	if options.ColorSafe {
		t.light.paint(safeLight)
		t.dark.paint(safeDark)
	}
	return t
}

// Options returns what the theme was made with.
func (t *Theme) Options() Options { return t.options }

// Color returns the colour for a name, ours or the toolkit's. The variant counts
// only when the mode is System.
func (t *Theme) Color(name fyne.ThemeColorName, variant fyne.ThemeVariant) color.Color {
	p := t.light
	if t.options.Mode == Dark || t.options.Mode == System && variant == fynetheme.VariantDark {
		p = t.dark
	}
	if c, ok := p[name]; ok {
		return c
	}
	return fynetheme.DefaultTheme().Color(name, variant)
}

// Font returns the font for a style. Figures in all of them have one width, so
// that columns of numbers align.
func (t *Theme) Font(style fyne.TextStyle) fyne.Resource {
	switch {
	case style.Monospace:
		return fynetheme.DefaultTextMonospaceFont()
	case style.Symbol:
		return fynetheme.DefaultSymbolFont()
	case style.Bold && style.Italic:
		return textBoldItalic
	case style.Bold:
		return textBold
	case style.Italic:
		return textItalic
	}
	return textRegular
}

// Icon returns our drawing for a name, or the toolkit's where we have none.
func (t *Theme) Icon(name fyne.ThemeIconName) fyne.Resource {
	if ours, ok := standardIcons[name]; ok {
		return Icon(ours)
	}
	return fynetheme.DefaultTheme().Icon(name)
}

// Size returns the size for a name; text and icons grow with the text scale.
func (t *Theme) Size(name fyne.ThemeSizeName) float32 {
	if s, ok := textSizes[name]; ok {
		return s * t.options.TextScale
	}
	if s, ok := sizes[name]; ok {
		return s
	}
	return fynetheme.DefaultTheme().Size(name)
}

// textSizes are in points at 96 dpi; each step up is about a fifth larger.
var textSizes = map[fyne.ThemeSizeName]float32{
	fynetheme.SizeNameCaptionText:    12,
	fynetheme.SizeNameText:           14,
	fynetheme.SizeNameSubHeadingText: 17,
	SizeFigure:                       20,
	fynetheme.SizeNameHeadingText:    22,
	SizeTitle:                        28,
	fynetheme.SizeNameInlineIcon:     20,
}

var sizes = map[fyne.ThemeSizeName]float32{
	fynetheme.SizeNamePadding:            Half,
	fynetheme.SizeNameInnerPadding:       Step,
	fynetheme.SizeNameLineSpacing:        Half,
	fynetheme.SizeNameSeparatorThickness: Hair,
	fynetheme.SizeNameSplitThickness:     Half,
	fynetheme.SizeNameScrollBar:          12,
	fynetheme.SizeNameScrollBarSmall:     Half,
	fynetheme.SizeNameScrollBarRadius:    2,
	fynetheme.SizeNameInputBorder:        Hair,
	fynetheme.SizeNameInputRadius:        3,
	fynetheme.SizeNameButtonRadius:       3,
	fynetheme.SizeNameSelectionRadius:    2,
	fynetheme.SizeNameCardRadius:         3,
	fynetheme.SizeNameDialogRadius:       Half,
	fynetheme.SizeNamePopupRadius:        Half,
	fynetheme.SizeNameMenuRadius:         3,
}
