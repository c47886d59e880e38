package theme

import (
	"image/color"

	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"
)

// palette holds a colour for every name.
type palette map[fyne.ThemeColorName]color.NRGBA

// rgb returns the opaque colour 0xRRGGBB.
func rgb(v uint32) color.NRGBA {
	return color.NRGBA{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v), A: 0xff}
}

// clear returns colour c with the given opacity, 0 to 255.
func clear(c color.NRGBA, alpha uint8) color.NRGBA {
	c.A = alpha
	return c
}

// base holds the few decisions from which a whole palette follows.
type base struct {
	paper, surface, margin     uint32 // grounds
	ink, inkSoft               uint32 // text
	rule, outline              uint32 // lines
	primary, onPrimary         uint32 // what acts
	pen, ribbon                uint32 // what opens; bookmark
	note, noteWash             uint32
	caution, cautionWash       uint32
	warning, warningWash       uint32
	wrong, wrongWash           uint32
	good, goodWash             uint32
	soil, soilMark             uint32
	water, waterMark           uint32
	cold, coldWash             uint32
	warm, warmWash             uint32
	sun                        uint32
	disabled, onStrong, shadow uint32
	categories                 [Categories]pair
}

// pair is the strong and the pale colour of one category.
type pair struct{ edge, wash uint32 }

// build names every colour.
func (b base) build() palette {
	ink, pen := rgb(b.ink), rgb(b.pen)
	p := palette{
		fynetheme.ColorNameBackground:                rgb(b.paper),
		fynetheme.ColorNameButton:                    rgb(b.margin),
		fynetheme.ColorNameDisabled:                  rgb(b.disabled),
		fynetheme.ColorNameDisabledButton:            rgb(b.margin),
		fynetheme.ColorNameError:                     rgb(b.wrong),
		fynetheme.ColorNameFocus:                     clear(pen, 0x3c),
		fynetheme.ColorNameForeground:                ink,
		fynetheme.ColorNameForegroundOnError:         rgb(b.onStrong),
		fynetheme.ColorNameForegroundOnPrimary:       rgb(b.onPrimary),
		fynetheme.ColorNameForegroundOnSuccess:       rgb(b.onStrong),
		fynetheme.ColorNameForegroundOnWarning:       rgb(b.onStrong),
		fynetheme.ColorNameHeaderBackground:          rgb(b.margin),
		fynetheme.ColorNameHover:                     clear(ink, 0x12),
		fynetheme.ColorNameHyperlink:                 pen,
		fynetheme.ColorNameInnerWindowBorder:         rgb(b.margin),
		fynetheme.ColorNameInnerWindowBorderInactive: rgb(b.paper),
		fynetheme.ColorNameInputBackground:           rgb(b.surface),
		fynetheme.ColorNameInputBorder:               rgb(b.outline),
		fynetheme.ColorNameMenuBackground:            rgb(b.surface),
		fynetheme.ColorNameOverlayBackground:         rgb(b.surface),
		fynetheme.ColorNamePlaceHolder:               rgb(b.inkSoft),
		fynetheme.ColorNamePressed:                   clear(ink, 0x20),
		fynetheme.ColorNamePrimary:                   rgb(b.primary),
		fynetheme.ColorNameScrollBar:                 rgb(b.outline),
		fynetheme.ColorNameScrollBarBackground:       rgb(b.margin),
		fynetheme.ColorNameSelection:                 clear(pen, 0x40),
		fynetheme.ColorNameSeparator:                 rgb(b.rule),
		fynetheme.ColorNameShadow:                    clear(rgb(b.shadow), 0x38),
		fynetheme.ColorNameSuccess:                   rgb(b.good),
		fynetheme.ColorNameWarning:                   rgb(b.warning),

		ColorSurface: rgb(b.surface), ColorMargin: rgb(b.margin),
		ColorInkSoft: rgb(b.inkSoft),
		ColorRule:    rgb(b.rule), ColorOutline: rgb(b.outline),
		ColorPen: pen, ColorLate: rgb(b.wrong), ColorRibbon: rgb(b.ribbon),
		ColorNoteWash: rgb(b.noteWash),
		ColorCaution:  rgb(b.caution), ColorCautionWash: rgb(b.cautionWash),
		ColorWarningWash: rgb(b.warningWash), ColorErrorWash: rgb(b.wrongWash),
		ColorGood: rgb(b.good), ColorGoodWash: rgb(b.goodWash),
		ColorToday: rgb(b.ribbon),
		ColorSoil:  rgb(b.soil), ColorSoilMark: rgb(b.soilMark),
		ColorWater: rgb(b.water), ColorWaterMark: rgb(b.waterMark),
		ColorCold: rgb(b.cold), ColorColdWash: rgb(b.coldWash),
		ColorWarm: rgb(b.warm), ColorWarmWash: rgb(b.warmWash),
		ColorSun: rgb(b.sun),
	}
	p.paint(b.categories)
	return p
}

// paint names the colours of the categories.
func (p palette) paint(categories [Categories]pair) {
	for i, c := range categories {
		p[CategoryEdge(i)] = rgb(c.edge)
		p[CategoryWash(i)] = rgb(c.wash)
	}
}
