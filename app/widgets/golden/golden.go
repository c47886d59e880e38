// Package golden compares what a test draws with what was looked at and accepted:
// pictures by day and by lamplight, and the structure as markup.
//
// Masters lie in testdata beside the test. To accept a change, run the test with
// FOURTURN_UPDATE=1 in the environment and look at every picture that changed.
package golden

import (
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/software"
	"fyne.io/fyne/v2/test"

	"fourturn/app/theme"
)

// Updating reports whether masters are being written instead of compared.
func Updating() bool { return os.Getenv("FOURTURN_UPDATE") != "" }

// App returns a test app with our look, ended with the test.
func App(t testing.TB, options theme.Options) fyne.App {
	t.Helper()
	a := test.NewTempApp(t)
	a.Settings().SetTheme(theme.New(options))
	return a
}

// Check draws what build makes on a page of the given size, light and dark, and
// compares it with NAME-light.png, NAME-dark.png and NAME.markup.
func Check(t *testing.T, name string, size fyne.Size, build func() fyne.CanvasObject) {
	t.Helper()
	for _, page := range []struct {
		name string
		mode theme.Mode
	}{{"light", theme.Light}, {"dark", theme.Dark}} {
		App(t, theme.Options{Mode: page.mode})
		w := window(t, size, build())
		Picture(t, name+"-"+page.name+".png", w.Canvas())
		if page.mode == theme.Light {
			Markup(t, name+".markup", w.Canvas())
		}
	}
}

// CheckWith draws one picture with the given options.
func CheckWith(t *testing.T, name string, options theme.Options, size fyne.Size, build func() fyne.CanvasObject) {
	t.Helper()
	App(t, options)
	w := window(t, size, build())
	Picture(t, name+".png", w.Canvas())
}

// CheckPages draws a page by day and by lamplight at each of some sizes and compares it
// with NAME-WIDTHxHEIGHT-light.png and -dark.png.
func CheckPages(t *testing.T, name string, sizes []fyne.Size, build func() fyne.CanvasObject) {
	t.Helper()
	for _, size := range sizes {
		for mode, page := range map[theme.Mode]string{theme.Light: "light", theme.Dark: "dark"} {
			CheckWith(t, fmt.Sprintf("%s-%.0fx%.0f-%s", name, size.Width, size.Height, page), theme.Options{Mode: mode}, size, build)
		}
	}
}

// CheckAtScale draws one picture as on a screen with scale pixels to a unit.
func CheckAtScale(t *testing.T, name string, scale float32, size fyne.Size, build func() fyne.CanvasObject) {
	t.Helper()
	App(t, theme.Options{Mode: theme.Light})
	w := window(t, size, build())
	w.Canvas().(software.WindowlessCanvas).SetScale(scale)
	w.Resize(size.AddWidthHeight(1, 1))
	w.Resize(size)
	Picture(t, name+".png", w.Canvas())
}

// window shows an object in a window of the given size. It is laid out twice,
// because text that wraps knows its height only once it knows its width; a real
// window does the same while it is drawn.
func window(t *testing.T, size fyne.Size, o fyne.CanvasObject) fyne.Window {
	t.Helper()
	w := test.NewTempWindow(t, o)
	w.SetPadded(false)
	w.Resize(size.AddWidthHeight(1, 1))
	w.Resize(size)
	return w
}

// Picture compares the canvas with the master picture, or writes it.
func Picture(t *testing.T, file string, c fyne.Canvas) {
	t.Helper()
	if !Updating() {
		test.AssertRendersToImage(t, file, c)
		return
	}
	out := create(t, file)
	defer out.Close()
	if err := png.Encode(out, c.Capture()); err != nil {
		t.Fatal(err)
	}
}

// Markup compares the structure of the canvas with the master, or writes it.
func Markup(t *testing.T, file string, c fyne.Canvas) {
	t.Helper()
	if !Updating() {
		test.AssertRendersToMarkup(t, file, c)
		return
	}
	out := create(t, file)
	defer out.Close()
	if _, err := out.WriteString(test.RenderToMarkup(c)); err != nil {
		t.Fatal(err)
	}
}

func create(t *testing.T, file string) *os.File {
	t.Helper()
	path := filepath.Join("testdata", file)
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	out, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	return out
}
