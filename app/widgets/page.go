package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// PageHeader is the head of a page: title, what it is about, tools at the right,
// and a ruled line under it all.
type PageHeader struct {
	widget.BaseWidget
	title, about string
	tools        *fyne.Container
}

var (
	_ fyne.Widget     = (*PageHeader)(nil)
	_ fyne.Accessible = (*PageHeader)(nil)
)

// NewPageHeader returns a header. About may be empty.
func NewPageHeader(title, about string, tools ...fyne.CanvasObject) *PageHeader {
	h := &PageHeader{title: title, about: about, tools: container.NewHBox(tools...)}
	h.ExtendBaseWidget(h)
	return h
}

// Set changes the words.
func (h *PageHeader) Set(title, about string) {
	if h.title != title || h.about != about {
		h.title, h.about = title, about
		h.Refresh()
	}
}

// SetTools changes the tools at the right.
func (h *PageHeader) SetTools(tools ...fyne.CanvasObject) {
	h.tools.Objects = tools
	h.tools.Refresh()
	h.Refresh()
}

// AccessibilityLabel returns title and what the page is about.
func (h *PageHeader) AccessibilityLabel() string { return accessibleName(h.title, h.about) }

// AccessibilityRole is text.
func (h *PageHeader) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// CreateRenderer is called by the toolkit.
func (h *PageHeader) CreateRenderer() fyne.WidgetRenderer {
	r := &pageHeaderRenderer{
		header: h, title: canvas.NewText("", nil), about: canvas.NewText("", nil),
		thick: canvas.NewRectangle(color.Transparent), thin: canvas.NewRectangle(color.Transparent),
	}
	r.Refresh()
	return r
}

type pageHeaderRenderer struct {
	header       *PageHeader
	title, about *canvas.Text
	thick, thin  *canvas.Rectangle
}

func (r *pageHeaderRenderer) Refresh() {
	l := lookOf(r.header)
	fill(r.thick, l.colour(theme.ColorOutline))
	fill(r.thin, l.colour(theme.ColorRule))
	r.Layout(r.header.Size())
	r.header.tools.Refresh()
}

func (r *pageHeaderRenderer) MinSize() fyne.Size {
	l := lookOf(r.header)
	height := l.measure("X", scriptTitle).Height + theme.Step2
	if r.header.about != "" {
		height += l.measure("X", scriptSoft).Height
	}
	tools := r.header.tools.MinSize()
	return fyne.NewSize(tools.Width+160, max(height, tools.Height+theme.Step2))
}

func (r *pageHeaderRenderer) Layout(size fyne.Size) {
	h, l := r.header, lookOf(r.header)
	tools := h.tools.MinSize()
	foot := size.Height - theme.Half
	place(r.thick, 0, foot-3, size.Width, theme.Hair)
	place(r.thin, 0, foot, size.Width, theme.Hair)
	width := size.Width
	if len(h.tools.Objects) > 0 {
		width -= tools.Width + theme.Step2
		place(h.tools, size.Width-tools.Width, foot-theme.Step-tools.Height, tools.Width, tools.Height)
	}
	l.set(r.title, l.fit(h.title, scriptTitle, width), scriptTitle)
	l.set(r.about, l.fit(h.about, scriptSoft, width), scriptSoft)
	title := r.title.MinSize()
	place(r.title, 0, 0, title.Width, title.Height)
	about := r.about.MinSize()
	place(r.about, 0, title.Height-theme.Half/2, about.Width, about.Height)
}

func (r *pageHeaderRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.title, r.about, r.thick, r.thin, r.header.tools}
}

func (r *pageHeaderRenderer) Destroy() {}

// Section is a part of a page under a heading: on a card of lighter paper, or
// plain on the page with a ruled line beside the heading.
type Section struct {
	widget.BaseWidget
	heading string
	card    bool
	content fyne.CanvasObject
	tools   *fyne.Container
}

var (
	_ fyne.Widget     = (*Section)(nil)
	_ fyne.Accessible = (*Section)(nil)
)

// NewSection returns a part of the page under a heading.
func NewSection(heading string, content fyne.CanvasObject, tools ...fyne.CanvasObject) *Section {
	s := &Section{heading: heading, content: content, tools: container.NewHBox(tools...)}
	s.ExtendBaseWidget(s)
	return s
}

// NewCard returns a part on a card of its own. The heading may be empty.
func NewCard(heading string, content fyne.CanvasObject, tools ...fyne.CanvasObject) *Section {
	s := NewSection(heading, content, tools...)
	s.card = true
	return s
}

// SetHeading changes the heading.
func (s *Section) SetHeading(heading string) {
	if s.heading != heading {
		s.heading = heading
		s.Refresh()
	}
}

// SetContent changes what stands under the heading.
func (s *Section) SetContent(content fyne.CanvasObject) {
	s.content = content
	s.Refresh()
}

// AccessibilityLabel returns the heading.
func (s *Section) AccessibilityLabel() string { return s.heading }

// AccessibilityRole is a container.
func (s *Section) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleContainer }

// CreateRenderer is called by the toolkit.
func (s *Section) CreateRenderer() fyne.WidgetRenderer {
	r := &sectionRenderer{
		section: s, ground: canvas.NewRectangle(color.Transparent),
		rule: canvas.NewRectangle(color.Transparent), heading: canvas.NewText("", nil),
	}
	r.Refresh()
	return r
}

type sectionRenderer struct {
	section      *Section
	ground, rule *canvas.Rectangle
	heading      *canvas.Text
}

func (r *sectionRenderer) Refresh() {
	s, l := r.section, lookOf(r.section)
	show(r.ground, s.card)
	r.ground.StrokeWidth, r.ground.CornerRadius = theme.Hair, 3
	r.ground.StrokeColor = l.colour(theme.ColorRule)
	r.ground.FillColor = l.colour(theme.ColorSurface)
	r.ground.Refresh()
	show(r.rule, !s.card && s.heading != "")
	fill(r.rule, l.colour(theme.ColorRule))
	show(r.heading, s.heading != "")
	r.Layout(s.Size())
	s.content.Refresh()
}

func (r *sectionRenderer) pad() float32 {
	if r.section.card {
		return theme.Step2
	}
	return 0
}

// head returns the height of the heading with its tools, and the gap under it.
func (r *sectionRenderer) head() float32 {
	s := r.section
	if s.heading == "" && len(s.tools.Objects) == 0 {
		return 0
	}
	text := lookOf(s).measure("X", scriptHeading).Height
	return max(text, s.tools.MinSize().Height) + theme.Half
}

func (r *sectionRenderer) MinSize() fyne.Size {
	s := r.section
	content := s.content.MinSize()
	head := lookOf(s).measure(s.heading, scriptHeading).Width + s.tools.MinSize().Width
	width := max(content.Width, min(head+theme.Step, 240))
	return fyne.NewSize(width+2*r.pad(), content.Height+r.head()+2*r.pad())
}

func (r *sectionRenderer) Layout(size fyne.Size) {
	s, l, pad := r.section, lookOf(r.section), r.pad()
	place(r.ground, 0, 0, size.Width, size.Height)
	tools := s.tools.MinSize()
	inner := size.Width - 2*pad
	l.set(r.heading, l.fit(s.heading, scriptHeading, inner-tools.Width-theme.Step), scriptHeading)
	text := r.heading.MinSize()
	head := r.head()
	y := centred(pad, max(0, head-theme.Half), text.Height)
	place(r.heading, pad, y, text.Width, text.Height)
	place(s.tools, size.Width-pad-tools.Width, pad, tools.Width, tools.Height)
	left := pad + text.Width + theme.Step
	right := size.Width - pad
	if len(s.tools.Objects) > 0 {
		right -= tools.Width + theme.Step
	}
	place(r.rule, left, y+text.Height*0.6, max(0, right-left), theme.Hair)
	place(s.content, pad, pad+head, inner, max(0, size.Height-2*pad-head))
}

func (r *sectionRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.heading, r.rule, r.section.tools, r.section.content}
}

func (r *sectionRenderer) Destroy() {}
