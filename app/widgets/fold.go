package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// Fold is a part of a page that can be folded away. Folded, it says in one line what is
// in it. A click on its head, Enter or Space open and close it.
type Fold struct {
	widget.BaseWidget
	heading, summary string
	mark             theme.IconName
	markName         string
	open             bool
	content          fyne.CanvasObject
	head             *foldHead

	// OnToggle is called when a person opened or closed the fold; it may be nil.
	OnToggle func(open bool)
}

var (
	_ fyne.Widget     = (*Fold)(nil)
	_ fyne.Accessible = (*Fold)(nil)
)

// NewFold returns a part of a page under a heading.
func NewFold(heading string, content fyne.CanvasObject, open bool) *Fold {
	f := &Fold{heading: heading, content: content, open: open}
	f.head = &foldHead{fold: f}
	f.head.press = func() {
		f.SetOpen(!f.open)
		if f.OnToggle != nil {
			f.OnToggle(f.open)
		}
	}
	f.head.extend(f.head)
	show(content, open)
	f.ExtendBaseWidget(f)
	return f
}

// SetHeading changes the heading.
func (f *Fold) SetHeading(heading string) {
	if f.heading != heading {
		f.heading = heading
		f.head.Refresh()
	}
}

// SetSummary says in one line what is in the fold.
func (f *Fold) SetSummary(summary string) {
	if f.summary != summary {
		f.summary = summary
		f.head.Refresh()
	}
}

// SetMark shows a sign at the heading, with its name for screen readers; "" takes it
// away.
func (f *Fold) SetMark(mark theme.IconName, name string) {
	if f.mark != mark || f.markName != name {
		f.mark, f.markName = mark, name
		f.head.Refresh()
	}
}

// SetOpen opens or closes the fold.
func (f *Fold) SetOpen(open bool) {
	if f.open == open {
		return
	}
	f.open = open
	show(f.content, open)
	f.Refresh()
	f.head.Refresh()
}

// IsOpen reports whether the content is shown.
func (f *Fold) IsOpen() bool { return f.open }

// Head returns the part that takes the focus.
func (f *Fold) Head() fyne.Focusable { return f.head }

// AccessibilityLabel returns the heading.
func (f *Fold) AccessibilityLabel() string { return f.heading }

// AccessibilityRole is a container.
func (f *Fold) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleContainer }

// CreateRenderer is called by the toolkit.
func (f *Fold) CreateRenderer() fyne.WidgetRenderer { return &foldRenderer{fold: f} }

type foldRenderer struct{ fold *Fold }

func (r *foldRenderer) Layout(size fyne.Size) {
	head := r.fold.head.MinSize().Height
	place(r.fold.head, 0, 0, size.Width, head)
	place(r.fold.content, 0, head+theme.Step, size.Width, max(0, size.Height-head-theme.Step))
}

func (r *foldRenderer) MinSize() fyne.Size {
	size := r.fold.head.MinSize()
	content := r.fold.content.MinSize()
	size.Width = max(size.Width, content.Width) // it must not get wider by opening
	if r.fold.open {
		size.Height += content.Height + 2*theme.Step
	}
	return size
}

func (r *foldRenderer) Refresh() {
	r.Layout(r.fold.Size())
	r.fold.head.Refresh()
	if r.fold.open {
		r.fold.content.Refresh()
	}
}

func (r *foldRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.fold.head, r.fold.content}
}

func (r *foldRenderer) Destroy() {}

// foldHead is the line that opens and closes a fold.
type foldHead struct {
	pressable
	fold *Fold
}

// AccessibilityLabel returns heading, sign and summary.
func (h *foldHead) AccessibilityLabel() string {
	return accessibleName(h.fold.heading, h.fold.markName, h.fold.summary)
}

// AccessibilityRole is a button.
func (h *foldHead) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// CreateRenderer is called by the toolkit.
func (h *foldHead) CreateRenderer() fyne.WidgetRenderer {
	r := &foldHeadRenderer{
		head: h, ground: canvas.NewRectangle(color.Transparent), rule: canvas.NewRectangle(color.Transparent), ring: newRing(),
		arrow: canvas.NewImageFromResource(nil), mark: canvas.NewImageFromResource(nil),
		heading: canvas.NewText("", nil), summary: canvas.NewText("", nil),
	}
	r.arrow.FillMode, r.mark.FillMode = canvas.ImageFillContain, canvas.ImageFillContain
	r.Refresh()
	return r
}

type foldHeadRenderer struct {
	head               *foldHead
	ground, rule, ring *canvas.Rectangle
	arrow, mark        *canvas.Image
	heading, summary   *canvas.Text
}

func (r *foldHeadRenderer) Refresh() {
	h, l := r.head, lookOf(r.head)
	ground := color.Color(color.Transparent)
	if h.hovered {
		ground = l.colour(fynetheme.ColorNameHover)
	}
	fill(r.ground, ground)
	fill(r.rule, l.colour(theme.ColorRule))
	l.ring(r.ring, h.focused)
	arrow := theme.IconForward
	if h.fold.open {
		arrow = theme.IconDown
	}
	r.arrow.Resource = theme.IconIn(arrow, theme.ColorInkSoft)
	r.arrow.Refresh()
	show(r.mark, h.fold.mark != "")
	if h.fold.mark != "" {
		r.mark.Resource = theme.IconIn(h.fold.mark, inkOfMark(h.fold.mark))
		r.mark.Refresh()
	}
	r.Layout(h.Size())
}

// inkOfMark is the colour in which a sign stands on paper.
func inkOfMark(mark theme.IconName) fyne.ThemeColorName {
	for _, look := range noticeLook {
		if look.icon == mark {
			return look.ink
		}
	}
	return theme.ColorInkSoft
}

func (r *foldHeadRenderer) MinSize() fyne.Size {
	l := lookOf(r.head)
	heading := l.measure(r.head.fold.heading, scriptHeading)
	return fyne.NewSize(heading.Width+2*l.size(fynetheme.SizeNameInlineIcon)+3*theme.Step, heading.Height+theme.Step)
}

func (r *foldHeadRenderer) Layout(size fyne.Size) {
	h, l := r.head, lookOf(r.head)
	icon := l.size(fynetheme.SizeNameInlineIcon)
	place(r.ground, 0, 0, size.Width, size.Height)
	place(r.ring, 0, 0, size.Width, size.Height)
	place(r.rule, 0, size.Height-theme.Hair, size.Width, theme.Hair)
	place(r.arrow, 0, centred(0, size.Height, icon), icon, icon)
	x := icon + theme.Half
	l.set(r.heading, h.fold.heading, scriptHeading)
	heading := r.heading.MinSize()
	place(r.heading, x, centred(0, size.Height, heading.Height), heading.Width, heading.Height)
	x += heading.Width + theme.Step
	if h.fold.mark != "" {
		place(r.mark, x, centred(0, size.Height, icon), icon, icon)
		x += icon + theme.Step
	}
	l.set(r.summary, l.fit(h.fold.summary, scriptSoft, size.Width-x-theme.Half), scriptSoft)
	text := r.summary.MinSize()
	place(r.summary, size.Width-theme.Half-text.Width, centred(0, size.Height, text.Height), text.Width, text.Height)
}

func (r *foldHeadRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.arrow, r.heading, r.mark, r.summary, r.rule, r.ring}
}

func (r *foldHeadRenderer) Destroy() {}
