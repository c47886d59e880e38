package site

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	screen "fourturn/app/screen/site"
	"fourturn/app/theme"
	"fourturn/app/widgets"
	"fourturn/app/words"
)

// placePart is where a site is and where its climate is from.
type placePart struct {
	view                *View
	find                *stationFinder
	name                *widgets.MeasureField
	latitude, longitude *widgets.MeasureField
	height, lapse       *widgets.MeasureField
	near, freezes       *stationList
	freezeBox           *fyne.Container
	own                 *ownPart
	record              *recordPart
	source, lapseNote   *fyne.Container
	rest                *fyne.Container // what there is only for a site that is there
	remove              *widgets.Button
	box                 *fyne.Container
}

// found is how many stations a search lists.
const found = 8

var placeFields = widgets.Columns{Least: 170, Most: 4}

func newPlacePart(v *View) *placePart {
	w, s := v.words, v.screen
	p := &placePart{view: v, source: container.NewStack(), lapseNote: container.NewStack()}
	field := func(label, help string, set func(string) error) *widgets.MeasureField {
		return widgets.NewMeasureField(w.T(label), w.T(help), func(text string) error { return v.after(set(text)) })
	}
	p.find = newStationFinder(v)
	p.name = widgets.NewMeasureField(w.T("site.name"), "", func(text string) error { return v.after(s.Rename(text)) })
	p.latitude = field("site.latitude", "site.latitude_help", func(text string) error {
		_, longitude := s.Coordinates()
		if longitude == "" && text != "" { // half a place waits for the other half
			longitude = p.longitude.Typed()
			if longitude == "" && !screen.Whole(text) {
				return nil
			}
		}
		if text == "" {
			longitude = ""
		}
		return s.SetCoordinates(text, longitude)
	})
	p.longitude = field("site.longitude", "site.longitude_help", func(text string) error {
		latitude, _ := s.Coordinates()
		if latitude == "" && text != "" {
			if latitude = p.latitude.Typed(); latitude == "" {
				return nil
			}
		}
		if text == "" {
			latitude = ""
		}
		return s.SetCoordinates(latitude, text)
	})
	p.height = field("site.elevation", "site.elevation_help", s.SetElevation)
	p.lapse = field("site.lapse", "site.lapse_unit", s.SetLapse)
	p.near = newStationList(v, s.SetStation)
	p.freezes = newStationList(v, s.SetFreezeStation)
	p.freezeBox = container.NewVBox()
	p.own, p.record = newOwnPart(v), newRecordPart(v)
	add := widgets.NewButton(widgets.ButtonData{Icon: theme.IconAdd, Label: w.T("site.add")}, func() { v.try(s.AddSite()) })
	p.remove = widgets.NewButton(widgets.ButtonData{Icon: theme.IconRemove, Label: w.T("site.remove"), Kind: widgets.ButtonQuiet}, p.askRemove)
	p.rest = container.NewVBox(
		container.New(placeFields, p.name, p.latitude, p.longitude, p.height, p.lapse), p.lapseNote,
		widgets.NewSection(w.T("site.near"), p.near.box), p.freezeBox, p.record.box, p.own.box,
	)
	p.box = container.NewVBox(
		widgets.NewSection(w.T("site.where"), container.NewVBox(p.source, p.find.box), p.remove, add), p.rest, p.credits(),
	)
	return p
}

func (p *placePart) refresh() {
	v, s, w := p.view, p.view.screen, p.view.words
	p.source.Objects = nil
	if text := s.Source(); text != "" {
		p.source.Objects = []fyne.CanvasObject{widgets.NewText(text)}
	}
	if s.Chosen() == nil {
		p.rest.Hide()
		p.remove.Hide()
		return
	}
	p.rest.Show()
	p.remove.Show()
	p.name.SetValue(s.Name())
	latitude, longitude := s.Coordinates()
	p.latitude.SetValue(latitude)
	p.longitude.SetValue(longitude)
	p.height.SetValue(s.Elevation())
	lapse, unit := s.Lapse()
	p.lapse.SetLabels(w.T("site.lapse"), unit)
	p.lapse.SetValue(lapse)
	p.lapseNote.Objects = []fyne.CanvasObject{widgets.NewText(s.LapseSource())}
	p.near.set(s.Near(), "")
	p.refreshFreezes(v)
	p.record.refresh()
	p.own.refresh()
}

// refreshFreezes offers the dates of a US station, where there is one nearby.
func (p *placePart) refreshFreezes(v *View) {
	list := v.screen.FreezeStations()
	p.freezeBox.Objects = nil
	if len(list) == 0 {
		return
	}
	p.freezes.set(list, v.words.T("site.freeze_none"))
	p.freezeBox.Add(widgets.NewSection(v.words.T("site.freeze_stations"), container.NewVBox(p.freezes.box, widgets.NewText(v.words.T("site.freeze_source")))))
}

// credits are the sources of the built-in data, each with its licence.
func (p *placePart) credits() fyne.CanvasObject {
	box := container.NewVBox()
	for _, c := range p.view.screen.Credits() {
		box.Add(container.NewVBox(widgets.NewStrong(c.Title), widgets.NewText(c.Text)))
	}
	box.Add(widgets.NewText(p.view.words.T("site.credits_note")))
	return widgets.NewSection(p.view.words.T("site.credits"), box)
}

// askRemove asks before a site goes with its spots.
func (p *placePart) askRemove() {
	v, w := p.view, p.view.words
	spots, pots := v.screen.Losses()
	v.ask(w.T("site.remove_title", words.A{"site": v.screen.Name()}), w.T("site.remove_text", words.A{"spots": spots, "pots": pots}), func() { v.try(v.screen.Remove()) })
}

// stationList is a few stations, each to be taken.
type stationList struct {
	view *View
	take func(id string) error
	box  *fyne.Container
}

func newStationList(v *View, take func(id string) error) *stationList {
	return &stationList{view: v, take: take, box: container.NewVBox()}
}

// set lists stations; none, where it is not empty, is the choice to take none of them.
func (l *stationList) set(stations []screen.Station, none string) {
	l.box.Objects = nil
	taken := false
	for _, st := range stations {
		taken = taken || st.Taken
		l.add(st.ID, st.Name, st.Taken)
	}
	if none != "" {
		l.add("", none, !taken)
	}
	l.box.Refresh()
}

func (l *stationList) add(id, name string, taken bool) {
	if taken {
		mark := widgets.NewButton(widgets.ButtonData{Icon: theme.IconTick, Label: name, Kind: widgets.ButtonQuiet, Name: l.view.words.T("site.taken") + ": " + name}, func() {})
		l.box.Add(container.NewHBox(mark))
		return
	}
	l.box.Add(container.NewHBox(widgets.NewButton(
		widgets.ButtonData{Icon: theme.IconSite, Label: name, Kind: widgets.ButtonQuiet, Name: l.view.words.T("site.take") + ": " + name},
		func() { l.view.try(l.take(id)) })))
}

// stationFinder is a line to type a name in, with the stations that fit under it.
type stationFinder struct {
	view     *View
	stations []screen.Station
	table    *widgets.DataTable
	entry    *widgets.SearchEntry
	answer   *fyne.Container
	box      *fyne.Container
}

func newStationFinder(v *View) *stationFinder {
	f := &stationFinder{view: v, answer: container.NewStack()}
	f.table = widgets.NewDataTable(widgets.TableData{Sorted: -1})
	f.table.OpenOnTap = true
	f.table.OnOpen = f.take
	f.entry = widgets.NewSearchEntry(v.words.T("site.search"), f.table, f.show, func() { f.take(f.table.Selected()) })
	f.box = container.NewVBox(f.entry, f.answer)
	return f
}

// show lists what fits what is typed.
func (f *stationFinder) show(typed string) {
	f.stations = f.view.screen.Find(typed, found)
	f.answer.Objects = nil
	switch {
	case typed == "":
	case len(f.stations) == 0:
		f.answer.Objects = []fyne.CanvasObject{widgets.NewText(f.view.words.T("site.none_found"))}
	default:
		f.table.Set(widgets.TableData{
			Columns: []widgets.Column{{Label: f.view.words.T("site.search"), Width: 300, Grow: 1}}, Rows: len(f.stations), Sorted: -1,
			Cell: func(r, _ int) widgets.Cell {
				cell := widgets.Cell{Text: f.stations[r].Name, Icon: theme.IconSite}
				if f.stations[r].Taken {
					cell.Icon = theme.IconTick
				}
				return cell
			},
		})
		f.table.Select(0)
		f.answer.Objects = []fyne.CanvasObject{tall(f.table, len(f.stations), found)}
	}
	f.view.body.Refresh() // what is below makes room
}

func (f *stationFinder) take(row int) {
	if row < 0 || row >= len(f.stations) {
		return
	}
	err := f.view.screen.SetStation(f.stations[row].ID)
	f.entry.SetText("")
	f.view.try(err)
}
