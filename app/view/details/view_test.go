package details_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	screen "fourturn/app/screen/details"
	"fourturn/app/screen/screentest"
	"fourturn/app/theme"
	"fourturn/app/view/details"
	"fourturn/app/widgets/golden"
)

func open(t *testing.T, options theme.Options, size fyne.Size) (*screentest.Desk, fyne.Window) {
	t.Helper()
	golden.App(t, options)
	w := test.NewTempWindow(t, container.NewCenter(widget.NewLabel("")))
	w.Resize(size)
	d := screentest.Open(t, screentest.LongestNames(t), screentest.SummerDay)
	details.Open(screen.New(d.Session, d.Words), d.Words, shell{w})
	w.Resize(size.AddWidthHeight(1, 1))
	w.Resize(size)
	return d, w
}

type shell struct{ window fyne.Window }

func (s shell) Canvas() fyne.Canvas { return s.window.Canvas() }

func TestPictures(t *testing.T) {
	for _, one := range []struct {
		name    string
		options theme.Options
		size    fyne.Size
	}{
		{"light-900x600", theme.Options{Mode: theme.Light}, fyne.NewSize(900, 600)},
		{"dark-1280x800", theme.Options{Mode: theme.Dark}, fyne.NewSize(1280, 800)},
		{"contrast-900x600", theme.Options{Mode: theme.Light, HighContrast: true, TextScale: 1.15}, fyne.NewSize(900, 600)},
	} {
		_, w := open(t, one.options, one.size)
		golden.Picture(t, one.name+".png", w.Canvas())
	}
}

func TestWhatIsTypedIsKeptAtTheEnd(t *testing.T) {
	d, w := open(t, theme.Options{}, fyne.NewSize(900, 600))
	field := w.Canvas().Focused().(interface{ SetText(string) })
	field.SetText("Roof")
	before := d.Plan()
	w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if w.Canvas().Overlays().Top() != nil || d.Plan() == before || d.Plan().Title != "Roof" {
		t.Errorf("the title is %q", d.Plan().Title)
	}
	d, w = open(t, theme.Options{}, fyne.NewSize(900, 600))
	before = d.Plan()
	w.Canvas().Focused().(interface{ SetText(string) }).SetText("Cellar")
	w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape}) // puts the field back
	w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if w.Canvas().Overlays().Top() != nil || d.Plan() != before {
		t.Errorf("Esc kept %q", d.Plan().Title)
	}
}
