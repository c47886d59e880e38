package figures

import (
	"fourturn/planner"
	"fourturn/planner/civil"
)

type seasonJSON struct {
	Season   string      `json:"season"`
	Exists   bool        `json:"exists"`
	Reason   string      `json:"reason"`
	Start    *figureJSON `json:"start_date"`
	Earliest civil.Date  `json:"earliest_date"`
	Latest   civil.Date  `json:"latest_date"`
}

func siteOf(s *planner.SiteOutlook) siteJSON {
	out := siteJSON{
		ID: s.Site.ID, Name: s.Site.Name, Station: s.Site.Station, Place: s.Place, Period: s.Period,
		Estimated: s.Estimated, Figures: []figureJSON{}, Seasons: []seasonJSON{},
	}
	for _, f := range s.Figures {
		if j := figureOf(f); j != nil {
			out.Figures = append(out.Figures, *j)
		}
	}
	for _, season := range s.Seasons {
		out.Seasons = append(out.Seasons, seasonJSON{
			Season: string(season.Season), Exists: season.Exists, Reason: season.Reason,
			Start: figureOf(season.Start), Earliest: season.Earliest, Latest: season.Latest,
		})
	}
	return out
}
