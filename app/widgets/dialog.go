package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// DialogData is what a dialog asks. Titles and labels are translated.
type DialogData struct {
	Title   string
	Content fyne.CanvasObject
	Accept  string            // label of the main button; "" for none
	Kind    ButtonKind        // of the main button
	Cancel  string            // label of the other button; "" for none
	Size    fyne.Size         // least size of the content; text that wraps needs a width
	Aside   fyne.CanvasObject // at the left end of the line of buttons; nil for nothing
	Focus   fyne.Focusable    // what has the focus at first; nil for the first that can
	// OnAccept does the work; when it returns false the dialog stays open, with its
	// reasons shown by the content.
	OnAccept func() bool
	OnCancel func() // may be nil
}

// Dialog lies over the window until it is accepted or cancelled. Esc cancels;
// Enter accepts, unless something in the dialog uses it. Fields of this package
// pass on what they do not use.
type Dialog struct {
	data     DialogData
	canvas   fyne.Canvas
	cover    *dialogCover
	head     *written
	accept   *Button
	previous func(*fyne.KeyEvent) // what the canvas did with keys before
	focused  fyne.Focusable       // what had the focus before
	closed   bool
}

// ShowDialog opens a dialog.
func ShowDialog(c fyne.Canvas, data DialogData) *Dialog {
	d := &Dialog{data: data, canvas: c, previous: c.OnTypedKey(), focused: c.Focused()}
	d.cover = &dialogCover{dialog: d, content: d.build()}
	d.cover.ExtendBaseWidget(d.cover)
	d.cover.Resize(c.Size())
	c.Overlays().Add(d.cover)
	c.SetOnTypedKey(d.key)
	if data.Focus != nil {
		c.Focus(data.Focus)
	} else {
		c.FocusNext()
	}
	return d
}

func (d *Dialog) build() fyne.CanvasObject {
	buttons := []fyne.CanvasObject{layout.NewSpacer()}
	if d.data.Aside != nil {
		buttons = []fyne.CanvasObject{d.data.Aside, layout.NewSpacer()}
	}
	if d.data.Cancel != "" {
		buttons = append(buttons, NewButton(ButtonData{Label: d.data.Cancel}, d.Cancel))
	}
	if d.data.Accept != "" {
		kind := d.data.Kind
		if kind == ButtonPlain {
			kind = ButtonMain
		}
		d.accept = NewButton(ButtonData{Label: d.data.Accept, Kind: kind}, d.Accept)
		buttons = append(buttons, d.accept)
	}
	content := container.New(least(d.data.Size), d.data.Content)
	foot := container.New(layout.NewCustomPaddedHBoxLayout(theme.Step), buttons...)
	d.head = newWritten(d.data.Title, scriptHeading)
	return container.New(layout.NewCustomPaddedLayout(theme.Step2, theme.Step2, theme.Step3, theme.Step3),
		container.NewBorder(
			container.New(layout.NewCustomPaddedLayout(0, theme.Step2, 0, 0), d.head),
			container.New(layout.NewCustomPaddedLayout(theme.Step2, 0, 0, 0), foot), nil, nil, content))
}

// SetStep changes the title and the label of the main button, as when a dialog goes
// on to its next page.
func (d *Dialog) SetStep(title, accept string) {
	d.data.Title = title
	d.head.text = title
	d.head.Refresh()
	data := d.accept.data
	data.Label = accept
	d.accept.Set(data)
	d.cover.Refresh()
}

// key is what the canvas does with keys that nothing with the focus takes.
func (d *Dialog) key(ev *fyne.KeyEvent) {
	if d.canvas.Overlays().Top() != fyne.CanvasObject(d.cover) {
		if d.previous != nil {
			d.previous(ev)
		}
		return
	}
	switch ev.Name {
	case fyne.KeyEscape:
		d.Cancel()
	case fyne.KeyReturn, fyne.KeyEnter:
		d.Accept()
	}
}

// Accept does what the main button does.
func (d *Dialog) Accept() {
	if d.closed || d.data.Accept == "" {
		return
	}
	if d.data.OnAccept == nil || d.data.OnAccept() {
		d.Close()
	}
}

// Cancel does what the other button does.
func (d *Dialog) Cancel() {
	if d.closed {
		return
	}
	d.Close()
	if d.data.OnCancel != nil {
		d.data.OnCancel()
	}
}

// Close takes the dialog away without accepting or cancelling, and puts the focus
// back to where it was.
func (d *Dialog) Close() {
	if d.closed {
		return
	}
	d.closed = true
	d.canvas.SetOnTypedKey(d.previous)
	d.canvas.Overlays().Remove(d.cover)
	if d.focused != nil {
		d.canvas.Focus(d.focused)
	}
}

// Closed reports whether the dialog was taken away.
func (d *Dialog) Closed() bool { return d.closed }

// dialogCover lies over the whole window: the page shows through, faded, and takes
// no taps; the dialog stands in the middle.
type dialogCover struct {
	widget.BaseWidget
	dialog  *Dialog
	content fyne.CanvasObject
}

var (
	_ fyne.Widget       = (*dialogCover)(nil)
	_ fyne.Tappable     = (*dialogCover)(nil)
	_ desktop.Hoverable = (*dialogCover)(nil)
	_ fyne.Accessible   = (*dialogCover)(nil)
)

// Tapped keeps taps from the page.
func (c *dialogCover) Tapped(*fyne.PointEvent) {}

// MouseIn keeps the pointer from the page.
func (c *dialogCover) MouseIn(*desktop.MouseEvent) {}

// MouseMoved keeps the pointer from the page.
func (c *dialogCover) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is not used.
func (c *dialogCover) MouseOut() {}

// AccessibilityLabel returns the title.
func (c *dialogCover) AccessibilityLabel() string { return c.dialog.data.Title }

// AccessibilityRole is a container.
func (c *dialogCover) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleContainer }

// CreateRenderer is called by the toolkit.
func (c *dialogCover) CreateRenderer() fyne.WidgetRenderer {
	r := &dialogRenderer{
		cover: c, veil: canvas.NewRectangle(color.Transparent),
		ground: canvas.NewRectangle(color.Transparent), ribbon: canvas.NewRectangle(color.Transparent),
	}
	r.ground.StrokeWidth, r.ground.CornerRadius = theme.Hair, 4
	r.Refresh()
	return r
}

type dialogRenderer struct {
	cover                *dialogCover
	veil, ground, ribbon *canvas.Rectangle
}

func (r *dialogRenderer) Refresh() {
	l := lookOf(r.cover)
	veil := color.NRGBAModel.Convert(l.colour(theme.ColorMargin)).(color.NRGBA)
	veil.A = 0xb8 // the page can still be made out
	fill(r.veil, veil)
	r.ground.FillColor, r.ground.StrokeColor = l.colour(theme.ColorSurface), l.colour(theme.ColorOutline)
	r.ground.Refresh()
	fill(r.ribbon, l.colour(theme.ColorRibbon))
	r.cover.content.Refresh()
	r.Layout(r.cover.Size())
}

// MinSize is small: a dialog never makes the window larger.
func (r *dialogRenderer) MinSize() fyne.Size { return fyne.NewSize(1, 1) }

func (r *dialogRenderer) Layout(size fyne.Size) {
	place(r.veil, 0, 0, size.Width, size.Height)
	content := r.cover.content
	for range 2 { // text that wraps knows its height only after its width
		least := content.MinSize()
		w, h := min(least.Width, size.Width-theme.Step2), min(least.Height, size.Height-theme.Step2)
		x, y := (size.Width-w)/2, (size.Height-h)*0.42
		place(content, x, y, w, h)
		place(r.ground, x, y, w, h)
		place(r.ribbon, x+theme.Step3, y, theme.Step4, ribbonWidth)
	}
}

func (r *dialogRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.veil, r.ground, r.ribbon, r.cover.content}
}

func (r *dialogRenderer) Destroy() {}
