// Package feeding draws the alternating feeds: whose turn it is, the coming rounds,
// what the pots really had and the slow release in the mix.
package feeding

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/feeding"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner"
)

// Shell is what the page needs of the window around it.
type Shell interface {
	ShowWorking(f planner.Figure)
	Status(text string)
}

// Rounds listed on the page.
const (
	roundsAhead = 26 // a growing season of weekly rounds
	roundsPast  = 12
)

// View is the page of feeds.
type View struct {
	screen   *screen.Screen
	words    *words.Words
	shell    Shell
	page     fyne.CanvasObject
	header   *widgets.PageHeader
	body     *fyne.Container
	can      *widgets.MeasureField
	interval *widgets.MeasureField
	pot      int // of the balance, among the pots that have one
}

// New returns the page.
func New(s *screen.Screen, w *words.Words, shell Shell) *View {
	v := &View{screen: s, words: w, shell: shell, body: container.NewVBox()}
	v.header = widgets.NewPageHeader(w.T("feeding.title"), "")
	v.can = widgets.NewMeasureField(w.T("feeding.can"), w.T("feeding.can_help"), func(text string) error { return v.after(s.SetCan(text)) })
	v.interval = widgets.NewMeasureField(w.T("feeding.interval"), w.T("feeding.interval_help"), func(text string) error { return v.after(s.SetInterval(text)) })
	v.page = container.NewBorder(v.header, nil, nil, nil, container.NewVScroll(container.New(widgets.SideMargin{}, v.body)))
	v.Refresh()
	return v
}

// Object returns the page to be shown.
func (v *View) Object() fyne.CanvasObject { return v.page }

func (v *View) after(err error) error {
	if err == nil {
		v.Refresh()
	}
	return err
}

// Refresh shows the feeds as they are now.
func (v *View) Refresh() {
	w := v.words
	products := v.screen.Products()
	var names []string
	for _, p := range products {
		names = append(names, p.Letter+" "+p.Name)
	}
	about := w.T("feeding.no_turn")
	if len(names) > 0 {
		about = w.T("feeding.about", words.A{"turn": w.List(names...)})
	}
	v.header.Set(w.T("feeding.title"), about)
	v.can.SetValue(v.screen.Can())
	v.interval.SetValue(v.screen.Interval())
	v.body.Objects = nil
	if !v.screen.Known() {
		v.body.Add(widgets.NewBusy(widgets.BusyData{Title: w.T("feeding.working"), Done: -1}, nil))
		v.body.Refresh()
		return
	}
	rounds := v.screen.Rounds(roundsAhead)
	v.body.Add(container.New(widgets.Columns{Least: 220, Most: 3}, v.can, v.interval))
	if len(rounds) == 0 {
		v.body.Add(widgets.NewEmptyState(theme.DrawingFeeding, w.T("feeding.none_title"), w.T("feeding.none_text")))
	} else {
		v.body.Add(v.nextCard(rounds[0], products))
		v.body.Add(widgets.NewSection(w.T("feeding.rounds"), container.NewVBox(v.figure(v.screen.Fewest()), v.table(rounds))))
	}
	v.remarks()
	v.onePot()
	if past := v.screen.Past(roundsPast); len(past) > 0 {
		v.body.Add(widgets.NewSection(w.T("feeding.past"), v.pastTable(past)))
	}
	if charges := v.screen.Charges(); len(charges) > 0 {
		v.body.Add(widgets.NewSection(w.T("feeding.charges"), v.chargeTable(charges)))
	}
	v.body.Add(widgets.NewNotice(widgets.NoticeData{Kind: widgets.NoticeCaution, Title: words.Capital(w.T("words.severity.caution")), Text: w.T("feeding.safety")}))
	v.body.Refresh()
}

// nextCard is the round whose turn it is, with what goes into the can.
func (v *View) nextCard(r screen.Round, products []screen.Product) fyne.CanvasObject {
	w := v.words
	figures := container.New(widgets.Columns{Least: 120, Most: 4})
	for _, f := range []screen.Figure{r.Water, r.Cans, r.Dose, r.Spoons, r.Strength, r.EC} {
		if !f.Figure.IsZero() {
			figures.Add(v.figure(f))
		}
	}
	fed := widgets.NewButton(widgets.ButtonData{Icon: theme.IconTick, Label: w.T("feeding.fed"), Kind: widgets.ButtonMain}, func() {
		v.tell(v.screen.Tick(r, ""), w.T("feeding.ticked"))
	})
	actions := []fyne.CanvasObject{fed}
	for _, p := range products {
		if p.Next {
			continue
		}
		other := p.ID
		actions = append(actions, widgets.NewButton(widgets.ButtonData{Label: w.T("feeding.fed_with", words.A{"product": p.Letter}), Kind: widgets.ButtonPlain}, func() {
			v.tell(v.screen.Tick(r, other), w.T("feeding.ticked"))
		}))
	}
	actions = append(actions, widgets.NewButton(widgets.ButtonData{Icon: theme.IconSnooze, Label: w.T("feeding.leave_out"), Kind: widgets.ButtonQuiet}, func() {
		v.tell(v.screen.LeaveOut(r), w.T("feeding.left_out"))
	}))
	title := r.When + " · " + r.Letter + " " + r.Product + " · " + r.Pots
	parts := container.NewVBox(figures)
	if r.Weaker != "" {
		parts.Add(widgets.NewText(r.Weaker))
	}
	parts.Add(container.NewHBox(actions...))
	return widgets.NewCard(title, parts)
}

func (v *View) figure(f screen.Figure) fyne.CanvasObject {
	figure := widgets.NewFigure(widgets.FigureData{Label: f.Label, Value: f.Value, Soft: f.Soft}, nil)
	if !f.Figure.IsZero() {
		figure.SetOnWorking(func() { v.shell.ShowWorking(f.Figure) })
	}
	return figure
}

func (v *View) tell(err error, done string) {
	if err != nil {
		done = err.Error()
	}
	v.shell.Status(done)
	v.Refresh()
}
