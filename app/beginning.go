package main

import (
	"fourturn/app/desktop"
	beginscreen "fourturn/app/screen/begin"
	"fourturn/app/view/begin"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
)

// beginner asks the questions that make a new plan over a window.
func beginner(s *desktop.Session, w *words.Words, ref planner.Reference, today func() civil.Date) func(*desktop.Shell) {
	return func(shell *desktop.Shell) {
		begin.Open(beginscreen.New(s, w, ref, today()), w, shell)
	}
}
