package main

import (
	"crypto/rand"

	"fourturn/app/desktop"
	duescreen "fourturn/app/screen/due"
	feedingscreen "fourturn/app/screen/feeding"
	mixscreen "fourturn/app/screen/mix"
	plantsscreen "fourturn/app/screen/plants"
	potsscreen "fourturn/app/screen/pots"
	sitescreen "fourturn/app/screen/site"
	yearscreen "fourturn/app/screen/year"
	"fourturn/app/theme"
	"fourturn/app/view/due"
	"fourturn/app/view/feeding"
	"fourturn/app/view/mix"
	"fourturn/app/view/plants"
	"fourturn/app/view/pots"
	"fourturn/app/view/site"
	"fourturn/app/view/year"
	"fourturn/app/words"
	catalogue "fourturn/plants"
)

// rooms lists the rooms on the rail, in their order. The plant book shows what is
// wrong with the person's own.
func rooms(s *desktop.Session, w *words.Words, book *catalogue.Book, bookFaults []string) []desktop.Room {
	return []desktop.Room{
		{
			Key: "due", Icon: theme.IconDue, Label: "due.title",
			Make: func(shell *desktop.Shell) desktop.Page {
				return due.New(duescreen.New(s, w, rand.Text), w, shell)
			},
		},
		{
			Key: "pots", Icon: theme.IconPots, Label: "pots.title",
			Make: func(shell *desktop.Shell) desktop.Page { return pots.New(potsscreen.New(s, w, rand.Text), w, shell) },
		},
		{
			Key: "year", Icon: theme.IconYear, Label: "year.title",
			Make: func(shell *desktop.Shell) desktop.Page { return year.New(yearscreen.New(s, w), w, shell) },
		},
		{
			Key: "feeding", Icon: theme.IconFeeding, Label: "feeding.title",
			Make: func(shell *desktop.Shell) desktop.Page {
				return feeding.New(feedingscreen.New(s, w, rand.Text), w, shell)
			},
		},
		{
			Key: "mix", Icon: theme.IconMix, Label: "mix_buying.title",
			Make: func(shell *desktop.Shell) desktop.Page { return mix.New(mixscreen.New(s, w), w, shell) },
		},
		{
			Key: "plants", Icon: theme.IconPlantBook, Label: "plant_book.title",
			Make: func(shell *desktop.Shell) desktop.Page {
				return plants.New(plantsscreen.WithBook(s, w, book, bookFaults...), w, shell)
			},
		},
		{
			Key: "site", Icon: theme.IconSite, Label: "site.title",
			Make: func(shell *desktop.Shell) desktop.Page { return site.New(sitescreen.New(s, w), w, shell) },
		},
	}
}
