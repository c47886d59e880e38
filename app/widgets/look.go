package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
)

// look answers for the theme that a widget is drawn in.
type look struct {
	theme   fyne.Theme
	variant fyne.ThemeVariant
}

// lookOf returns the look of a widget now.
func lookOf(w interface{ Theme() fyne.Theme }) look {
	return look{w.Theme(), fyne.CurrentApp().Settings().ThemeVariant()}
}

func (l look) colour(name fyne.ThemeColorName) color.Color {
	return l.theme.Color(name, l.variant)
}

func (l look) size(name fyne.ThemeSizeName) float32 { return l.theme.Size(name) }

// script is a way to set text: font, size and colour together.
type script struct {
	font   fyne.Resource // nil for the sans in the style below
	style  fyne.TextStyle
	size   fyne.ThemeSizeName
	colour fyne.ThemeColorName
}

// The scripts in use. More would make the page restless.
var (
	scriptTitle   = script{theme.HeadingFont(), fyne.TextStyle{}, theme.SizeTitle, fynetheme.ColorNameForeground}
	scriptHeading = script{theme.HeadingFont(), fyne.TextStyle{}, fynetheme.SizeNameSubHeadingText, fynetheme.ColorNameForeground}
	scriptText    = script{nil, fyne.TextStyle{}, fynetheme.SizeNameText, fynetheme.ColorNameForeground}
	scriptStrong  = script{nil, fyne.TextStyle{Bold: true}, fynetheme.SizeNameText, fynetheme.ColorNameForeground}
	scriptSoft    = script{nil, fyne.TextStyle{}, fynetheme.SizeNameText, theme.ColorInkSoft}
	scriptCaption = script{nil, fyne.TextStyle{}, fynetheme.SizeNameCaptionText, theme.ColorInkSoft}
	scriptFigure  = script{nil, fyne.TextStyle{Bold: true}, theme.SizeFigure, fynetheme.ColorNameForeground}
	scriptFormula = script{theme.FormulaFont(), fyne.TextStyle{}, fynetheme.SizeNameSubHeadingText, fynetheme.ColorNameForeground}
)

// in returns the script in another colour.
func (s script) in(colour fyne.ThemeColorName) script {
	s.colour = colour
	return s
}

// set writes text in a script; it redraws only what changed.
func (l look) set(t *canvas.Text, text string, s script) {
	c, size := l.colour(s.colour), l.size(s.size)
	if t.Text == text && t.Color == c && t.TextSize == size && t.TextStyle == s.style && t.FontSource == s.font {
		return
	}
	t.Text, t.Color, t.TextSize, t.TextStyle, t.FontSource = text, c, size, s.style, s.font
	t.Refresh()
}

// measure returns the size of text in a script.
func (l look) measure(text string, s script) fyne.Size {
	size, _ := fyne.CurrentApp().Driver().RenderedTextSize(text, l.size(s.size), s.style, s.font)
	return size
}

// fit shortens text with … until it is no wider than width.
func (l look) fit(text string, s script, width float32) string {
	if text == "" || l.measure(text, s).Width <= width {
		return text
	}
	runes := []rune(text)
	low, high := 0, len(runes)
	for low < high {
		middle := (low + high + 1) / 2
		if l.measure(string(runes[:middle])+"…", s).Width <= width {
			low = middle
		} else {
			high = middle - 1
		}
	}
	if low == 0 {
		return ""
	}
	return string(runes[:low]) + "…"
}

// fill colours a rectangle; it redraws only what changed.
func fill(r *canvas.Rectangle, c color.Color) {
	if r.FillColor != c {
		r.FillColor = c
		r.Refresh()
	}
}

// ringWidth is the width of the focus ring.
const ringWidth = 2

// newRing returns a focus ring, hidden.
func newRing() *canvas.Rectangle {
	ring := canvas.NewRectangle(color.Transparent)
	ring.StrokeWidth = ringWidth
	ring.CornerRadius = 3
	ring.Hide()
	return ring
}

// ring shows or hides a focus ring.
func (l look) ring(r *canvas.Rectangle, focused bool) {
	r.StrokeColor = l.colour(theme.ColorPen)
	show(r, focused)
	r.Refresh()
}

// show shows or hides an object.
func show(o fyne.CanvasObject, visible bool) {
	if visible == o.Visible() {
		return
	}
	if visible {
		o.Show()
	} else {
		o.Hide()
	}
}

// place moves and resizes an object.
func place(o fyne.CanvasObject, x, y, w, h float32) {
	o.Move(fyne.NewPos(x, y))
	o.Resize(fyne.NewSize(w, h))
}

// centred returns the y at which something of height h stands in the middle of a
// band of height outer that begins at top.
func centred(top, outer, h float32) float32 { return top + (outer-h)/2 }

// accessibleName joins the parts of a name for screen readers.
func accessibleName(parts ...string) string {
	name := ""
	for _, p := range parts {
		if p == "" {
			continue
		}
		if name != "" {
			name += ", "
		}
		name += p
	}
	return name
}
