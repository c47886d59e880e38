package vessel

import (
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// Findings returns what is to be said about the pot itself, at a place.
func (v Vessel) Findings(where finding.Where) []finding.Finding {
	var found []finding.Finding
	add := func(code string, severity finding.Severity, args ...finding.Arg) {
		found = append(found, finding.Finding{Code: code, Severity: severity, Where: where, Args: args})
	}
	h := v.holder()
	if h.spec.NoHoles && !h.spec.Reservoir {
		add("vessel.no_holes", finding.Warning)
	}
	if v.spec.Liner != nil && v.spec.NoHoles && !v.spec.Reservoir {
		add("vessel.empty_outer_pot", finding.Note)
	}
	if h.spec.DrainageLayer > 0 {
		add("vessel.drainage_layer", finding.Note,
			finding.Arg{Name: "volume", Value: working.Number(float64(h.layer()), working.Litre)},
			finding.Arg{Name: "share", Value: working.Number(float64(h.layer()/(h.layer()+v.FillVolume())), working.Share)})
	}
	if data := materials[v.spec.Material]; data.FrostTender {
		add("vessel.frost_tender", finding.Caution, finding.Arg{Name: "material", Value: working.Text("vessel.material." + string(v.spec.Material))})
	}
	const leastShare, mostShare = 0.3, 2.5 // of upright sides over the opening (judgement)
	if h.spec.Kind == Measured && h.spec.Height > 0 && (h.inner.share < leastShare || h.inner.share > mostShare) {
		add("vessel.measured_differs", finding.Warning,
			finding.Arg{Name: "water", Value: working.Number(float64(h.spec.Water), working.Litre)},
			finding.Arg{Name: "upright", Value: working.Number(float64(h.spec.Water)/h.inner.share, working.Litre)})
	}
	if h.spec.Kind == Measured && h.spec.Height == 0 {
		add("vessel.sketch_only", finding.Note)
	}
	return found
}
