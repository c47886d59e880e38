package sketch

import "fourturn/plants"

// Tone says what an area or a line is painted with.
type Tone struct {
	Kind   ToneKind
	Colour plants.Colour // of a Tinted one
	Shade  float64       // from -1, darkest, to 1, lightest
}

// ToneKind is a kind of tone.
type ToneKind int

// The kinds of tone.
const (
	None   ToneKind = iota // not painted
	Tinted                 // in one of the plant's own colours
	Ink                    // the pen
	Faint                  // the pen, pressed lightly
	Paper                  // what is drawn on
)

// RGB returns a colour as a printer of seed packets would mix it: a little muted.
func RGB(c plants.Colour) (r, g, b uint8) {
	rgb, ok := pigments[c]
	if !ok {
		rgb = pigments[plants.Green]
	}
	return uint8(rgb >> 16), uint8(rgb >> 8), uint8(rgb)
}

// pigments are mixed by eye to stay apart from each other on cream paper.
var pigments = map[plants.Colour]uint32{
	plants.White: 0xfdfcf6, plants.Cream: 0xf6ecc4, plants.Yellow: 0xf2cf3f, plants.Gold: 0xdfa827,
	plants.Orange: 0xe88a2e, plants.Apricot: 0xf2b77e, plants.Salmon: 0xee9478, plants.Pink: 0xf0a9b8,
	plants.Rose: 0xdd6c8d, plants.Red: 0xc93a34, plants.Burgundy: 0x84304a, plants.Magenta: 0xbe3f87,
	plants.Purple: 0x7d4a92, plants.Violet: 0x6b5ab0, plants.Lavender: 0xb3a2d6, plants.Blue: 0x4f7cbf,
	plants.Lime: 0xb9cc55, plants.Green: 0x6f9a58, plants.BlueGreen: 0x7aa39b, plants.Grey: 0xa5aba0,
	plants.Silver: 0xcdd5cd, plants.Bronze: 0x95683f, plants.Brown: 0x8a6547, plants.Black: 0x3d3440,
}

// darkness is how dark a colour is in one-colour print, from 0 to 3 sets of lines.
func darkness(c plants.Colour) int {
	switch c {
	case plants.White, plants.Cream, plants.Yellow, plants.Silver, plants.Lime, plants.Green, plants.Apricot:
		return 0
	case plants.Pink, plants.Lavender, plants.Gold, plants.Grey, plants.Salmon, plants.BlueGreen:
		return 1
	case plants.Orange, plants.Rose, plants.Red, plants.Magenta, plants.Violet, plants.Blue, plants.Bronze, plants.Brown:
		return 2
	case plants.Purple, plants.Burgundy, plants.Black:
		return 3
	}
	return 0
}
