package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// Drawing shows one of the larger drawings in the colours of the theme.
type Drawing struct {
	widget.BaseWidget
	name theme.DrawingName
	min  fyne.Size
}

// NewDrawing returns a drawing that is at least of size least.
func NewDrawing(name theme.DrawingName, least fyne.Size) *Drawing {
	d := &Drawing{name: name, min: least}
	d.ExtendBaseWidget(d)
	return d
}

// CreateRenderer is called by the toolkit.
func (d *Drawing) CreateRenderer() fyne.WidgetRenderer {
	r := &drawingRenderer{drawing: d, image: canvas.NewImageFromResource(nil)}
	r.image.FillMode = canvas.ImageFillContain
	r.Refresh()
	return r
}

type drawingRenderer struct {
	drawing *Drawing
	image   *canvas.Image
}

func (r *drawingRenderer) Refresh() {
	l := lookOf(r.drawing)
	res := theme.Drawing(r.drawing.name, l.theme, l.variant)
	if r.image.Resource == nil || r.image.Resource.Name() != res.Name() {
		r.image.Resource = res
		r.image.Refresh()
	}
}

func (r *drawingRenderer) MinSize() fyne.Size           { return r.drawing.min }
func (r *drawingRenderer) Layout(size fyne.Size)        { r.image.Resize(size) }
func (r *drawingRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.image} }
func (r *drawingRenderer) Destroy()                     {}

// EmptyState fills a room that has nothing in it yet: a drawing, what will be
// here, how to begin, and the first thing to do.
type EmptyState struct {
	widget.BaseWidget
	title   *canvas.Text
	words   string
	text    *widget.Label
	content *fyne.Container
}

var (
	_ fyne.Widget     = (*EmptyState)(nil)
	_ fyne.Accessible = (*EmptyState)(nil)
)

// emptyWidth is the width of the text: about sixty letters, a comfortable line.
const emptyWidth float32 = 440

// NewEmptyState returns an empty state; actions are usually buttons.
func NewEmptyState(drawing theme.DrawingName, title, text string, actions ...fyne.CanvasObject) *EmptyState {
	e := &EmptyState{title: canvas.NewText("", nil), words: title, text: widget.NewLabel(text)}
	e.title.Alignment = fyne.TextAlignCenter
	e.text.Wrapping, e.text.Alignment = fyne.TextWrapWord, fyne.TextAlignCenter
	buttons := append([]fyne.CanvasObject{layout.NewSpacer()}, actions...)
	buttons = append(buttons, layout.NewSpacer())
	column := container.NewVBox(
		NewDrawing(drawing, fyne.NewSize(240, 150)), e.title, e.text, container.NewHBox(buttons...))
	e.content = container.New(&columnLayout{emptyWidth}, column)
	e.ExtendBaseWidget(e)
	return e
}

// Set changes the words.
func (e *EmptyState) Set(title, text string) {
	e.words = title
	e.text.SetText(text)
	e.Refresh()
}

// AccessibilityLabel returns title and text.
func (e *EmptyState) AccessibilityLabel() string { return accessibleName(e.words, e.text.Text) }

// AccessibilityRole is a container.
func (e *EmptyState) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleContainer }

// CreateRenderer is called by the toolkit.
func (e *EmptyState) CreateRenderer() fyne.WidgetRenderer {
	r := &emptyRenderer{e}
	r.Refresh()
	return r
}

type emptyRenderer struct{ empty *EmptyState }

func (r *emptyRenderer) Refresh() {
	lookOf(r.empty).set(r.empty.title, r.empty.words, scriptHeading)
	r.empty.content.Refresh()
}

func (r *emptyRenderer) MinSize() fyne.Size           { return r.empty.content.MinSize() }
func (r *emptyRenderer) Layout(size fyne.Size)        { r.empty.content.Resize(size) }
func (r *emptyRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.empty.content} }
func (r *emptyRenderer) Destroy()                     {}

// columnLayout centres its one child in a column of at most the given width.
type columnLayout struct{ width float32 }

func (c *columnLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize()
}

func (c *columnLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	width := min(size.Width, max(c.width, objects[0].MinSize().Width))
	objects[0].Resize(fyne.NewSize(width, objects[0].MinSize().Height)) // lets text wrap
	height := objects[0].MinSize().Height
	place(objects[0], (size.Width-width)/2, max(0, (size.Height-height)*0.4), width, height)
}
