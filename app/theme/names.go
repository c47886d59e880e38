package theme

import (
	"strconv"

	"fyne.io/fyne/v2"
)

// Colours of our own, beside those that the toolkit names. Text colours keep
// 4.5:1 against every ground they are used on, drawn lines 3:1.
const (
	ColorSurface     fyne.ThemeColorName = "fourturn.surface"     // a card lying on the page
	ColorMargin      fyne.ThemeColorName = "fourturn.margin"      // the rail beside the page
	ColorInkSoft     fyne.ThemeColorName = "fourturn.inkSoft"     // text that explains
	ColorRule        fyne.ThemeColorName = "fourturn.rule"        // ruled lines, decoration only
	ColorOutline     fyne.ThemeColorName = "fourturn.outline"     // edges and axes that carry meaning
	ColorPen         fyne.ThemeColorName = "fourturn.pen"         // what can be opened; the focus ring
	ColorLate        fyne.ThemeColorName = "fourturn.late"        // overdue
	ColorRibbon      fyne.ThemeColorName = "fourturn.ribbon"      // the bookmark at the chosen room
	ColorNoteWash    fyne.ThemeColorName = "fourturn.noteWash"    // ground of a note
	ColorCaution     fyne.ThemeColorName = "fourturn.caution"     // somebody can be hurt
	ColorCautionWash fyne.ThemeColorName = "fourturn.cautionWash" // ground of a caution
	ColorWarningWash fyne.ThemeColorName = "fourturn.warningWash" // ground of a warning
	ColorErrorWash   fyne.ThemeColorName = "fourturn.errorWash"   // ground of an error
	ColorGood        fyne.ThemeColorName = "fourturn.good"        // edge of a range that suits
	ColorGoodWash    fyne.ThemeColorName = "fourturn.goodWash"    // ground of a range that suits
	ColorToday       fyne.ThemeColorName = "fourturn.today"       // the line of today
	ColorSoil        fyne.ThemeColorName = "fourturn.soil"        // mix in a pot
	ColorSoilMark    fyne.ThemeColorName = "fourturn.soilMark"    // hatch over mix
	ColorWater       fyne.ThemeColorName = "fourturn.water"       // water in a reservoir
	ColorWaterMark   fyne.ThemeColorName = "fourturn.waterMark"   // waves over water
	ColorCold        fyne.ThemeColorName = "fourturn.cold"        // freezing, daily lows
	ColorColdWash    fyne.ThemeColorName = "fourturn.coldWash"    // ground of days that may freeze
	ColorWarm        fyne.ThemeColorName = "fourturn.warm"        // daily highs
	ColorWarmWash    fyne.ThemeColorName = "fourturn.warmWash"    // between daily lows and highs
	ColorSun         fyne.ThemeColorName = "fourturn.sun"         // day length
)

// Categories is how many kinds of area the palettes tell apart; with patterns
// they read without colour.
const Categories = 8

// CategoryEdge names the strong colour of category i, for edges and marks;
// numbers past the last begin again.
func CategoryEdge(i int) fyne.ThemeColorName {
	return fyne.ThemeColorName("fourturn.category" + strconv.Itoa(wrap(i)) + "Edge")
}

// CategoryWash names the pale colour of category i, for grounds under text.
func CategoryWash(i int) fyne.ThemeColorName {
	return fyne.ThemeColorName("fourturn.category" + strconv.Itoa(wrap(i)) + "Wash")
}

func wrap(i int) int { return ((i % Categories) + Categories) % Categories }

// Sizes of text of our own.
const (
	SizeTitle  fyne.ThemeSizeName = "fourturn.title"  // the heading of a page
	SizeFigure fyne.ThemeSizeName = "fourturn.figure" // a figure that leads a card
)

// The rhythm: every distance is a multiple of 8, halved where things belong
// together. They do not grow with the text, so that large text keeps its room.
const (
	Hair  float32 = 1 // ruled lines
	Half  float32 = 4
	Step  float32 = 8
	Step2 float32 = 16
	Step3 float32 = 24
	Step4 float32 = 32
	Step6 float32 = 48
)

// Target is the least height of what is pressed or focused.
const Target float32 = 32
