// Package ics writes a calendar file (iCalendar, RFC 5545) of all-day entries and
// reads its own files back.
//
// Entries are dates without a clock or a zone (section 3.3.4), so that a round on
// Saturday is Saturday on every phone. Reminders are display alarms relative to
// the start of the day (section 3.8.6.3). Lines end in CRLF and are folded at 75
// octets (section 3.1); text is escaped (section 3.3.11).
//
// A calendar that imports the file again updates its entries instead of doubling
// them: each keeps its UID (section 3.8.4.7), a changed one counts up its SEQUENCE
// (section 3.8.7.4), and one that fell away is written once more as CANCELLED
// (section 3.8.1.11). [Update] works that out from the file written before. Give a
// UID to what stays the same when a date moves, such as the third round of a year,
// and not to the date.
//
// The package knows entries only: it imports no plan. The caller gives the stamp,
// since nothing here asks for the time.
package ics
