package main

import (
	"io/fs"

	"fourturn/app/desktop"
	"fourturn/assets"
	"fourturn/planner"
)

// climateSources are the publishers of the climate table, each with the notice that
// its licence asks for.
var climateSources = []desktop.Source{
	{
		Name:    "Deutscher Wetterdienst, Climate Data Center",
		Licence: "Monthly CLIMAT reports from stations worldwide, 2003–2021, averaged by month. Source: Deutscher Wetterdienst. CC BY 4.0.",
	},
	{
		Name:    "Met Office",
		Licence: "Historic station data, 1991–2020, averaged by month. Contains public sector information licensed under the Open Government Licence v3.0.",
	},
	{
		Name:    "NOAA National Centers for Environmental Information",
		Licence: "U.S. Climate Normals, freeze dates and GHCN-Daily. Work of the United States Government, in the public domain.",
	},
	{
		Name:    "Météo-France, Met Éireann, Bureau of Meteorology (Australia), Environment and Climate Change Canada",
		Licence: "Daily series of single stations, averaged by month. Licence Ouverte 2.0; CC BY 4.0; CC BY 3.0 AU; Open Government Licence – Canada.",
	},
}

// about returns what the program says of itself: its version, where its data are
// from, and the licences of what it carries.
func about(ref planner.Reference) desktop.About {
	a := desktop.About{Version: appVersion, Sources: climateSources}
	for _, c := range ref.Book.Citations() {
		a.Plants = append(a.Plants, c.Cite)
	}
	for _, font := range []struct{ name, file string }{
		{"Open Sans", "fonts/OpenSans-LICENSE.txt"},
		{"Vollkorn", "fonts/Vollkorn-LICENSE.txt"},
	} {
		text, err := fs.ReadFile(assets.Fonts, font.file)
		if err != nil {
			panic("fourturn: licence of a font: " + err.Error())
		}
		a.Fonts = append(a.Fonts, desktop.Source{Name: font.name, Licence: string(text)})
	}
	return a
}
