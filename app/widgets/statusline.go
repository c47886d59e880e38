package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// StatusLine is the line at the foot of the window: what was last done at the
// left, what is so all the time at the right. A hint takes the left while it lasts.
type StatusLine struct {
	widget.BaseWidget
	text, hint, right string
	icon              theme.IconName
}

var (
	_ fyne.Widget     = (*StatusLine)(nil)
	_ fyne.Accessible = (*StatusLine)(nil)
)

// NewStatusLine returns an empty line.
func NewStatusLine() *StatusLine {
	s := &StatusLine{}
	s.ExtendBaseWidget(s)
	return s
}

// SetText says what was last done; the icon may be "".
func (s *StatusLine) SetText(icon theme.IconName, text string) {
	s.icon, s.text = icon, text
	s.Refresh()
}

// SetHint says what the thing under the pointer or with the focus does; "" ends it.
// It fits Button.OnHint.
func (s *StatusLine) SetHint(text string) {
	if s.hint != text {
		s.hint = text
		s.Refresh()
	}
}

// SetRight says what is so all the time, such as the name of the plan.
func (s *StatusLine) SetRight(text string) {
	if s.right != text {
		s.right = text
		s.Refresh()
	}
}

// AccessibilityLabel returns what the line says.
func (s *StatusLine) AccessibilityLabel() string { return accessibleName(s.text, s.hint, s.right) }

// AccessibilityRole is text.
func (s *StatusLine) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// CreateRenderer is called by the toolkit.
func (s *StatusLine) CreateRenderer() fyne.WidgetRenderer {
	r := &statusRenderer{
		line: s, ground: canvas.NewRectangle(color.Transparent), rule: canvas.NewRectangle(color.Transparent),
		icon: canvas.NewImageFromResource(nil), left: canvas.NewText("", nil), right: canvas.NewText("", nil),
	}
	r.icon.FillMode = canvas.ImageFillContain
	r.Refresh()
	return r
}

type statusRenderer struct {
	line         *StatusLine
	ground, rule *canvas.Rectangle
	icon         *canvas.Image
	left, right  *canvas.Text
}

func (r *statusRenderer) Refresh() {
	l := lookOf(r.line)
	fill(r.ground, l.colour(theme.ColorMargin))
	fill(r.rule, l.colour(theme.ColorRule))
	show(r.icon, r.line.icon != "" && r.line.hint == "")
	if r.line.icon != "" {
		r.icon.Resource = theme.IconIn(r.line.icon, theme.ColorInkSoft)
		r.icon.Refresh()
	}
	r.Layout(r.line.Size())
}

func (r *statusRenderer) MinSize() fyne.Size {
	return fyne.NewSize(200, lookOf(r.line).measure("X", scriptCaption).Height+theme.Step)
}

func (r *statusRenderer) Layout(size fyne.Size) {
	s, l := r.line, lookOf(r.line)
	place(r.ground, 0, 0, size.Width, size.Height)
	place(r.rule, 0, 0, size.Width, theme.Hair)
	l.set(r.right, l.fit(s.right, scriptCaption, size.Width/2), scriptCaption)
	right := r.right.MinSize()
	place(r.right, size.Width-theme.Step-right.Width, centred(0, size.Height, right.Height), right.Width, right.Height)
	x := theme.Step
	if r.icon.Visible() {
		place(r.icon, x, centred(0, size.Height, right.Height), right.Height, right.Height)
		x += right.Height + theme.Half
	}
	text := s.text
	if s.hint != "" {
		text = s.hint
	}
	l.set(r.left, l.fit(text, scriptCaption, size.Width-right.Width-theme.Step3-x), scriptCaption)
	left := r.left.MinSize()
	place(r.left, x, centred(0, size.Height, left.Height), left.Width, left.Height)
}

func (r *statusRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.rule, r.icon, r.left, r.right}
}

func (r *statusRenderer) Destroy() {}
