package main

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/widgets"
)

// seen is something in the window: what it is called, where it is, and the scrolling
// parts that it lies in, the outermost first.
type seen struct {
	object  fyne.CanvasObject
	name    string
	scrolls []*container.Scroll
	at      fyne.Position // in the window
}

// look returns all that is visible, in the order in which one reads: of the topmost
// dialog if there is one, else of the page.
func (s *stage) look() []seen {
	c := s.window.Canvas()
	root := c.Content()
	if top := c.Overlays().Top(); top != nil {
		root = top
	}
	var all []seen
	var walk func(o fyne.CanvasObject, at fyne.Position, scrolls []*container.Scroll)
	walk = func(o fyne.CanvasObject, at fyne.Position, scrolls []*container.Scroll) {
		if o == nil || !o.Visible() {
			return
		}
		at = at.Add(o.Position())
		all = append(all, seen{object: o, name: nameOf(o), scrolls: scrolls, at: at})
		switch o := o.(type) {
		case *fyne.Container:
			for _, child := range o.Objects {
				walk(child, at, scrolls)
			}
		case fyne.Widget:
			if scroll, ok := o.(*container.Scroll); ok {
				scrolls = append(append([]*container.Scroll(nil), scrolls...), scroll)
			}
			for _, child := range test.WidgetRenderer(o).Objects() {
				walk(child, at, scrolls)
			}
		}
	}
	walk(root, fyne.Position{}, nil)
	return all
}

// nameOf returns what a thing says of itself.
func nameOf(o fyne.CanvasObject) string {
	switch o := o.(type) {
	case *canvas.Text:
		return o.Text
	case *widget.Label:
		return o.Text
	case fyne.Accessible:
		return o.AccessibilityLabel()
	case *widget.Check:
		return o.Text
	case *widget.Entry:
		return o.Text
	}
	return ""
}

// texts are all names in the window, and its title.
func (s *stage) texts() []string {
	texts := []string{s.window.Title()}
	for _, o := range s.look() {
		if o.name != "" {
			texts = append(texts, o.name)
		}
	}
	return texts
}

// shows reports whether the window says something. Text that wraps is taken together.
func (s *stage) shows(text string) bool {
	all := s.texts()
	return strings.Contains(strings.Join(all, "\n"), text) || strings.Contains(strings.Join(all, " "), text)
}

// find returns the thing with a name: the whole name before its beginning before a part.
func (s *stage) find(name string, fits func(fyne.CanvasObject) bool) (seen, error) {
	all := s.look()
	for _, same := range []func(string) bool{
		func(n string) bool { return n == name },
		func(n string) bool { return strings.HasPrefix(n, name) },
		func(n string) bool { return strings.Contains(n, name) },
	} {
		for _, o := range all {
			if o.name != "" && same(o.name) && fits(o.object) {
				return o, nil
			}
		}
	}
	return seen{}, fmt.Errorf("there is no %q", name)
}

// field returns the field with a label.
func (s *stage) field(label string) (seen, error) {
	o, err := s.find(label, func(o fyne.CanvasObject) bool {
		switch o.(type) {
		case *widgets.MeasureField, *widgets.ChoiceField, *widgets.Segments:
			return true
		}
		return false
	})
	if err != nil {
		return o, fmt.Errorf("there is no field %q", label)
	}
	return o, nil
}

// reveal scrolls until a thing lies in the window, and returns its middle.
func (s *stage) reveal(o seen) fyne.Position {
	at := o.at
	for i := len(o.scrolls) - 1; i >= 0; i-- {
		scroll := o.scrolls[i]
		top := fyne.CurrentApp().Driver().AbsolutePositionForObject(scroll)
		before := scroll.Offset
		offset := before
		if below := at.Y + o.object.Size().Height - (top.Y + scroll.Size().Height); below > 0 {
			offset.Y += below
		}
		if above := top.Y - at.Y; above > 0 {
			offset.Y -= above
		}
		if right := at.X + o.object.Size().Width - (top.X + scroll.Size().Width); right > 0 {
			offset.X += right
		}
		scroll.ScrollToOffset(offset)
		at = at.Subtract(scroll.Offset.Subtract(before))
	}
	return at.AddXY(o.object.Size().Width/2, o.object.Size().Height/2)
}

// click does what a click in the middle of a thing does: what is topmost there gets
// the focus, if it takes it, and the tap.
func (s *stage) click(o seen) error {
	at := s.reveal(o)
	if focusable, ok := o.object.(fyne.Focusable); ok {
		s.window.Canvas().Focus(focusable)
	}
	if tappable, ok := o.object.(fyne.Tappable); ok {
		if disabled, ok := o.object.(fyne.Disableable); ok && disabled.Disabled() {
			return fmt.Errorf("%q is out of use", o.name)
		}
		tappable.Tapped(&fyne.PointEvent{
			AbsolutePosition: at,
			Position:         fyne.NewPos(o.object.Size().Width/2, o.object.Size().Height/2),
		})
		return nil
	}
	test.TapCanvas(s.window.Canvas(), at)
	return nil
}

// write puts text into what has the focus, in place of what stands there, and presses
// Enter.
func (s *stage) retype(text string) error {
	focused := s.window.Canvas().Focused()
	if focused == nil {
		return fmt.Errorf("nothing has the focus")
	}
	if able, ok := focused.(fyne.Shortcutable); ok {
		able.TypedShortcut(&fyne.ShortcutSelectAll{})
	}
	focused.TypedKey(&fyne.KeyEvent{Name: fyne.KeyBackspace})
	for _, r := range text {
		focused.TypedRune(r)
	}
	focused.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	return nil
}
