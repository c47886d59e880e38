package site

import "fourturn/planner/climate"

// The readings of a record that a person may choose; the first lets it be found out.
var (
	recordUnits  = [...]climate.Unit{climate.UnitUnknown, climate.Celsius, climate.Fahrenheit, climate.TenthsC}
	recordOrders = [...]climate.DateOrder{climate.OrderUnknown, climate.YearMonthDay, climate.DayMonthYear, climate.MonthDayYear}
)

// RecordUnits returns the words for the units that a record may be said to have.
func (s *Screen) RecordUnits() []string {
	list := []string{s.words.T("site.record_find_out")}
	for _, u := range recordUnits[1:] {
		list = append(list, s.words.T(u.Key()))
	}
	return list
}

// RecordOrders returns the words for the orders that its dates may be said to have.
func (s *Screen) RecordOrders() []string {
	list := []string{s.words.T("site.record_find_out")}
	for _, o := range recordOrders[1:] {
		list = append(list, s.words.T(o.Key()))
	}
	return list
}

// WithUnit returns the choice with a unit, by the number of its words.
func (c RecordChoice) WithUnit(i int) RecordChoice {
	c.Unit = recordUnits[i]
	return c
}

// WithOrder returns the choice with an order of dates, by the number of its words.
func (c RecordChoice) WithOrder(i int) RecordChoice {
	c.Order = recordOrders[i]
	return c
}
