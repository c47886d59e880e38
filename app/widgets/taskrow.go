package widgets

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	fynetheme "fyne.io/fyne/v2/theme"

	"fourturn/app/theme"
)

// TaskData is one thing to do.
type TaskData struct {
	Icon   theme.IconName // kind of work
	Title  string
	Detail string
	Count  string // how many pots, such as "12 pots"
	When   string // such as "Thu 9 Apr"
	Late   string // such as "2 days late", or "" when it is not late
	Done   bool
	Soft   bool // the day rests on an estimate
}

// TaskActions are what can be done with a task; nil functions leave things out.
type TaskActions struct {
	OnTick     func(done bool) // by the box, or Space on the row
	OnOpen     func()          // by the row, or Enter
	OnSnooze   func()          // by the moon
	SnoozeName string          // name of putting it off
}

// TaskRow is a line of the page of what is due: a box to tick, title, detail, how
// many pots, when, and how late. The caller sets Done after OnTick.
type TaskRow struct {
	pressable
	data    TaskData
	actions TaskActions
	snooze  *Button
}

var (
	_ fyne.Widget     = (*TaskRow)(nil)
	_ fyne.Accessible = (*TaskRow)(nil)
)

// NewTaskRow returns a row; rows can be used again for other tasks with Set.
func NewTaskRow(data TaskData, actions TaskActions) *TaskRow {
	t := &TaskRow{snooze: NewButton(ButtonData{Icon: theme.IconSnooze, Kind: ButtonQuiet}, nil)}
	t.extend(t)
	t.Set(data, actions)
	return t
}

// Set shows another task.
func (t *TaskRow) Set(data TaskData, actions TaskActions) {
	t.data, t.actions, t.press = data, actions, actions.OnOpen
	t.snooze.Set(ButtonData{Icon: theme.IconSnooze, Kind: ButtonQuiet, Name: accessibleName(actions.SnoozeName, data.Title)})
	t.snooze.SetOnPress(actions.OnSnooze)
	show(t.snooze, actions.OnSnooze != nil && !data.Done)
	t.Refresh()
}

// Snooze returns the part that puts the task off.
func (t *TaskRow) Snooze() *Button { return t.snooze }

// Tapped ticks in the box and opens elsewhere.
func (t *TaskRow) Tapped(ev *fyne.PointEvent) {
	if ev.Position.X < theme.Step2+t.box()+theme.Step {
		t.tick()
		return
	}
	t.do()
}

// TypedKey ticks on Space and opens on Enter.
func (t *TaskRow) TypedKey(ev *fyne.KeyEvent) {
	if ev.Name == fyne.KeySpace {
		t.tick()
		return
	}
	t.pressable.TypedKey(ev)
}

func (t *TaskRow) tick() {
	if t.actions.OnTick != nil {
		t.actions.OnTick(!t.data.Done)
	}
}

// box is the size of the box.
func (t *TaskRow) box() float32 { return lookOf(t).size(fynetheme.SizeNameInlineIcon) }

// AccessibilityLabel returns all that the row says.
func (t *TaskRow) AccessibilityLabel() string {
	done := ""
	if t.data.Done {
		done = "✓"
	}
	return accessibleName(done, t.data.Title, t.data.Detail, t.data.Count, t.data.When, t.data.Late)
}

// AccessibilityRole is a button.
func (t *TaskRow) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// CreateRenderer is called by the toolkit.
func (t *TaskRow) CreateRenderer() fyne.WidgetRenderer {
	r := &taskRenderer{row: t, ring: newRing()}
	for _, rect := range []**canvas.Rectangle{&r.light, &r.flag, &r.box, &r.rule} {
		*rect = canvas.NewRectangle(color.Transparent)
	}
	for _, text := range []**canvas.Text{&r.title, &r.detail, &r.count, &r.when, &r.late} {
		*text = canvas.NewText("", nil)
	}
	r.tick, r.icon = canvas.NewImageFromResource(theme.IconIn(theme.IconTick, fynetheme.ColorNameSuccess)), canvas.NewImageFromResource(nil)
	r.tick.FillMode, r.icon.FillMode = canvas.ImageFillContain, canvas.ImageFillContain
	r.box.CornerRadius, r.box.StrokeWidth = 3, 1.5
	r.Refresh()
	return r
}

type taskRenderer struct {
	row                              *TaskRow
	light, flag, box, rule, ring     *canvas.Rectangle
	tick, icon                       *canvas.Image
	title, detail, count, when, late *canvas.Text
}

func (r *taskRenderer) Refresh() {
	t, l := r.row, lookOf(r.row)
	fill(r.rule, l.colour(theme.ColorRule))
	show(r.light, t.hovered)
	fill(r.light, l.colour(fynetheme.ColorNameHover))
	late := t.data.Late != "" && !t.data.Done
	show(r.flag, late)
	fill(r.flag, l.colour(theme.ColorLate))
	r.box.StrokeColor, r.box.FillColor = l.colour(theme.ColorOutline), l.colour(theme.ColorSurface)
	r.box.Refresh()
	show(r.tick, t.data.Done)
	r.tick.Refresh()
	if t.data.Icon != "" {
		r.icon.Resource = theme.IconIn(t.data.Icon, theme.ColorInkSoft)
		r.icon.Refresh()
	}
	show(r.icon, t.data.Icon != "")
	show(r.late, late)
	l.ring(r.ring, t.focused)
	r.Layout(t.Size())
	t.snooze.Refresh()
}

func (r *taskRenderer) titleScript() script {
	s := scriptStrong
	if r.row.data.Done {
		s = scriptSoft
		s.style.Strikethrough = true
	}
	return s
}

func (r *taskRenderer) MinSize() fyne.Size {
	l := lookOf(r.row)
	lines := l.measure("X", scriptStrong).Height + l.measure("X", scriptCaption).Height
	return fyne.NewSize(360, max(lines+theme.Step2, r.row.snooze.MinSize().Height+theme.Step))
}

func (r *taskRenderer) Layout(size fyne.Size) {
	t, l := r.row, lookOf(r.row)
	place(r.light, 0, 0, size.Width, size.Height)
	place(r.ring, 0, 0, size.Width, size.Height)
	place(r.rule, 0, size.Height-theme.Hair, size.Width, theme.Hair)
	place(r.flag, 0, theme.Half, ribbonWidth, size.Height-theme.Step)
	box := t.box()
	x := theme.Step2
	y := centred(0, size.Height, box)
	place(r.box, x, y, box, box)
	place(r.tick, x+1, y-1, box, box)
	x += box + theme.Step2
	if r.icon.Visible() {
		place(r.icon, x, y, box, box)
		x += box + theme.Step
	}
	right := size.Width - theme.Step
	button := t.snooze.MinSize()
	place(t.snooze, right-button.Width, centred(0, size.Height, button.Height), button.Width, button.Height)
	right -= button.Width + theme.Step
	r.write(l, x, right, size.Height)
}

// write places the texts between x and right.
func (r *taskRenderer) write(l look, x, right, height float32) {
	d := r.row.data
	when := d.When
	if d.Soft {
		when = "≈ " + when
	}
	l.set(r.when, when, scriptText)
	l.set(r.late, d.Late, scriptCaption.in(theme.ColorLate))
	l.set(r.count, d.Count, scriptCaption)
	side := max(r.when.MinSize().Width, r.late.MinSize().Width, r.count.MinSize().Width)
	inner := right - side - theme.Step2 - x
	title := r.titleScript()
	l.set(r.title, l.fit(d.Title, title, inner), title)
	l.set(r.detail, l.fit(d.Detail, scriptCaption, inner), scriptCaption)
	first, second := r.title.MinSize().Height, l.measure("X", scriptCaption).Height
	top := centred(0, height, first+second)
	if d.Detail == "" {
		place(r.title, x, centred(0, height, first), inner, first)
	} else {
		place(r.title, x, top, inner, first)
		place(r.detail, x, top+first, inner, second)
	}
	place(r.when, right-r.when.MinSize().Width, top, r.when.MinSize().Width, first)
	count := r.count.MinSize().Width
	place(r.late, right-r.late.MinSize().Width, top+first, r.late.MinSize().Width, second)
	if r.late.Visible() { // the count goes beside the detail
		place(r.count, right-r.late.MinSize().Width-theme.Step-count, top+first, count, second)
		return
	}
	place(r.count, right-count, top+first, count, second)
}

func (r *taskRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{
		r.light, r.rule, r.flag, r.box, r.tick, r.icon, r.title, r.detail,
		r.when, r.count, r.late, r.row.snooze, r.ring,
	}
}

func (r *taskRenderer) Destroy() {}
