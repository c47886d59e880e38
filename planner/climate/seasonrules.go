package climate

import "fourturn/planner/working"

// SeasonRules are the temperatures that open and close the four planting seasons.
// The zero value of a field is not a default: take [DefaultSeasonRules] and change
// it.
type SeasonRules struct {
	Hardy       float64 // °C that hardened cool-season annuals survive in a pot
	Tender      float64 // °C that kills warm-season annuals
	WarmNight   float64 // °C of the mean minimum from which warm-season annuals grow on
	CoolNight   float64 // °C of the mean minimum below which they are spent
	Rise        float64 // K above the year's coldest nights, where those are mild: warm annuals wait for spring all the same
	Growth      float64 // °C of the daily mean below which cool-season annuals stand still
	HeatDay     float64 // °C of the mean maximum beyond which cool-season annuals give up
	HeatNight   float64 // °C of the mean minimum likewise
	YearToYear  float64 // K, standard deviation of a month's mean between years
	ShortestDay int     // fewest days that a season must last to be planted
}

// DefaultSeasonRules are the rules of the plants reference, each with its ground
// in [SeasonRules.Sources].
var DefaultSeasonRules = SeasonRules{
	Hardy: -4.4, Tender: 0, WarmNight: 8.3, CoolNight: 11.4, Rise: 3, Growth: 7.2,
	HeatDay: 26.7, HeatNight: 21.1, YearToYear: 1.4, ShortestDay: 28,
}

// inputs returns the rules as inputs of a trace.
func (r SeasonRules) inputs() []working.Input {
	in := func(symbol, name string, v float64, unit working.Unit, s working.Source) working.Input {
		return working.Input{Symbol: symbol, Name: name, Value: working.Number(v, unit), Source: s}
	}
	return []working.Input{
		in("θh", "climate.rule_hardy", r.Hardy, working.Celsius, working.Source{Status: working.Judgement, Cite: "24 °F, severe freeze in the usual wording of the US weather service; planting reading of it: judgement"}),
		in("θt", "climate.rule_tender", r.Tender, working.Celsius, working.Source{Status: working.Published, Cite: "32 °F, end points of the growing season (National Climate Assessment 2014)"}),
		in("Tn↑", "climate.rule_warm_night", r.WarmNight, working.Celsius, working.Source{Status: working.Memory, Cite: "47 °F, middle of the 45 to 50 °F at which warm annuals are planted out (extension guidance)"}),
		in("Tn↓", "climate.rule_cool_night", r.CoolNight, working.Celsius, working.Source{Status: working.Memory, Cite: "middle of 55 °F for very tender and 50 °F for tender plants (extension guidance)"}),
		in("Δ", "climate.rule_rise", r.Rise, working.Kelvin, working.Source{Status: working.Judgement}),
		in("Tg", "climate.rule_growth", r.Growth, working.Celsius, working.Source{Status: working.Derived, Cite: "45 °F, upper bound of the cold-intermediate class of base temperatures (Michigan State Univ. Extension)"}),
		in("Th", "climate.rule_heat_day", r.HeatDay, working.Celsius, working.Source{Status: working.Published, Cite: "80 °F by day (Texas A&M Univ., HORT 308/609 notes, 2020)"}),
		in("Thn", "climate.rule_heat_night", r.HeatNight, working.Celsius, working.Source{Status: working.Published, Cite: "70 °F by night (Texas A&M Univ., HORT 308/609 notes, 2020)"}),
		in("σ", "climate.rule_year_to_year", r.YearToYear, working.Kelvin, working.Source{Status: working.Estimated, Cite: "typical of the daily series compared in the tests"}),
	}
}
