// Package site draws a site: its year of weather with the four planting seasons under
// it and the dates that follow; the spots where pots stand; and where all that is from,
// with what a person may give of their own.
package site

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/site"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
	"fourturn/planner"
)

// Shell is what the page needs of the window around it.
type Shell interface {
	ShowWorking(f planner.Figure)
	Status(text string)
	Canvas() fyne.Canvas
	// PickFile asks for a file of which takes says by name that it may be one.
	PickFile(title string, takes func(name string) bool, choose func(path string))
}

// The parts of the page.
const (
	partYear = iota
	partSpots
	partPlace
)

// View is the page of a site.
type View struct {
	screen  *screen.Screen
	words   *words.Words
	shell   Shell
	page    fyne.CanvasObject
	header  *widgets.PageHeader
	parts   *widgets.Segments
	sites   *widgets.ChoiceField
	several bool // sites to choose from
	body    *fyne.Container
	scroll  *container.Scroll
	year    *yearPart
	spots   *spotsPart
	place   *placePart
	empty   fyne.CanvasObject
}

// New returns the page.
func New(s *screen.Screen, w *words.Words, shell Shell) *View {
	v := &View{screen: s, words: w, shell: shell}
	v.parts = widgets.NewSegments(w.T("site.tabs"), []string{w.T("site.tab_year"), w.T("site.tab_spots"), w.T("site.tab_place")}, func(int) { v.turn() })
	v.header = widgets.NewPageHeader(w.T("site.title"), "", v.parts)
	v.sites = widgets.NewChoiceField(w.T("site.choose"), "", nil, func(i int) {
		v.screen.Choose(i)
		v.turn()
	})
	v.year, v.spots, v.place = newYearPart(v), newSpotsPart(v), newPlacePart(v)
	v.empty = widgets.NewEmptyState(theme.DrawingSite, w.T("site.empty_title"), w.T("site.empty_text"))
	v.body = container.NewVBox()
	v.scroll = container.NewVScroll(container.New(widgets.SideMargin{}, v.body))
	v.page = container.NewBorder(v.header, nil, nil, nil, v.scroll)
	if s.Chosen() == nil {
		v.parts.SetChoice(partPlace)
	}
	v.Refresh()
	return v
}

// Object returns the page to be shown.
func (v *View) Object() fyne.CanvasObject { return v.page }

// Open shows a site, or a spot among the site's.
func (v *View) Open(id string) {
	spot, ok := v.screen.ChooseID(id)
	if !ok {
		return
	}
	v.parts.SetChoice(partYear)
	if spot {
		v.parts.SetChoice(partSpots)
	}
	v.turn()
}

// turn shows another part, from its top.
func (v *View) turn() {
	v.Refresh()
	v.scroll.ScrollToTop()
}

// after shows the plan as it is after an edit of a field.
func (v *View) after(err error) error {
	if err == nil {
		v.Refresh()
	}
	return err
}

// try does what a button asks for and says why it could not be done.
func (v *View) try(err error) {
	if err != nil {
		v.shell.Status(err.Error())
	}
	v.Refresh()
}

// Refresh shows the site as it is now. Parts that are not in sight are left alone.
func (v *View) Refresh() {
	v.header.Set(v.words.T("site.title"), v.screen.Name())
	v.refreshSites()
	var objects []fyne.CanvasObject
	if v.several {
		objects = append(objects, container.New(widgets.Columns{Least: 260, Most: 3}, v.sites))
	}
	switch part := v.parts.Choice(); {
	case part == partPlace:
		if v.screen.Chosen() == nil {
			objects = append(objects, v.empty)
		}
		v.place.refresh()
		objects = append(objects, v.place.box)
	case part == partSpots && v.screen.Chosen() != nil:
		v.spots.refresh()
		objects = append(objects, v.spots.box)
	case v.screen.Outlook() == nil:
		objects = append(objects, v.noClimate())
	default:
		v.year.refresh()
		objects = append(objects, v.year.box)
	}
	v.body.Objects = objects
	v.body.Refresh()
}

// refreshSites brings the choice among several sites up to date.
func (v *View) refreshSites() {
	names, chosen := v.screen.Names()
	v.sites.SetOptions(names)
	v.sites.SetChoice(chosen)
	v.several = len(names) > 1
}

// noClimate says that the site has no climate yet, and why where that is known.
func (v *View) noClimate() fyne.CanvasObject {
	if fault := v.screen.Fault(); fault != "" {
		return widgets.NewNotice(widgets.NoticeData{Kind: widgets.NoticeWarning, Title: v.words.T("site.no_climate_title"), Text: fault + " " + v.words.T("site.no_climate_text")})
	}
	return widgets.NewEmptyState(theme.DrawingSite, v.words.T("site.no_climate_title"), v.words.T("site.no_climate_text"))
}

// figure draws a figure with its remark under it.
func (v *View) figure(f screen.Figure) fyne.CanvasObject {
	figure := widgets.NewFigure(widgets.FigureData{Label: f.Label, Value: f.Value, Soft: f.Soft}, nil)
	if !f.Figure.IsZero() {
		figure.SetOnWorking(func() { v.shell.ShowWorking(f.Figure) })
	}
	if f.Note == "" {
		return figure
	}
	return container.NewVBox(figure, indented(f.Note))
}

// fill puts figures into a box.
func (v *View) fill(box *fyne.Container, figures []screen.Figure) {
	box.Objects = nil
	for _, f := range figures {
		box.Add(v.figure(f))
	}
	box.Refresh()
}
