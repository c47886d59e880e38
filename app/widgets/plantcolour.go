package widgets

import "image/color"

// plantColours are the colours that plant labels name, as pigments on paper: chosen by
// eye to stay apart in small.
var plantColours = map[string]uint32{
	"white": 0xf7f5ec, "cream": 0xf3e8c4, "yellow": 0xf2d13f, "gold": 0xd9a521, "orange": 0xe27a25,
	"apricot": 0xf0ac72, "salmon": 0xee8b77, "pink": 0xeda3b8, "rose": 0xd9587d, "red": 0xc02f2b,
	"burgundy": 0x6e1f33, "magenta": 0xb5307f, "purple": 0x6b3a8c, "violet": 0x7b5bb5, "lavender": 0xb7a3d6,
	"blue": 0x4a6fc0, "lime": 0xb4cc4e, "green": 0x5c8f43, "blue_green": 0x4f8a80, "grey": 0x9aa094,
	"silver": 0xc6cfc9, "bronze": 0x8a6236, "brown": 0x6d4b31, "black": 0x2f2a2d,
}

// PlantColour returns the colour that plant labels call so, or otherwise for a name
// that is not known.
func PlantColour(name, otherwise string) color.NRGBA {
	v, ok := plantColours[name]
	if !ok {
		v = plantColours[otherwise]
	}
	return color.NRGBA{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v), A: 0xff}
}
