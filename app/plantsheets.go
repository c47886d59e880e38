package main

import (
	"image/png"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"

	"fourturn/app/theme"
	"fourturn/app/widgets/plantdraw"
	"fourturn/plants"
)

// drawPlantSheets draws every plant of the built-in book: by day, by lamplight and in
// one colour.
func drawPlantSheets(folder string) error {
	book, err := plants.Builtin()
	if err != nil {
		return err
	}
	for name, palette := range map[string]plantdraw.Palette{
		"plants-sheet-light.png": paletteOf(theme.Light), "plants-sheet-dark.png": paletteOf(theme.Dark), "plants-sheet-mono.png": plantdraw.Print,
	} {
		if err := drawPlantSheet(filepath.Join(folder, name), book, palette); err != nil {
			return err
		}
	}
	return nil
}

func paletteOf(mode theme.Mode) plantdraw.Palette {
	var variant fyne.ThemeVariant // the mode is in the theme itself
	return plantdraw.PaletteOf(theme.New(theme.Options{Mode: mode, TextScale: 1}), variant, theme.ColorSurface)
}

func drawPlantSheet(path string, book *plants.Book, palette plantdraw.Palette) error {
	const columns, cell = 8, 180
	out, err := os.Create(path)
	if err != nil {
		return err
	}
	if err := png.Encode(out, plantdraw.Contact(book.Plants(), columns, cell, palette)); err != nil {
		_ = out.Close()
		return err
	}
	return out.Close()
}
