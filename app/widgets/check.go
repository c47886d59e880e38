package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
)

// Check is something that is so or not, such as "Cats". Enter, Space and a tap turn
// it over.
type Check struct {
	pressable
	label    string
	state    string // how readers of the screen say that it is so
	on       bool
	onChange func(on bool)
}

var (
	_ fyne.Widget     = (*Check)(nil)
	_ fyne.Accessible = (*Check)(nil)
)

// NewCheck returns a check that is off. State is the word for on, such as "yes".
func NewCheck(label, state string, onChange func(on bool)) *Check {
	c := &Check{label: label, state: state, onChange: onChange}
	c.press = func() {
		c.Set(!c.on)
		if c.onChange != nil {
			c.onChange(c.on)
		}
	}
	c.extend(c)
	return c
}

// Set shows whether it is so, without telling onChange.
func (c *Check) Set(on bool) {
	if c.on != on {
		c.on = on
		c.Refresh()
	}
}

// On reports whether it is so.
func (c *Check) On() bool { return c.on }

// AccessibilityLabel returns the label and whether it is so.
func (c *Check) AccessibilityLabel() string {
	if c.on {
		return accessibleName(c.label, c.state)
	}
	return c.label
}

// AccessibilityRole is a button.
func (c *Check) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// CreateRenderer is called by the toolkit.
func (c *Check) CreateRenderer() fyne.WidgetRenderer {
	r := &checkRenderer{
		check: c, light: canvas.NewRectangle(color.Transparent), box: canvas.NewRectangle(color.Transparent),
		tick:  canvas.NewImageFromResource(theme.IconIn(theme.IconTick, fynetheme.ColorNameSuccess)),
		label: canvas.NewText("", nil), ring: newRing(),
	}
	r.box.CornerRadius, r.box.StrokeWidth, r.light.CornerRadius = 3, 1.5, 3
	r.tick.FillMode = canvas.ImageFillContain
	r.Refresh()
	return r
}

type checkRenderer struct {
	check            *Check
	light, box, ring *canvas.Rectangle
	tick             *canvas.Image
	label            *canvas.Text
}

func (r *checkRenderer) Refresh() {
	c, l := r.check, lookOf(r.check)
	show(r.light, c.hovered)
	fill(r.light, l.colour(fynetheme.ColorNameHover))
	r.box.StrokeColor, r.box.FillColor = l.colour(theme.ColorOutline), l.colour(theme.ColorSurface)
	r.box.Refresh()
	show(r.tick, c.on)
	r.tick.Refresh()
	l.set(r.label, c.label, scriptText)
	l.ring(r.ring, c.focused)
	r.Layout(c.Size())
}

// side is the side of the box: a line of text.
func (r *checkRenderer) side() float32 { return lookOf(r.check).size(fynetheme.SizeNameInlineIcon) }

func (r *checkRenderer) MinSize() fyne.Size {
	text := r.label.MinSize()
	return fyne.NewSize(theme.Step+r.side()+theme.Step+text.Width+theme.Step, max(theme.Target, text.Height+theme.Step))
}

func (r *checkRenderer) Layout(size fyne.Size) {
	side, text := r.side(), r.label.MinSize()
	y := centred(0, size.Height, side)
	place(r.light, 0, 0, size.Width, size.Height)
	place(r.ring, 0, 0, size.Width, size.Height)
	place(r.box, theme.Step, y, side, side)
	place(r.tick, theme.Step+1, y-1, side, side)
	place(r.label, theme.Step+side+theme.Step, centred(0, size.Height, text.Height), text.Width, text.Height)
}

func (r *checkRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.light, r.box, r.tick, r.label, r.ring}
}

func (r *checkRenderer) Destroy() {}
