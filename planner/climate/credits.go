package climate

// Credit is a source of the built-in data with its licence, to be shown with it.
type Credit struct {
	Source    DataSource
	Publisher string
	Title     string
	Licence   string
	Statement string // the attribution that the licence asks for, word for word; empty where it asks for none
	Stations  int    // of the table that rest on it
}

// Credits returns the sources of the built-in data in the order of their size.
// NOTICE says more: where the copies were read and what of the licences was
// verified.
func Credits() []Credit {
	credits := []Credit{
		{
			Source: SourceCLIMAT, Publisher: "Deutscher Wetterdienst, Climate Data Center",
			Title:   "Monthly CLIMAT reports from stations worldwide, 2003-2021",
			Licence: "CC BY 4.0", Statement: "Data basis: Deutscher Wetterdienst, values processed",
		},
		{
			Source: SourceMetOffice, Publisher: "Met Office", Title: "Historic station data",
			Licence: "Open Government Licence v3.0", Statement: "Contains public sector information licensed under the Open Government Licence v3.0",
		},
		{Source: SourceNOAA8110, Publisher: "NOAA NCEI", Title: "U.S. Climate Normals 1981-2010", Licence: "public domain (17 U.S.C. 105)"},
		{Source: SourceGHCN, Publisher: "NOAA NCEI", Title: "Global Historical Climatology Network - Daily, US stations", Licence: "public domain (17 U.S.C. 105)"},
		{Source: SourceNOAA9120, Publisher: "NOAA NCEI", Title: "U.S. Climate Normals 1991-2020", Licence: "public domain (17 U.S.C. 105)"},
		{
			Source: SourceMetEireann, Publisher: "Met Éireann", Title: "Historical daily data, Shannon Airport",
			Licence: "CC BY 4.0", Statement: "Source: Met Éireann, licensed under CC BY 4.0; values processed",
		},
		{
			Source: SourceFreezeUS, Publisher: "NOAA NCEI", Title: "U.S. Climate Normals 1981-2010, freeze probabilities",
			Licence: "public domain (17 U.S.C. 105)", Stations: len(FreezeStations()),
		},
	}
	for i := range Stations() {
		for k := range credits {
			if credits[k].Source == Stations()[i].Source {
				credits[k].Stations++
			}
		}
	}
	return credits
}
