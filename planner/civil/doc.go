// Package civil holds calendar dates without a clock or a time zone.
//
// A [Date] counts days as the fixed day number (rata die) of Reingold and
// Dershowitz, Calendrical Calculations, 4th ed., Cambridge 2018, chapter 2:
// Monday 1 January of the year 1 in the proleptic Gregorian calendar is day 1.
// Day 0 is the zero value and means "no date". The whole planner takes dates
// from its caller: nothing here asks for today.
//
// A [MonthDay] is a day that comes round every year, such as the published
// date of a last freeze.
package civil
