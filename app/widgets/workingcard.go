package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// WorkingInput is one quantity that went into a figure.
type WorkingInput struct {
	Symbol string // as in the formula
	Name   string
	Value  string // with its unit
	Source string // where the value is from; may be ""
	Soft   bool
	OnOpen func() // opens the input's own working, or nil
}

// WorkingStep is one step back on the way from the figure that was opened first.
type WorkingStep struct {
	Title  string
	OnOpen func()
}

// WorkingData is how a figure was worked out. All words are translated.
type WorkingData struct {
	Title   string
	Path    []WorkingStep // the figures from which one came here, outermost first
	Formula string        // in symbols
	Result  string        // with its unit
	Soft    bool
	Inputs  []WorkingInput
	Source  string // of the formula
	Notes   []string
}

// WorkingWords are the fixed words on a working.
type WorkingWords struct {
	Inputs string // heading of the inputs
	Source string // heading of the source
	Notes  string // heading of the remarks
	Soft   string // what the sign ≈ means
	Close  string // name of closing
}

// WorkingCard shows a working: the formula set as in a book, its inputs with their
// sources, the result, and the source of the formula. Esc closes it.
type WorkingCard struct {
	widget.BaseWidget
	words   WorkingWords
	data    WorkingData
	onClose func()
	close   *Button
	column  *fyne.Container
	body    *container.Scroll
}

var (
	_ fyne.Widget     = (*WorkingCard)(nil)
	_ fyne.Accessible = (*WorkingCard)(nil)
)

// NewWorkingCard returns a card without a working; see Set.
func NewWorkingCard(words WorkingWords, onClose func()) *WorkingCard {
	w := &WorkingCard{words: words, onClose: onClose, column: container.New(&stackLayout{right: theme.Step2})}
	w.close = NewButton(ButtonData{Icon: theme.IconClose, Kind: ButtonQuiet, Name: words.Close}, w.escape)
	w.body = container.NewVScroll(w.column)
	w.ExtendBaseWidget(w)
	return w
}

// CloseButton returns the part that may take the focus when the card opens.
func (w *WorkingCard) CloseButton() fyne.Focusable { return w.close }

// escape closes the card.
func (w *WorkingCard) escape() {
	if w.onClose != nil {
		w.onClose()
	}
}

// Set shows a working.
func (w *WorkingCard) Set(data WorkingData) {
	w.data = data
	w.column.Objects = w.build()
	w.body.ScrollToTop()
	w.Refresh()
}

// AccessibilityLabel returns title, formula and result.
func (w *WorkingCard) AccessibilityLabel() string {
	return accessibleName(w.data.Title, w.data.Formula, w.data.Result)
}

// AccessibilityRole is a container.
func (w *WorkingCard) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleContainer }

// build makes the parts of the column.
func (w *WorkingCard) build() []fyne.CanvasObject {
	var parts []fyne.CanvasObject
	if len(w.data.Path) > 0 {
		path := container.NewHBox()
		for _, step := range w.data.Path {
			path.Add(NewButton(ButtonData{Icon: theme.IconBack, Label: step.Title, Kind: ButtonQuiet}, step.OnOpen))
		}
		parts = append(parts, container.NewHScroll(path))
	}
	parts = append(parts, newWritten(w.data.Formula, scriptFormula))
	result := NewFigure(FigureData{Value: w.data.Result, Soft: w.data.Soft, Style: FigureLead}, nil)
	parts = append(parts, result)
	if w.data.Soft {
		parts = append(parts, newWritten("≈ "+w.words.Soft, scriptCaption))
	}
	if len(w.data.Inputs) > 0 {
		rows := container.New(&stackLayout{})
		for _, in := range w.data.Inputs {
			rows.Add(newWorkingRow(in))
		}
		parts = append(parts, NewSection(w.words.Inputs, rows))
	}
	if w.data.Source != "" {
		parts = append(parts, NewSection(w.words.Source, newWritten(w.data.Source, scriptCaption)))
	}
	if len(w.data.Notes) > 0 {
		notes := container.New(&stackLayout{})
		for _, n := range w.data.Notes {
			notes.Add(newWritten(n, scriptCaption))
		}
		parts = append(parts, NewSection(w.words.Notes, notes))
	}
	return parts
}

// CreateRenderer is called by the toolkit.
func (w *WorkingCard) CreateRenderer() fyne.WidgetRenderer {
	r := &workingRenderer{
		card: w, ground: canvas.NewRectangle(color.Transparent), margin: canvas.NewRectangle(color.Transparent),
		icon: canvas.NewImageFromResource(theme.IconIn(theme.IconWorking, theme.ColorPen)), title: canvas.NewText("", nil),
	}
	r.icon.FillMode = canvas.ImageFillContain
	r.ground.CornerRadius, r.ground.StrokeWidth = 3, theme.Hair
	r.Refresh()
	return r
}

type workingRenderer struct {
	card           *WorkingCard
	ground, margin *canvas.Rectangle // margin: the ruled margin of squared paper
	icon           *canvas.Image
	title          *canvas.Text
}

func (r *workingRenderer) Refresh() {
	l := lookOf(r.card)
	r.ground.FillColor, r.ground.StrokeColor = l.colour(theme.ColorSurface), l.colour(theme.ColorOutline)
	r.ground.Refresh()
	fill(r.margin, l.colour(theme.ColorPen))
	r.icon.Refresh()
	r.Layout(r.card.Size())
	r.card.body.Refresh()
}

func (r *workingRenderer) MinSize() fyne.Size {
	return fyne.NewSize(280, r.head()+160)
}

func (r *workingRenderer) head() float32 {
	return r.card.close.MinSize().Height + theme.Step
}

func (r *workingRenderer) Layout(size fyne.Size) {
	l := lookOf(r.card)
	place(r.ground, 0, 0, size.Width, size.Height)
	place(r.margin, 0, 0, ribbonWidth, size.Height)
	icon := l.size(fynetheme.SizeNameInlineIcon)
	head := r.head()
	x := theme.Step2
	place(r.icon, x, centred(0, head, icon), icon, icon)
	button := r.card.close.MinSize()
	place(r.card.close, size.Width-button.Width-theme.Half, theme.Half, button.Width, button.Height)
	x += icon + theme.Step
	l.set(r.title, l.fit(r.card.data.Title, scriptHeading, size.Width-x-button.Width-theme.Step), scriptHeading)
	title := r.title.MinSize()
	place(r.title, x, centred(0, head, title.Height), title.Width, title.Height)
	place(r.card.body, theme.Step2, head, size.Width-theme.Step2-theme.Half, size.Height-head-theme.Step) // the column leaves room for the scroll bar
}

func (r *workingRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.margin, r.icon, r.title, r.card.close, r.card.body}
}

func (r *workingRenderer) Destroy() {}

// newWorkingRow returns symbol, name and value of an input, and its source below.
func newWorkingRow(in WorkingInput) fyne.CanvasObject {
	value := NewFigure(FigureData{Value: in.Value, Soft: in.Soft, Style: FigureBare, Name: accessibleName(in.Name, in.Value)}, in.OnOpen)
	name := newWritten(in.Name, scriptText)
	row := container.New(&workingRowLayout{}, newWritten(in.Symbol, scriptFormula), name, value, newWritten(in.Source, scriptCaption))
	return row
}

// workingRowLayout places symbol, name, value and source of an input.
type workingRowLayout struct{}

const symbolWidth float32 = 40

func (workingRowLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	symbol, name, value, source := o[0].MinSize(), o[1].MinSize(), o[2].MinSize(), o[3].MinSize()
	return fyne.NewSize(symbolWidth+120+value.Width, max(symbol.Height, name.Height, value.Height)+source.Height+theme.Half)
}

func (workingRowLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	value := o[2].MinSize()
	symbol := max(symbolWidth, o[0].(*written).natural()+theme.Half)
	middle := size.Width - symbol - value.Width - theme.Half
	o[1].Resize(fyne.NewSize(middle, o[1].MinSize().Height))
	name := o[1].MinSize()
	row := max(o[0].MinSize().Height, name.Height, value.Height)
	place(o[0], 0, centred(0, row, o[0].MinSize().Height), symbol, o[0].MinSize().Height)
	place(o[1], symbol, centred(0, row, name.Height), middle, name.Height)
	place(o[2], size.Width-value.Width, centred(0, row, value.Height), value.Width, value.Height)
	place(o[3], symbol, row, size.Width-symbol-theme.Half, o[3].MinSize().Height)
}

// stackLayout puts objects below each other, each as wide as there is room and as
// high as it then needs.
type stackLayout struct{ right float32 } // right: room kept free at the right

func (*stackLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return layout.NewCustomPaddedVBoxLayout(theme.Step).MinSize(objects)
}

func (s *stackLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		width := size.Width - s.right
		o.Resize(fyne.NewSize(width, o.MinSize().Height))
		height := o.MinSize().Height // text may wrap otherwise at this width
		place(o, 0, y, width, height)
		y += height + theme.Step
	}
}
