package planner

import (
	"fourturn/planner/climate"
	"fourturn/planner/finding"
)

// sites works out the climate of every site.
func (w *workOut) sites() {
	w.years = map[yearKey]seasonDays{}
	w.Sites = make([]SiteOutlook, len(w.Plan.Sites))
	for i := range w.Plan.Sites {
		site := &w.Plan.Sites[i]
		w.Sites[i] = SiteOutlook{Site: site}
		if _, ok := climate.StationByID(site.Station); !ok {
			w.find("plan.no_station", finding.Warning, finding.Where{"sites", site.ID})
		}
	}
}

func (w *workOut) seasonDaysOf(spot *Spot, site *SiteOutlook, year int) seasonDays { return nil }
func (w *workOut) meanTemperature(out *PotOutlook, s *Stand) float64               { return 15 }
func (w *workOut) spent(out *PotOutlook, s *Stand)                                 {}
func (w *workOut) rounds()                                                         {}
