// Package assets carries the fonts, the icon and the drawings inside the program,
// so that it looks the same everywhere and needs no file beside it.
//
// The licence of each font lies beside it, and fonts/README.md says what was
// changed. Icons are drawn
// in strokes (icons/strokes) and turned into outlines (icons) by the program in
// app/theme/outline, because the toolkit recolours fills but not strokes.
package assets

import "embed"

// Fonts holds fonts/*.ttf and their licences.
//
//go:embed fonts
var Fonts embed.FS

// Icons holds icons/*.svg, one colour each, on a grid of 24 by 24.
//
//go:embed icons/*.svg
var Icons embed.FS

// Drawings holds drawings/*.svg. Their colours are names of the palette in the
// form "{ink}", to be filled in before use.
//
//go:embed drawings/*.svg
var Drawings embed.FS

// AppIcon is the program's own icon, 512 by 512 pixels, as PNG.
//
//go:embed icon.png
var AppIcon []byte

// Example is the built-in example plan, a plan file that opens at the first start.
//
//go:embed example.yaml
var Example []byte
