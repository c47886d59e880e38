package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// NavItem is one room on the rail.
type NavItem struct {
	Icon  theme.IconName
	Label string
	Count string // a number beside the label, such as what is due; "" for none
	// CountName is how screen readers say the count, such as "3 due".
	CountName string
}

// NavRail is the list of rooms at the left: index tabs of a notebook. The tab of
// the open room has the colour of the page. Up, Down, Home and End go through the
// rooms when the rail has the focus. A click or a key opens the room at once and
// calls onSelect.
type NavRail struct {
	widget.BaseWidget
	items    []NavItem
	selected int
	hovered  int // -1 for none
	focused  bool
	onSelect func(i int)
}

var (
	_ fyne.Widget       = (*NavRail)(nil)
	_ fyne.Focusable    = (*NavRail)(nil)
	_ fyne.Tappable     = (*NavRail)(nil)
	_ desktop.Hoverable = (*NavRail)(nil)
	_ fyne.Accessible   = (*NavRail)(nil)
)

// NewNavRail returns a rail with the first room open. onSelect may be nil.
func NewNavRail(items []NavItem, onSelect func(i int)) *NavRail {
	n := &NavRail{items: items, hovered: -1, onSelect: onSelect}
	n.ExtendBaseWidget(n)
	return n
}

// SetItems changes labels and counts, such as after something was ticked off.
func (n *NavRail) SetItems(items []NavItem) {
	n.items = items
	n.selected = max(0, min(n.selected, len(items)-1))
	n.Refresh()
}

// Selected returns the open room.
func (n *NavRail) Selected() int { return n.selected }

// Select opens a room; it calls onSelect only when the room changes.
func (n *NavRail) Select(i int) {
	if i < 0 || i >= len(n.items) || i == n.selected {
		return
	}
	n.selected = i
	n.Refresh()
	if n.onSelect != nil {
		n.onSelect(i)
	}
}

// Tapped opens the room under the pointer.
func (n *NavRail) Tapped(ev *fyne.PointEvent) { n.Select(n.at(ev.Position)) }

// FocusGained shows the focus ring at the open room.
func (n *NavRail) FocusGained() {
	n.focused = true
	n.Refresh()
}

// FocusLost hides the focus ring.
func (n *NavRail) FocusLost() {
	n.focused = false
	n.Refresh()
}

// TypedRune is not used.
func (n *NavRail) TypedRune(rune) {}

// TypedKey goes through the rooms.
func (n *NavRail) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyUp:
		n.Select(n.selected - 1)
	case fyne.KeyDown:
		n.Select(n.selected + 1)
	case fyne.KeyHome:
		n.Select(0)
	case fyne.KeyEnd:
		n.Select(len(n.items) - 1)
	}
}

// MouseIn lights the tab under the pointer.
func (n *NavRail) MouseIn(ev *desktop.MouseEvent) { n.MouseMoved(ev) }

// MouseMoved lights the tab under the pointer.
func (n *NavRail) MouseMoved(ev *desktop.MouseEvent) {
	if i := n.at(ev.Position); i != n.hovered {
		n.hovered = i
		n.Refresh()
	}
}

// MouseOut puts out the light.
func (n *NavRail) MouseOut() {
	n.hovered = -1
	n.Refresh()
}

// AccessibilityLabel returns the name of the open room.
func (n *NavRail) AccessibilityLabel() string {
	if n.selected >= len(n.items) {
		return ""
	}
	item := n.items[n.selected]
	return accessibleName(item.Label, item.CountName)
}

// AccessibilityRole is a container.
func (n *NavRail) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleContainer }

// tabHeight is the height of one tab: three steps around a line of text.
func (n *NavRail) tabHeight() float32 {
	return lookOf(n).size(fynetheme.SizeNameText)*1.4 + theme.Step3
}

func (n *NavRail) at(p fyne.Position) int {
	i := int((p.Y - theme.Step2) / n.tabHeight())
	if p.Y < theme.Step2 || i >= len(n.items) {
		return -1
	}
	return i
}

// CreateRenderer is called by the toolkit.
func (n *NavRail) CreateRenderer() fyne.WidgetRenderer {
	r := &navRenderer{
		rail:  n,
		cover: canvas.NewRectangle(color.Transparent), edge: canvas.NewRectangle(color.Transparent),
		sheet: canvas.NewRectangle(color.Transparent), ribbon: canvas.NewRectangle(color.Transparent),
		light: canvas.NewRectangle(color.Transparent),
		upper: canvas.NewRectangle(color.Transparent), lower: canvas.NewRectangle(color.Transparent),
		ring: newRing(),
	}
	r.sheet.TopLeftCornerRadius, r.sheet.BottomLeftCornerRadius = 4, 4
	r.light.TopLeftCornerRadius, r.light.BottomLeftCornerRadius = 4, 4
	r.Refresh()
	return r
}

// navTab holds the objects of one room.
type navTab struct {
	icon         *canvas.Image
	label, count *canvas.Text
	badge        *canvas.Rectangle
}

type navRenderer struct {
	rail                 *NavRail
	cover, edge          *canvas.Rectangle // the rail and its ruled right edge
	sheet, ribbon, light *canvas.Rectangle // the open tab, its bookmark, the one under the pointer
	upper, lower         *canvas.Rectangle // ruled edges of the open tab
	ring                 *canvas.Rectangle
	tabs                 []*navTab
}

const ribbonWidth float32 = 4

func (r *navRenderer) Refresh() {
	n, l := r.rail, lookOf(r.rail)
	for len(r.tabs) < len(n.items) {
		tab := &navTab{
			icon: canvas.NewImageFromResource(nil), label: canvas.NewText("", nil),
			count: canvas.NewText("", nil), badge: canvas.NewRectangle(color.Transparent),
		}
		tab.icon.FillMode = canvas.ImageFillContain
		tab.count.Alignment = fyne.TextAlignCenter
		r.tabs = append(r.tabs, tab)
	}
	r.tabs = r.tabs[:len(n.items)]
	fill(r.cover, l.colour(theme.ColorMargin))
	fill(r.sheet, l.colour(fynetheme.ColorNameBackground))
	fill(r.ribbon, l.colour(theme.ColorRibbon))
	fill(r.light, l.colour(fynetheme.ColorNameHover))
	for _, rule := range []*canvas.Rectangle{r.edge, r.upper, r.lower} {
		fill(rule, l.colour(theme.ColorRule))
	}
	for i, tab := range r.tabs {
		r.refreshTab(l, tab, n.items[i], i == n.selected)
	}
	l.ring(r.ring, n.focused)
	r.Layout(n.Size())
}

func (r *navRenderer) refreshTab(l look, tab *navTab, item NavItem, open bool) {
	label, icon := scriptSoft, theme.ColorInkSoft
	if open {
		label, icon = scriptStrong, fynetheme.ColorNamePrimary
	}
	l.set(tab.label, item.Label, label)
	l.set(tab.count, item.Count, scriptCaption.in(fynetheme.ColorNameForeground))
	show(tab.count, item.Count != "")
	show(tab.badge, item.Count != "")
	tab.badge.StrokeWidth = theme.Hair
	tab.badge.StrokeColor = l.colour(theme.ColorOutline)
	fill(tab.badge, l.colour(theme.ColorSurface))
	if res := theme.IconIn(item.Icon, icon); tab.icon.Resource == nil || tab.icon.Resource.Name() != res.Name() {
		tab.icon.Resource = res
	}
	tab.icon.Refresh()
}

func (r *navRenderer) MinSize() fyne.Size {
	n, l := r.rail, lookOf(r.rail)
	size := fyne.NewSize(0, 2*theme.Step2+n.tabHeight()*float32(len(n.items)))
	icon := l.size(fynetheme.SizeNameInlineIcon)
	for _, item := range n.items {
		w := theme.Step2 + icon + theme.Step + l.measure(item.Label, scriptStrong).Width + theme.Step2
		if item.Count != "" {
			w += l.measure(item.Count, scriptCaption).Width + theme.Step2
		}
		size.Width = max(size.Width, w)
	}
	return size
}

func (r *navRenderer) Layout(size fyne.Size) {
	n, l := r.rail, lookOf(r.rail)
	h, icon := n.tabHeight(), l.size(fynetheme.SizeNameInlineIcon)
	place(r.cover, 0, 0, size.Width, size.Height)
	place(r.edge, size.Width-theme.Hair, 0, theme.Hair, size.Height)
	top := func(i int) float32 { return theme.Step2 + float32(i)*h }
	open := top(n.selected)
	place(r.sheet, theme.Half, open, size.Width-theme.Half, h)
	place(r.upper, theme.Step, open, size.Width-theme.Step, theme.Hair)
	place(r.lower, theme.Step, open+h-theme.Hair, size.Width-theme.Step, theme.Hair)
	place(r.ribbon, theme.Half, open+theme.Half, ribbonWidth, h-theme.Step)
	place(r.ring, theme.Half+1, open+1, size.Width-theme.Half-2, h-2)
	show(r.light, n.hovered >= 0 && n.hovered != n.selected)
	place(r.light, theme.Half, top(n.hovered), size.Width-theme.Step, h)
	for i, tab := range r.tabs {
		y := top(i)
		place(tab.icon, theme.Step2, centred(y, h, icon), icon, icon)
		text := tab.label.MinSize()
		place(tab.label, theme.Step2+icon+theme.Step, centred(y, h, text.Height), text.Width, text.Height)
		count := tab.count.MinSize()
		w := max(count.Width+theme.Step, count.Height)
		tab.badge.CornerRadius = count.Height / 2
		place(tab.badge, size.Width-theme.Step-w, centred(y, h, count.Height), w, count.Height)
		place(tab.count, size.Width-theme.Step-w, centred(y, h, count.Height), w, count.Height)
	}
}

func (r *navRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.cover, r.edge, r.light, r.sheet, r.upper, r.lower, r.ribbon}
	for _, tab := range r.tabs {
		objects = append(objects, tab.icon, tab.label, tab.badge, tab.count)
	}
	return append(objects, r.ring)
}

func (r *navRenderer) Destroy() {}
