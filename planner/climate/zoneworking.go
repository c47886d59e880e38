package climate

import "fourturn/planner/working"

// HardinessWorking returns the trace of the hardiness zone, from the mean yearly
// lowest temperature.
func (c *Climate) HardinessWorking() working.Trace {
	extreme := c.ExtremeMin()
	from := extreme.Working()
	return working.Trace{
		Name: "climate.hardiness_zone", Formula: "zone = ⌊(T + 60 °F) / 10 °F⌋ + 1, a below the middle of the zone, b above",
		Inputs: []working.Input{
			{Symbol: "T", Name: "climate.extreme_min", Value: working.Number(float64(extreme.Mean), working.Celsius), Source: extreme.source, From: &from},
		},
		Result: working.Text(c.HardinessZone().String()),
		Source: working.Source{Status: working.Published, Cite: "US Department of Agriculture, Plant Hardiness Zone Map: zones of 10 °F of the mean yearly lowest temperature"},
	}
}

// HeatWorking returns the trace of the heat zone, from the days a year above 30 °C.
func (c *Climate) HeatWorking() working.Trace {
	days := c.HotDays(heatZoneLimit)
	from := days.Working()
	return working.Trace{
		Name: "climate.heat_zone", Formula: "bands of n: <1, 7, 14, 30, 45, 60, 90, 120, 150, 180, 210",
		Inputs: []working.Input{
			{Symbol: "n", Name: "climate.hot_days", Value: working.Number(days.Days, working.Day), Source: days.source, From: &from},
		},
		Result: working.Number(float64(c.HeatZone()), working.None),
		Source: working.Source{Status: working.Published, Cite: "American Horticultural Society, Plant Heat-Zone Map 1997"},
	}
}
