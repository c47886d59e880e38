package main

import (
	"fyne.io/fyne/v2"

	"fourturn/assets"
)

// What the program is called. The same stands in FyneApp.toml, which only the
// packaging reads: a program built with go build would not know its own name.
const (
	appName    = "Fourturn"
	appID      = "local.fourturn.Fourturn" // no domain of our own stands behind it
	appVersion = "0.1.0"
	appBuild   = 1
)

// metadata returns what the toolkit wants to know of the program. It is set before
// the toolkit starts, since preferences need the ID.
func metadata() fyne.AppMetadata {
	return fyne.AppMetadata{
		ID:         appID,
		Name:       appName,
		Version:    appVersion,
		Build:      appBuild,
		Icon:       fyne.NewStaticResource("icon.png", assets.AppIcon),
		Migrations: map[string]bool{"fyneDo": true},
	}
}
