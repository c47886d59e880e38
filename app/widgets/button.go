package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
)

// ButtonKind is how much a button asks to be pressed.
type ButtonKind int

// The kinds.
const (
	ButtonPlain ButtonKind = iota // edged
	ButtonMain                    // filled; one on a page
	ButtonQuiet                   // no edge until the pointer is over it
)

// ButtonData is what a button shows. Without a label it is a sign alone; Name then
// says what it does.
type ButtonData struct {
	Icon  theme.IconName
	Label string
	Kind  ButtonKind
	Name  string // for screen readers and the hint; by default the label
}

// Button is a button of the notebook. Enter and Space press it.
type Button struct {
	pressable
	data     ButtonData
	disabled bool

	// OnHint is called with the name when the pointer or the focus comes, and with
	// "" when it goes, for a status line; it may be nil.
	OnHint func(text string)
}

var (
	_ fyne.Widget      = (*Button)(nil)
	_ fyne.Disableable = (*Button)(nil)
	_ fyne.Accessible  = (*Button)(nil)
)

// NewButton returns a button.
func NewButton(data ButtonData, onPress func()) *Button {
	b := &Button{data: data}
	b.press = onPress
	b.extend(b)
	return b
}

// Set changes what the button shows.
func (b *Button) Set(data ButtonData) {
	if b.data != data {
		b.data = data
		b.Refresh()
	}
}

// SetOnPress changes what the button does.
func (b *Button) SetOnPress(onPress func()) { b.press = onPress }

// Disable takes the button out of use; it stays visible.
func (b *Button) Disable() { b.setDisabled(true) }

// Enable ends what Disable began.
func (b *Button) Enable() { b.setDisabled(false) }

func (b *Button) setDisabled(disabled bool) {
	if b.disabled != disabled {
		b.disabled = disabled
		b.Refresh()
	}
}

// Disabled reports whether the button is out of use.
func (b *Button) Disabled() bool { return b.disabled }

// Tapped presses, unless out of use.
func (b *Button) Tapped(ev *fyne.PointEvent) {
	if !b.disabled {
		b.pressable.Tapped(ev)
	}
}

// TypedKey presses on Enter and Space.
func (b *Button) TypedKey(ev *fyne.KeyEvent) {
	if !b.disabled || ev.Name == fyne.KeyEscape {
		b.pressable.TypedKey(ev)
	}
}

// MouseIn gives the hint.
func (b *Button) MouseIn(ev *desktop.MouseEvent) {
	b.hint(b.AccessibilityLabel())
	b.pressable.MouseIn(ev)
}

// MouseOut takes the hint away.
func (b *Button) MouseOut() {
	b.hint("")
	b.pressable.MouseOut()
}

// FocusGained gives the hint.
func (b *Button) FocusGained() {
	b.hint(b.AccessibilityLabel())
	b.pressable.FocusGained()
}

// FocusLost takes the hint away.
func (b *Button) FocusLost() {
	b.hint("")
	b.pressable.FocusLost()
}

func (b *Button) hint(text string) {
	if b.OnHint != nil {
		b.OnHint(text)
	}
}

// AccessibilityLabel returns the name or the label.
func (b *Button) AccessibilityLabel() string {
	if b.data.Name != "" {
		return b.data.Name
	}
	return b.data.Label
}

// AccessibilityRole is a button.
func (b *Button) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// CreateRenderer is called by the toolkit.
func (b *Button) CreateRenderer() fyne.WidgetRenderer {
	r := &buttonRenderer{
		button: b, ground: canvas.NewRectangle(color.Transparent), light: canvas.NewRectangle(color.Transparent),
		icon: canvas.NewImageFromResource(nil), label: canvas.NewText("", nil), ring: newRing(),
	}
	r.icon.FillMode = canvas.ImageFillContain
	r.Refresh()
	return r
}

// iconGap is the room between icon and label.
const iconGap float32 = 6

type buttonRenderer struct {
	button              *Button
	ground, light, ring *canvas.Rectangle
	icon                *canvas.Image
	label               *canvas.Text
}

func (r *buttonRenderer) Refresh() {
	b, l := r.button, lookOf(r.button)
	text, ground, edge := fynetheme.ColorNameForeground, color.Color(color.Transparent), color.Color(color.Transparent)
	switch {
	case b.data.Kind == ButtonMain && !b.disabled:
		text, ground = fynetheme.ColorNameForegroundOnPrimary, l.colour(fynetheme.ColorNamePrimary)
	case b.data.Kind != ButtonQuiet:
		ground, edge = l.colour(theme.ColorSurface), l.colour(theme.ColorOutline)
	}
	if b.disabled {
		text = fynetheme.ColorNameDisabled
		if b.data.Kind != ButtonQuiet {
			edge = l.colour(theme.ColorRule)
		}
	}
	radius := l.size(fynetheme.SizeNameButtonRadius)
	r.ground.FillColor, r.ground.StrokeColor, r.ground.StrokeWidth, r.ground.CornerRadius = ground, edge, theme.Hair, radius
	r.ground.Refresh()
	r.light.CornerRadius = radius
	show(r.light, b.hovered && !b.disabled)
	fill(r.light, l.colour(fynetheme.ColorNameHover))
	label := scriptText
	if b.data.Kind == ButtonMain {
		label = scriptStrong
	}
	l.set(r.label, b.data.Label, label.in(text))
	show(r.label, b.data.Label != "")
	show(r.icon, b.data.Icon != "")
	if b.data.Icon != "" {
		r.icon.Resource = theme.IconIn(b.data.Icon, text)
		r.icon.Refresh()
	}
	l.ring(r.ring, b.focused)
	r.Layout(b.Size())
}

func (r *buttonRenderer) MinSize() fyne.Size {
	l := lookOf(r.button)
	icon := l.size(fynetheme.SizeNameInlineIcon)
	text := l.measure("x", scriptText).Height
	height := max(theme.Target, text+theme.Step)
	width := float32(0)
	if r.icon.Visible() {
		width += icon
	}
	if r.label.Visible() {
		width += r.label.MinSize().Width + theme.Step3
		if r.icon.Visible() {
			width += iconGap
		}
	} else {
		width += height - icon
	}
	return fyne.NewSize(width, height)
}

func (r *buttonRenderer) Layout(size fyne.Size) {
	icon := lookOf(r.button).size(fynetheme.SizeNameInlineIcon)
	place(r.ground, 0, 0, size.Width, size.Height)
	place(r.light, 0, 0, size.Width, size.Height)
	place(r.ring, 0, 0, size.Width, size.Height)
	text := r.label.MinSize()
	content := text.Width
	if !r.label.Visible() {
		content = 0
	}
	if r.icon.Visible() {
		content += icon
		if r.label.Visible() {
			content += iconGap
		}
	}
	x := (size.Width - content) / 2
	if r.icon.Visible() {
		place(r.icon, x, centred(0, size.Height, icon), icon, icon)
		x += icon + iconGap
	}
	place(r.label, x, centred(0, size.Height, text.Height), text.Width, text.Height)
}

func (r *buttonRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.light, r.icon, r.label, r.ring}
}

func (r *buttonRenderer) Destroy() {}
