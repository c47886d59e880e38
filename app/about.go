package main

import (
	"io/fs"

	"fourturn/app/desktop"
	"fourturn/assets"
)

// about returns what the program says of itself: its version, and the licences of
// what it carries.
func about() desktop.About {
	a := desktop.About{Version: appVersion}
	for _, font := range []struct{ name, file string }{
		{"Open Sans", "fonts/OpenSans-LICENSE.txt"},
		{"Vollkorn", "fonts/Vollkorn-LICENSE.txt"},
	} {
		text, err := fs.ReadFile(assets.Fonts, font.file)
		if err != nil {
			panic("fourturn: licence of a font: " + err.Error())
		}
		a.Sources = append(a.Sources, desktop.Source{Name: font.name, Licence: string(text)})
	}
	return a
}
