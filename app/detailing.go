package main

import (
	"fourturn/app/desktop"
	detailsscreen "fourturn/app/screen/details"
	"fourturn/app/view/details"
	"fourturn/app/words"
)

// detailer opens the details of the plan over a window.
func detailer(s *desktop.Session, w *words.Words) func(*desktop.Shell) {
	return func(shell *desktop.Shell) { details.Open(detailsscreen.New(s, w), w, shell) }
}
