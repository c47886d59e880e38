package theme

import (
	"fyne.io/fyne/v2"

	"fourturn/assets"
)

// Fonts are made once: the toolkit caches their faces by resource.
var (
	textRegular    = font("OpenSans-Regular.ttf")
	textBold       = font("OpenSans-Semibold.ttf")
	textItalic     = font("OpenSans-Italic.ttf")
	textBoldItalic = font("OpenSans-SemiboldItalic.ttf")
	heading        = font("Vollkorn-SemiBold.ttf")
	formula        = font("Vollkorn-Italic.ttf")
)

// HeadingFont returns the serif for headings, for canvas.Text.FontSource.
func HeadingFont() fyne.Resource { return heading }

// FormulaFont returns the italic serif for formulas and asides.
func FormulaFont() fyne.Resource { return formula }

// BoldFont returns the semibold sans, for canvas.Text.FontSource.
func BoldFont() fyne.Resource { return textBold }

func font(name string) fyne.Resource {
	content, err := assets.Fonts.ReadFile("fonts/" + name)
	if err != nil {
		panic("theme: font is missing: " + name)
	}
	return fyne.NewStaticResource(name, content)
}
