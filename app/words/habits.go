package words

import "golang.org/x/text/language"

// habits are how a language, or one region of it, writes dates and money. Names
// and patterns are those of Unicode's CLDR 48 (calendar gregorian: wide and
// abbreviated names, full dates, skeletons MMMd, yMMMd, MMMEd, yMMMM and their
// intervals). One thing differs: the full British date has no comma after the
// weekday, to match CLDR's own shorter form "Wed 14 Apr".
type habits struct {
	months      [12]string
	monthsShort [12]string
	days        [7]string // from Sunday
	daysShort   [7]string

	dayMonth        string // {d} {mon}
	dayMonthYear    string // {d} {mon} {y}
	weekdayDayMonth string // {wd} {d} {mon}
	monthYear       string // {month} {y}
	long            string // {weekday} {d} {month} {y}
	sameMonth       string // {d} {d2} {mon}

	moneyBefore bool // "€12.30", not "12,30 €"
	groupFrom   int  // numbers below this one are written without a separator of thousands
}

// habitsOf returns the habits of a language; one without a table gets the English.
func habitsOf(tag language.Tag) habits {
	base, _ := tag.Base()
	region, confidence := tag.Region()
	switch base.String() {
	case "de":
		return german
	case "es":
		return spanish
	}
	// A bare "en" says nothing about the region: day before month, as most of the
	// world writes it.
	if confidence == language.Exact && region.String() == "US" {
		return american
	}
	return british
}

var british = habits{
	months:          [12]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"},
	monthsShort:     [12]string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sept", "Oct", "Nov", "Dec"},
	days:            [7]string{"Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"},
	daysShort:       [7]string{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"},
	dayMonth:        "{d} {mon}",
	dayMonthYear:    "{d} {mon} {y}",
	weekdayDayMonth: "{wd} {d} {mon}",
	monthYear:       "{month} {y}",
	long:            "{weekday} {d} {month} {y}",
	sameMonth:       "{d} – {d2} {mon}",
	moneyBefore:     true,
}

var american = func() habits {
	h := british
	h.monthsShort[8] = "Sep"
	h.dayMonth = "{mon} {d}"
	h.dayMonthYear = "{mon} {d}, {y}"
	h.weekdayDayMonth = "{wd}, {mon} {d}"
	h.long = "{weekday}, {month} {d}, {y}"
	h.sameMonth = "{mon} {d} – {d2}"
	return h
}()

var german = habits{
	months:          [12]string{"Januar", "Februar", "März", "April", "Mai", "Juni", "Juli", "August", "September", "Oktober", "November", "Dezember"},
	monthsShort:     [12]string{"Jan.", "Feb.", "März", "Apr.", "Mai", "Juni", "Juli", "Aug.", "Sept.", "Okt.", "Nov.", "Dez."},
	days:            [7]string{"Sonntag", "Montag", "Dienstag", "Mittwoch", "Donnerstag", "Freitag", "Samstag"},
	daysShort:       [7]string{"So.", "Mo.", "Di.", "Mi.", "Do.", "Fr.", "Sa."},
	dayMonth:        "{d}. {mon}",
	dayMonthYear:    "{d}. {mon} {y}",
	weekdayDayMonth: "{wd}, {d}. {mon}",
	monthYear:       "{month} {y}",
	long:            "{weekday}, {d}. {month} {y}",
	sameMonth:       "{d}.–{d2}. {mon}",
}

var spanish = habits{
	months:          [12]string{"enero", "febrero", "marzo", "abril", "mayo", "junio", "julio", "agosto", "septiembre", "octubre", "noviembre", "diciembre"},
	monthsShort:     [12]string{"ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sept", "oct", "nov", "dic"},
	days:            [7]string{"domingo", "lunes", "martes", "miércoles", "jueves", "viernes", "sábado"},
	daysShort:       [7]string{"dom", "lun", "mar", "mié", "jue", "vie", "sáb"},
	dayMonth:        "{d} {mon}",
	dayMonthYear:    "{d} {mon} {y}",
	weekdayDayMonth: "{wd}, {d} {mon}",
	monthYear:       "{month} de {y}",
	long:            "{weekday}, {d} de {month} de {y}",
	sameMonth:       "{d}–{d2} {mon}",
	groupFrom:       10_000, // CLDR: minimumGroupingDigits 2 for es
}
