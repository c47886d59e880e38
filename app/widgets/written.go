package widgets

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// written is text in one script that wraps at words. The toolkit's label has no
// say over font and colour, and pads its text.
type written struct {
	widget.BaseWidget
	text   string
	script script
}

func newWritten(text string, s script) *written {
	w := &written{text: text, script: s}
	w.ExtendBaseWidget(w)
	return w
}

// NewText returns explaining text that wraps, in the soft colour of the page.
func NewText(text string) fyne.Widget { return newWritten(text, scriptSoft) }

// NewStrong returns text that wraps, in the weight of what is said.
func NewStrong(text string) fyne.Widget { return newWritten(text, scriptStrong) }

// NewAside returns an aside in the italic serif that wraps.
func NewAside(text string) fyne.Widget { return newWritten(text, scriptFormula) }

// natural returns the width of the text on one line.
func (w *written) natural() float32 { return lookOf(w).measure(w.text, w.script).Width }

// AccessibilityLabel returns the text.
func (w *written) AccessibilityLabel() string { return w.text }

// AccessibilityRole is text.
func (w *written) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// CreateRenderer is called by the toolkit.
func (w *written) CreateRenderer() fyne.WidgetRenderer {
	r := &writtenRenderer{text: w}
	r.Refresh()
	return r
}

type writtenRenderer struct {
	text  *written
	lines []*canvas.Text
	used  int
}

func (r *writtenRenderer) Refresh() { r.Layout(r.text.Size()) }

// wrap returns the lines of text for a width.
func (l look) wrap(text string, s script, width float32) []string {
	if text == "" {
		return nil
	}
	var lines []string
	for _, paragraph := range strings.Split(text, "\n") {
		line := ""
		for _, word := range strings.Fields(paragraph) {
			longer := word
			if line != "" {
				longer = line + " " + word
			}
			if line != "" && l.measure(longer, s).Width > width {
				lines = append(lines, line)
				longer = word
			}
			line = longer
		}
		lines = append(lines, line)
	}
	return lines
}

func (r *writtenRenderer) MinSize() fyne.Size {
	if r.text.text == "" {
		return fyne.Size{}
	}
	l := lookOf(r.text)
	width := float32(0)
	for _, word := range strings.Fields(r.text.text) {
		width = max(width, l.measure(word, r.text.script).Width)
	}
	lines := 1
	if r.text.Size().Width > 0 {
		lines = len(l.wrap(r.text.text, r.text.script, r.text.Size().Width))
	}
	return fyne.NewSize(width, float32(lines)*l.measure("X", r.text.script).Height)
}

func (r *writtenRenderer) Layout(size fyne.Size) {
	l := lookOf(r.text)
	lines := l.wrap(r.text.text, r.text.script, size.Width)
	height := l.measure("X", r.text.script).Height
	for len(r.lines) < len(lines) {
		r.lines = append(r.lines, canvas.NewText("", nil))
	}
	r.used = len(lines)
	for i, line := range lines {
		l.set(r.lines[i], line, r.text.script)
		place(r.lines[i], 0, float32(i)*height, size.Width, height)
	}
}

func (r *writtenRenderer) Objects() []fyne.CanvasObject {
	objects := make([]fyne.CanvasObject, r.used)
	for i := range objects {
		objects[i] = r.lines[i]
	}
	return objects
}

func (r *writtenRenderer) Destroy() {}

// Line is text on one line that is cut where there is no room.
type Line struct {
	widget.BaseWidget
	text   string
	script script
}

var (
	_ fyne.Widget     = (*Line)(nil)
	_ fyne.Accessible = (*Line)(nil)
)

// NewLine returns a line, strong or in the soft colour of the page.
func NewLine(text string, strong bool) *Line {
	line := &Line{text: text, script: scriptSoft}
	if strong {
		line.script = scriptStrong
	}
	line.ExtendBaseWidget(line)
	return line
}

// Set changes the text.
func (n *Line) Set(text string) {
	if n.text != text {
		n.text = text
		n.Refresh()
	}
}

// AccessibilityLabel returns the whole text.
func (n *Line) AccessibilityLabel() string { return n.text }

// AccessibilityRole is text.
func (n *Line) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// CreateRenderer is called by the toolkit.
func (n *Line) CreateRenderer() fyne.WidgetRenderer {
	r := &lineRenderer{line: n, text: canvas.NewText("", nil)}
	r.Refresh()
	return r
}

type lineRenderer struct {
	line *Line
	text *canvas.Text
}

func (r *lineRenderer) Refresh() { r.Layout(r.line.Size()) }

func (r *lineRenderer) MinSize() fyne.Size {
	l := lookOf(r.line)
	return fyne.NewSize(l.size(fynetheme.SizeNameText)*4, l.measure("X", r.line.script).Height)
}

func (r *lineRenderer) Layout(size fyne.Size) {
	l := lookOf(r.line)
	l.set(r.text, l.fit(r.line.text, r.line.script, size.Width), r.line.script)
	height := l.measure("X", r.line.script).Height
	place(r.text, 0, centred(0, size.Height, height), size.Width, height)
}

func (r *lineRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.text} }

func (r *lineRenderer) Destroy() {}
