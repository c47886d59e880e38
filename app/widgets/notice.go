package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/theme"
)

// NoticeKind is what sort of remark a notice is.
type NoticeKind int

// The kinds; the order is that of the planner's findings.
const (
	NoticeNote    NoticeKind = iota // worth knowing
	NoticeCaution                   // somebody or something can be hurt
	NoticeWarning                   // the plan will probably disappoint
	NoticeError                     // it cannot be worked out
)

// noticeLook holds sign and colours of each kind.
var noticeLook = map[NoticeKind]struct {
	icon      theme.IconName
	ink, wash fyne.ThemeColorName
}{
	NoticeNote:    {theme.IconNote, theme.ColorPen, theme.ColorNoteWash},
	NoticeCaution: {theme.IconCaution, theme.ColorCaution, theme.ColorCautionWash},
	NoticeWarning: {theme.IconWarning, fynetheme.ColorNameWarning, theme.ColorWarningWash},
	NoticeError:   {theme.IconError, fynetheme.ColorNameError, theme.ColorErrorWash},
}

// NoticeData is one remark. Title begins with the word for the kind, so that the
// sign is not alone, such as "Caution: heavy lift".
type NoticeData struct {
	Kind      NoticeKind
	Title     string
	Text      string // may be long; it wraps
	Action    string // label of what can be done, or ""
	OnAction  func()
	OnDismiss func() // nil: it cannot be put away
	Dismiss   string // name of putting it away
}

// Notice is a banner for a finding: sign, title, text and what can be done.
type Notice struct {
	widget.BaseWidget
	data            NoticeData
	text            *widget.Label
	action, dismiss *Button
}

var (
	_ fyne.Widget     = (*Notice)(nil)
	_ fyne.Accessible = (*Notice)(nil)
)

// NewNotice returns a banner.
func NewNotice(data NoticeData) *Notice {
	n := &Notice{text: widget.NewLabel("")}
	n.text.Wrapping = fyne.TextWrapWord
	n.action = NewButton(ButtonData{}, nil)
	n.dismiss = NewButton(ButtonData{Icon: theme.IconClose, Kind: ButtonQuiet}, nil)
	n.ExtendBaseWidget(n)
	n.Set(data)
	return n
}

// Set shows another remark.
func (n *Notice) Set(data NoticeData) {
	n.data = data
	n.text.SetText(data.Text)
	show(n.text, data.Text != "")
	n.action.Set(ButtonData{Label: data.Action})
	n.action.SetOnPress(data.OnAction)
	show(n.action, data.Action != "")
	n.dismiss.Set(ButtonData{Icon: theme.IconClose, Kind: ButtonQuiet, Name: data.Dismiss})
	n.dismiss.SetOnPress(data.OnDismiss)
	show(n.dismiss, data.OnDismiss != nil)
	n.Refresh()
}

// AccessibilityLabel returns title and text.
func (n *Notice) AccessibilityLabel() string { return accessibleName(n.data.Title, n.data.Text) }

// AccessibilityRole is text.
func (n *Notice) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }

// CreateRenderer is called by the toolkit.
func (n *Notice) CreateRenderer() fyne.WidgetRenderer {
	r := &noticeRenderer{
		notice: n, ground: canvas.NewRectangle(color.Transparent), bar: canvas.NewRectangle(color.Transparent),
		icon: canvas.NewImageFromResource(nil), title: canvas.NewText("", nil),
	}
	r.icon.FillMode = canvas.ImageFillContain
	r.Refresh()
	return r
}

type noticeRenderer struct {
	notice      *Notice
	ground, bar *canvas.Rectangle
	icon        *canvas.Image
	title       *canvas.Text
	width       float32 // for which the height was worked out
}

func (r *noticeRenderer) Refresh() {
	n, l := r.notice, lookOf(r.notice)
	kind := noticeLook[n.data.Kind]
	fill(r.ground, l.colour(kind.wash))
	fill(r.bar, l.colour(kind.ink))
	r.icon.Resource = theme.IconIn(kind.icon, kind.ink)
	r.icon.Refresh()
	r.Layout(n.Size())
	n.text.Refresh()
	n.action.Refresh()
	n.dismiss.Refresh()
}

// sides returns the room left of the text and right of it.
func (r *noticeRenderer) sides() (left, right float32) {
	left = theme.Step2 + lookOf(r.notice).size(fynetheme.SizeNameInlineIcon) + theme.Step
	right = theme.Step
	if r.notice.action.Visible() {
		right += r.notice.action.MinSize().Width + theme.Step
	}
	if r.notice.dismiss.Visible() {
		right += r.notice.dismiss.MinSize().Width + theme.Half
	}
	return left, right
}

func (r *noticeRenderer) MinSize() fyne.Size {
	left, right := r.sides()
	title := lookOf(r.notice).measure("X", scriptStrong).Height
	height := title + theme.Step2
	if r.notice.text.Visible() {
		height += r.notice.text.MinSize().Height - 2*theme.Step + theme.Half/2
	}
	if r.notice.action.Visible() {
		height = max(height, r.notice.action.MinSize().Height+theme.Step)
	}
	return fyne.NewSize(left+right+120, height)
}

func (r *noticeRenderer) Layout(size fyne.Size) {
	n, l := r.notice, lookOf(r.notice)
	left, right := r.sides()
	place(r.ground, 0, 0, size.Width, size.Height)
	place(r.bar, 0, 0, ribbonWidth, size.Height)
	title := l.measure("X", scriptStrong).Height
	icon := l.size(fynetheme.SizeNameInlineIcon)
	place(r.icon, theme.Step2, centred(theme.Step, title, icon), icon, icon)
	inner := size.Width - left - right
	l.set(r.title, l.fit(n.data.Title, scriptStrong, inner), scriptStrong)
	place(r.title, left, theme.Step, inner, title)
	pad := theme.Step // a label pads its text
	n.text.Move(fyne.NewPos(left-pad, theme.Step+title-pad+theme.Half/2))
	n.text.Resize(fyne.NewSize(inner+2*pad, n.text.MinSize().Height))
	x := size.Width - theme.Step
	if n.dismiss.Visible() {
		d := n.dismiss.MinSize()
		x -= d.Width
		place(n.dismiss, x, theme.Half, d.Width, d.Height)
		x -= theme.Half
	}
	if n.action.Visible() {
		a := n.action.MinSize()
		place(n.action, x-a.Width, centred(0, size.Height, a.Height), a.Width, a.Height)
	}
	if r.width != size.Width { // the text wraps anew: the height may be another
		r.width = size.Width
		n.text.Refresh()
	}
}

func (r *noticeRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.bar, r.icon, r.title, r.notice.text, r.notice.action, r.notice.dismiss}
}

func (r *noticeRenderer) Destroy() {}
