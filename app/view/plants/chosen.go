package plants

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	screen "fourturn/app/screen/plants"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/widgets/plantdraw"
	"fourturn/planner/finding"
)

// chosen is the plant that is looked at.
type chosen struct {
	view    *View
	object  *container.Scroll
	hint    fyne.CanvasObject
	known   *fyne.Container
	pot     *widgets.ChoiceField
	season  *widgets.ChoiceField
	refusal *fyne.Container // why the last plant was not added
	add     fyne.CanvasObject
	name    string
	side    *plantdraw.Picture
	above   *plantdraw.Picture
	said    []string // all that is shown, so that it is built again only when it changed
}

func newChosen(v *View) *chosen {
	w, s := v.words, v.screen
	c := &chosen{view: v, known: container.New(layout.NewCustomPaddedVBoxLayout(theme.Step))}
	c.side, c.above = plantdraw.NewSide(nil, sideLeast), plantdraw.NewFromAbove(nil, aboveLeast)
	c.hint = widgets.NewAside(w.T("plant_book.choose"))
	c.pot = widgets.NewChoiceField(w.T("plant_book.pot"), "", s.Pots().Options, func(i int) {
		s.ChoosePot(i)
		v.Refresh()
	})
	c.season = widgets.NewChoiceField(w.T("plant_book.add_season"), "", s.Seasons().Options, s.ChooseSeason)
	button := widgets.NewButton(widgets.ButtonData{Icon: theme.IconAdd, Label: w.T("plant_book.add"), Kind: widgets.ButtonMain}, c.put)
	c.refusal = container.NewVBox()
	c.add = widgets.NewCard(w.T("plant_book.add_to"), container.NewVBox(container.New(fieldGrid{columns: 2}, c.pot, c.season), c.refusal), button)
	c.known.Hide()
	c.object = container.NewVScroll(container.New(widgets.SideMargin{}, container.NewVBox(c.hint, c.known)))
	return c
}

// put adds the plant to the pot, or says beside the button why not.
func (c *chosen) put() {
	done, err := c.view.screen.Add()
	if err != nil {
		c.refuse(widgets.NewNotice(widgets.NoticeData{Kind: widgets.NoticeWarning, Title: c.view.words.T("plant_book.not_added"), Text: err.Error()}))
		return
	}
	c.refuse()
	c.view.Refresh()
	c.view.shell.Status(done)
}

// refuse puts a remark beside the button, or takes it away.
func (c *chosen) refuse(remarks ...fyne.CanvasObject) {
	if len(remarks) == 0 && len(c.refusal.Objects) == 0 {
		return
	}
	c.refusal.Objects = remarks
	c.refusal.Refresh()
	c.object.Content.Refresh()
	c.object.Refresh()
}

func (c *chosen) show() {
	s := c.view.screen
	pots := s.Pots()
	c.pot.SetOptions(pots.Options)
	c.pot.SetChoice(pots.Chosen)
	c.season.SetChoice(s.Seasons().Chosen)
	told, ok := s.Told()
	if !ok {
		return
	}
	c.hint.Hide()
	c.known.Show()
	facts := s.Facts()
	if lives, ok := s.Lives(); ok {
		facts = append([]screen.Fact{lives}, facts...)
	}
	listings, notices := s.Listings(), s.Notices()
	taken, _ := s.Compared()
	if said := append(saying(told, facts, listings, notices), c.takeLabel(taken)); !slices.Equal(said, c.said) {
		c.said = said
		c.build(told, facts, listings, notices)
		c.object.Content.Refresh() // what was hidden has no place yet
		c.object.Refresh()
	}
	if told.Name != c.name {
		c.name = told.Name
		c.refuse()
		c.object.ScrollToTop()
	}
}

func (c *chosen) takeLabel(taken bool) string {
	if taken {
		return c.view.words.T("plant_book.not_compare")
	}
	return c.view.words.T("plant_book.take")
}

// saying lists every word that is shown.
func saying(told screen.Told, facts []screen.Fact, listings []screen.Listing, notices []screen.Notice) []string {
	said := append([]string{told.Name, told.Botanical, told.Others, told.Notes}, told.Conflicts...)
	for _, f := range facts {
		said = append(said, f.Label, f.Value)
	}
	for _, l := range listings {
		said = append(said, l.Value)
	}
	for _, n := range notices {
		said = append(said, n.Title, n.Text)
	}
	return said
}

func (c *chosen) build(told screen.Told, facts []screen.Fact, listings []screen.Listing, notices []screen.Notice) {
	w := c.view.words
	head := container.NewVBox(widgets.NewAside(told.Botanical))
	for _, text := range []string{told.Others, told.Notes} {
		if text != "" {
			head.Add(widgets.NewText(text))
		}
	}
	taken, _ := c.view.screen.Compared()
	take := widgets.NewButton(widgets.ButtonData{Label: c.takeLabel(taken), Kind: widgets.ButtonQuiet}, c.view.take)
	c.side.Set(c.view.screen.Plant())
	c.above.Set(c.view.screen.Plant())
	objects := []fyne.CanvasObject{c.pictures(), widgets.NewSection(told.Name, head, take)}
	for _, n := range notices {
		objects = append(objects, widgets.NewNotice(widgets.NoticeData{Kind: noticeKind(n.Severity), Title: n.Title, Text: n.Text}))
	}
	objects = append(objects, c.add, widgets.NewSection(w.T("plant_book.lists"), c.lists(listings)))
	known := container.NewVBox()
	for _, f := range facts {
		known.Add(c.fact(f))
	}
	objects = append(objects, widgets.NewSection(w.T("plant_book.facts"), known))
	if len(told.Conflicts) > 0 {
		texts := container.NewVBox()
		for _, text := range told.Conflicts {
			texts.Add(widgets.NewText(text))
		}
		objects = append(objects, widgets.NewSection(w.T("plant_book.disagree"), texts))
	}
	c.known.Objects = objects
	c.known.Refresh()
}

// pictures are the plant from the side and from above.
func (c *chosen) pictures() fyne.CanvasObject {
	return container.New(pictureRow{}, c.side, c.above)
}

func noticeKind(s finding.Severity) widgets.NoticeKind {
	switch s {
	case finding.Caution:
		return widgets.NoticeCaution
	case finding.Warning:
		return widgets.NoticeWarning
	case finding.Error:
		return widgets.NoticeError
	case finding.Note:
	}
	return widgets.NoticeNote
}

// lists are what the lists of poisonous plants say, with a sign beside what harms.
func (c *chosen) lists(listings []screen.Listing) fyne.CanvasObject {
	box := container.NewVBox()
	for _, l := range listings {
		icon := canvas.NewImageFromResource(nil)
		icon.FillMode = canvas.ImageFillContain
		icon.SetMinSize(fyne.NewSquareSize(signSize))
		if l.Harmful {
			icon.Resource = theme.IconIn(theme.IconCaution, theme.ColorCaution)
		}
		figure := widgets.NewFigure(widgets.FigureData{Value: l.Value, Soft: l.Soft, Style: widgets.FigureBare}, c.opens(l.Fact))
		box.Add(container.NewHBox(icon, figure))
	}
	for _, line := range c.view.screen.Handling() {
		box.Add(widgets.NewText(line))
	}
	box.Add(widgets.NewAside(c.view.words.T("plant_book.lists_aside")))
	return box
}

const signSize = 18

// fact is one line that opens where its value is from; a long value wraps below it.
func (c *chosen) fact(f screen.Fact) fyne.CanvasObject {
	line := widgets.NewFigure(widgets.FigureData{Label: f.Label, Value: f.Value, Soft: f.Soft, Style: widgets.FigureRow}, c.opens(f))
	if line.MinSize().Width <= chosenLeast-2*theme.Step2 {
		return line
	}
	from := widgets.FigureData{
		Label: f.Label, Value: c.view.words.T("plant_book.where_from"), Soft: f.Soft, Style: widgets.FigureRow, Name: f.Label + ": " + f.Value,
	}
	return container.NewVBox(widgets.NewFigure(from, c.opens(f)), widgets.NewText(f.Value))
}

func (c *chosen) opens(f screen.Fact) func() {
	return func() { c.view.shell.ShowWorking(f.Figure) }
}
