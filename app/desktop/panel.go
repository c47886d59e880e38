package desktop

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"fourturn/app/widgets"
	"fourturn/planner"
	"fourturn/planner/working"
)

// panel holds the working of a figure at the right of the page. It takes the focus
// when it opens, so that Esc closes it and Tab goes on to its parts, and it keeps
// clicks and scrolling from the page that it may lie over.
type panel struct {
	widget.BaseWidget
	card    *widgets.WorkingCard
	path    []working.Trace // the figures that led here, the one shown last
	data    widgets.WorkingData
	figure  planner.Figure // what was opened, its trace the first of the path
	place   planner.FigurePlace
	before  fyne.Focusable // what had the focus
	onClose func()
}

var (
	_ fyne.Focusable    = (*panel)(nil)
	_ fyne.Tappable     = (*panel)(nil)
	_ fyne.Scrollable   = (*panel)(nil)
	_ desktop.Hoverable = (*panel)(nil)
	_ fyne.Accessible   = (*panel)(nil)
)

func newPanel(words widgets.WorkingWords, onClose func()) *panel {
	p := &panel{card: widgets.NewWorkingCard(words, onClose), onClose: onClose}
	p.ExtendBaseWidget(p)
	p.Hide()
	return p
}

// CreateRenderer is called by the toolkit.
func (p *panel) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(p.card) }

// FocusGained is not used: the card shows what it says.
func (p *panel) FocusGained() {}

// FocusLost is not used.
func (p *panel) FocusLost() {}

// TypedRune is not used.
func (p *panel) TypedRune(rune) {}

// TypedKey closes the panel on Esc.
func (p *panel) TypedKey(ev *fyne.KeyEvent) {
	if ev.Name == fyne.KeyEscape {
		p.onClose()
	}
}

// Tapped keeps taps from the page.
func (p *panel) Tapped(*fyne.PointEvent) {}

// Scrolled keeps scrolling from the page.
func (p *panel) Scrolled(*fyne.ScrollEvent) {}

// MouseIn keeps the pointer from the page.
func (p *panel) MouseIn(*desktop.MouseEvent) {}

// MouseMoved keeps the pointer from the page.
func (p *panel) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is not used.
func (p *panel) MouseOut() {}

// AccessibilityLabel returns what the card says.
func (p *panel) AccessibilityLabel() string { return p.card.AccessibilityLabel() }

// AccessibilityRole is a container.
func (p *panel) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleContainer }

// set shows a working.
func (p *panel) set(data widgets.WorkingData) {
	p.data = data
	p.card.Set(data)
}

// ShowWorking opens the working of a figure beside the page. A zero figure has
// none and is passed over.
func (s *Shell) ShowWorking(f planner.Figure) {
	if f.IsZero() {
		return
	}
	if !s.panel.Visible() {
		s.panel.before = s.Canvas().Focused()
	}
	s.panel.path = []working.Trace{f.Working()}
	s.panel.figure, s.panel.place = f, ""
	if outlook, _ := s.session.Outlook(); outlook != nil {
		s.panel.place = outlook.PlaceOf(f)
	}
	s.showTrace()
	s.panel.Show()
	s.content.Refresh()
	s.Canvas().Focus(s.panel)
}

// renewWorking shows the working of what has become of the open figure in a new
// outlook, as deep into its inputs as they are still there. It closes the panel where
// the figure is gone, or is one that a page added up: a stale figure is a lie.
func (s *Shell) renewWorking() {
	outlook, current := s.session.Outlook()
	if !s.panel.Visible() || !current || outlook == nil || outlook.PlaceOf(s.panel.figure) != "" {
		return
	}
	figure := outlook.FigureAt(s.panel.place)
	if figure.IsZero() {
		s.CloseWorking()
		s.Status(s.words.T("desktop.working_gone"))
		return
	}
	path := []working.Trace{figure.Working()}
	for _, deeper := range s.panel.path[1:] {
		in := slices.IndexFunc(path[len(path)-1].Inputs, func(in working.Input) bool {
			return in.From != nil && in.From.Name == deeper.Name
		})
		if in < 0 {
			break
		}
		path = append(path, *path[len(path)-1].Inputs[in].From)
	}
	s.panel.figure, s.panel.path = figure, path
	s.showTrace()
}

// CloseWorking closes the panel and puts the focus back to the figure.
func (s *Shell) CloseWorking() {
	if !s.panel.Visible() {
		return
	}
	s.panel.Hide()
	s.content.Refresh()
	if s.panel.before != nil {
		s.Canvas().Focus(s.panel.before)
	} else {
		s.Canvas().Unfocus()
	}
	s.panel.before, s.panel.path, s.panel.figure = nil, nil, planner.Figure{}
}

// WorkingOpen reports whether the panel is open.
func (s *Shell) WorkingOpen() bool { return s.panel.Visible() }

// showTrace shows the last working of the path.
func (s *Shell) showTrace() {
	path := s.panel.path
	data := s.workingData(path[len(path)-1])
	for i, above := range path[:len(path)-1] {
		data.Path = append(data.Path, widgets.WorkingStep{
			Title:  s.words.T(above.Name),
			OnOpen: func() { s.walkTo(path[:i+1]) },
		})
	}
	s.panel.set(data)
}

// walkTo shows another working of the open panel.
func (s *Shell) walkTo(path []working.Trace) {
	s.panel.path = path
	s.showTrace()
	s.Canvas().Focus(s.panel) // what was pressed is gone
}

// workingData writes a working out in the person's words and units.
func (s *Shell) workingData(trace working.Trace) widgets.WorkingData {
	w, units := s.words, s.units()
	data := widgets.WorkingData{
		Title:   w.T(trace.Name),
		Formula: trace.Formula,
		Result:  w.Named(trace.Name, trace.Result, units),
		Soft:    trace.Soft(),
		Source:  w.Source(trace.Source),
	}
	path := s.panel.path
	for _, in := range trace.Inputs {
		row := widgets.WorkingInput{
			Symbol: in.Symbol, Name: w.T(in.Name), Value: w.Named(in.Name, in.Value, units),
			Source: w.Source(in.Source), Soft: in.Source.Status != "" && in.Source.Soft(),
		}
		if in.From != nil {
			row.Soft = row.Soft || in.From.Soft()
			row.OnOpen = func() { s.walkTo(append(path[:len(path):len(path)], *in.From)) }
		}
		data.Inputs = append(data.Inputs, row)
	}
	for _, note := range trace.Notes {
		data.Notes = append(data.Notes, w.T(note))
	}
	return data
}

func (s *Shell) workingWords() widgets.WorkingWords {
	return widgets.WorkingWords{
		Inputs: s.words.T("desktop.working_inputs"),
		Source: s.words.T("desktop.working_source"),
		Notes:  s.words.T("desktop.working_notes"),
		Soft:   s.words.T("desktop.working_soft"),
		Close:  s.words.T("desktop.working_close"),
	}
}
