package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// pressable is the part shared by widgets that are pressed as a whole.
type pressable struct {
	widget.BaseWidget
	focused, hovered bool
	press            func()      // nil when there is nothing to press
	self             fyne.Widget // the widget that this is a part of
}

// extend makes self the widget that this is a part of. The window knows that one and
// not its parts.
func (p *pressable) extend(self fyne.Widget) {
	p.self = self
	p.ExtendBaseWidget(self)
}

var (
	_ fyne.Tappable      = (*pressable)(nil)
	_ fyne.Focusable     = (*pressable)(nil)
	_ desktop.Hoverable  = (*pressable)(nil)
	_ desktop.Cursorable = (*pressable)(nil)
)

// Tapped presses.
func (p *pressable) Tapped(*fyne.PointEvent) { p.do() }

func (p *pressable) do() {
	if p.press != nil {
		p.press()
	}
}

// FocusGained shows the focus ring.
func (p *pressable) FocusGained() {
	p.focused = true
	p.Refresh()
}

// FocusLost hides the focus ring.
func (p *pressable) FocusLost() {
	p.focused = false
	p.Refresh()
}

// TypedRune is not used.
func (p *pressable) TypedRune(rune) {}

// TypedKey presses on Enter and Space and passes Esc on.
func (p *pressable) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		p.do()
	case fyne.KeyEscape:
		escape(p.self)
	}
}

// MouseIn shows that it can be pressed.
func (p *pressable) MouseIn(*desktop.MouseEvent) {
	p.hovered = true
	p.Refresh()
}

// MouseMoved is not used.
func (p *pressable) MouseMoved(*desktop.MouseEvent) {}

// MouseOut ends what MouseIn began.
func (p *pressable) MouseOut() {
	p.hovered = false
	p.Refresh()
}

// Cursor is a hand where there is something to press.
func (p *pressable) Cursor() desktop.Cursor {
	if p.press != nil {
		return desktop.PointerCursor
	}
	return desktop.DefaultCursor
}

// escape passes on an Esc that a widget has no use for itself: it cancels the dialog
// that lies on top; where there is none, the window gets the key.
func escape(from fyne.CanvasObject) {
	if d := topDialog(from); d != nil {
		d.Cancel()
		return
	}
	c := fyne.CurrentApp().Driver().CanvasForObject(from)
	if c == nil || c.Overlays().Top() != nil {
		return
	}
	if typed := c.OnTypedKey(); typed != nil {
		typed(&fyne.KeyEvent{Name: fyne.KeyEscape})
	}
}

// submit accepts the dialog that lies on top, for an Enter that is not needed.
func submit(from fyne.CanvasObject) {
	if d := topDialog(from); d != nil {
		d.Accept()
	}
}

func topDialog(from fyne.CanvasObject) *Dialog {
	c := fyne.CurrentApp().Driver().CanvasForObject(from)
	if c == nil {
		return nil
	}
	if top, ok := c.Overlays().Top().(*dialogCover); ok {
		return top.dialog
	}
	return nil
}
