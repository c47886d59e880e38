package main

import (
	"strings"

	"fourturn/app/desktop"
	findscreen "fourturn/app/screen/find"
	"fourturn/app/view/find"
	"fourturn/app/words"
	"fourturn/plants"
)

// finder opens the search for everything over a window.
func finder(s *desktop.Session, w *words.Words, book *plants.Book) func(*desktop.Shell) {
	return func(shell *desktop.Shell) {
		find.Open(findscreen.New(s, w, book, around(shell)), w, shell)
	}
}

// around lists what a window offers beside the plan. The actions that go to a room
// are found as the rooms.
func around(shell *desktop.Shell) (found findscreen.Around) {
	actions, keys := shell.Offered()
	for i, a := range actions {
		named := findscreen.Named{Name: a.Name, Label: a.Label(), Keys: keys[i]}
		if room, ok := strings.CutPrefix(a.Name, desktop.GoPrefix); ok {
			named.Name = room
			found.Rooms = append(found.Rooms, named)
		} else if a.Name != desktop.FindAction {
			found.Actions = append(found.Actions, named)
		}
	}
	return found
}
