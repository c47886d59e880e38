package desktop

import (
	"fyne.io/fyne/v2"

	"fourturn/app/theme"
	"fourturn/app/widgets"
)

// Room is one entry of the rail.
type Room struct {
	Key   string // what [Shell.GoTo] calls it, such as "pots"
	Icon  theme.IconName
	Label string // key of its name
	// Make makes the page when the room is opened for the first time.
	Make func(*Shell) Page
	// Count returns a number to show beside the label and how it is said, both ""
	// for none; Count may be nil.
	Count func() (count, name string)
}

// Page is what a room shows.
type Page interface {
	Object() fyne.CanvasObject
	// Refresh reads the screen again and shows what changed.
	Refresh()
}

// opener is a page that can select something in it.
type opener interface{ Open(id string) }

// roomState is a room with its page, once that is made.
type roomState struct {
	Room
	page  Page
	stale bool // something changed while the room was out of sight
}

// place is where somebody was: a room and what was selected there.
type place struct{ room, id string }

// Room returns the key of the open room, or "" before there is one.
func (s *Shell) Room() string { return s.history.here().room }

// GoTo opens a room and selects something in it, where id is not "". A room that
// there is not is passed over.
func (s *Shell) GoTo(room, id string) {
	if s.roomIndex(room) < 0 {
		return
	}
	if s.history.visit(place{room, id}) {
		s.arrive()
	} else if id != "" {
		s.open(id)
	}
	s.refreshMenus()
}

// Go is [Shell.GoTo] under the name that pages know it by.
func (s *Shell) Go(room, id string) { s.GoTo(room, id) }

// Find opens the search for everything.
func (s *Shell) Find() {
	if s.config.Find != nil {
		s.config.Find(s)
	}
}

func (s *Shell) roomIndex(key string) int {
	for i := range s.rooms {
		if s.rooms[i].Key == key {
			return i
		}
	}
	return -1
}

// Back returns to where one was before.
func (s *Shell) Back() {
	if s.history.back() {
		s.arrive()
		s.refreshMenus()
	}
}

// Forward goes where [Shell.Back] came from.
func (s *Shell) Forward() {
	if s.history.forward() {
		s.arrive()
		s.refreshMenus()
	}
}

// arrive shows the room that the history is at.
func (s *Shell) arrive() {
	s.CloseWorking()
	s.status.SetHint("")
	here := s.history.here()
	s.log("room", here.room)
	i := s.roomIndex(here.room)
	s.rail.Select(i)
	s.showPage()
	if here.id != "" {
		s.open(here.id)
	}
}

func (s *Shell) open(id string) {
	if page, ok := s.current().page.(opener); ok {
		page.Open(id)
	}
}

// current returns the open room. There must be one.
func (s *Shell) current() *roomState { return &s.rooms[s.roomIndex(s.history.here().room)] }

// showPage puts the page of the open room in place, or the sign of work while
// nothing is worked out yet.
func (s *Shell) showPage() {
	if outlook, _ := s.session.Outlook(); outlook == nil {
		s.setPage(s.busy)
		return
	}
	room := s.current()
	if room.page == nil {
		room.page = room.Make(s)
		room.stale = true
	}
	if room.stale {
		room.stale = false
		room.page.Refresh()
	}
	s.setPage(room.page.Object())
}

func (s *Shell) setPage(page fyne.CanvasObject) {
	if len(s.page.Objects) == 1 && s.page.Objects[0] == page {
		return
	}
	s.page.Objects = []fyne.CanvasObject{page}
	s.page.Refresh()
}

// refreshPages has the room in sight read its screen again, now, and the others
// when somebody comes back to them.
func (s *Shell) refreshPages() {
	for i := range s.rooms {
		s.rooms[i].stale = true
	}
	s.showPage()
	s.rail.SetItems(s.railItems())
}

func (s *Shell) railItems() []widgets.NavItem {
	items := make([]widgets.NavItem, len(s.rooms))
	for i, room := range s.rooms {
		items[i] = widgets.NavItem{Icon: room.Icon, Label: s.words.T(room.Label)}
		if outlook, _ := s.session.Outlook(); room.Count != nil && outlook != nil {
			items[i].Count, items[i].CountName = room.Count()
		}
	}
	return items
}
