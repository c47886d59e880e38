package widgets

import (
	"errors"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"fourturn/app/theme"
	"fourturn/app/widgets/golden"
)

func TestMeasureFieldLook(t *testing.T) {
	golden.Check(t, "measurefield", fyne.NewSize(420, 170), func() fyne.CanvasObject {
		plain := NewMeasureField("Length at the top", "cm, m, in or ft", nil)
		plain.SetValue("90 cm")
		wrong := NewMeasureField("Height", "cm, m, in or ft", func(string) error {
			return errors.New("Between 5 cm and 3 m")
		})
		wrong.SetValue("40 cm")
		wrong.entry.SetText("80 m")
		wrong.Commit()
		focused := NewMeasureField("Width at the base", "", nil)
		focused.SetValue("14 in")
		focused.entry.FocusGained()
		off := NewMeasureField("Volume", "worked out", nil)
		off.SetValue("38.2 L")
		off.Disable()
		return container.NewPadded(container.NewGridWithColumns(2, plain, wrong, focused, off))
	})
}

func TestMeasureFieldCommitsOnEnterAndOnLeaving(t *testing.T) {
	golden.App(t, theme.Options{})
	var got []string
	m := NewMeasureField("Length", "", nil)
	m.onCommit = func(text string) error {
		got = append(got, text)
		m.SetValue(text + " cm")
		return nil
	}
	other := NewMeasureField("Width", "", nil)
	w := test.NewTempWindow(t, container.NewVBox(m, other))
	w.Canvas().Focus(m.entry)
	test.Type(m.entry, "90")
	if len(got) != 0 {
		t.Fatalf("committed %v while typing", got)
	}
	m.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if m.Value() != "90 cm" || m.entry.Text != "90 cm" {
		t.Errorf("value %q, text %q", m.Value(), m.entry.Text)
	}
	m.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn}) // nothing changed
	m.entry.SetText("1 m")
	w.Canvas().Focus(other.entry)
	if want := []string{"90", "1 m"}; !slices.Equal(got, want) {
		t.Errorf("committed %q, want %q", got, want)
	}
}

func TestMeasureFieldRefusesAndReverts(t *testing.T) {
	golden.App(t, theme.Options{})
	m := NewMeasureField("Length", "", func(text string) error {
		if text == "80 m" {
			return errors.New("at most 3 m")
		}
		return nil
	})
	test.NewTempWindow(t, m)
	m.SetValue("90 cm")
	m.entry.SetText("80 m")
	m.Commit()
	if m.Error() != "at most 3 m" || m.entry.Text != "80 m" || m.Value() != "90 cm" {
		t.Errorf("error %q, text %q, value %q", m.Error(), m.entry.Text, m.Value())
	}
	m.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if m.Error() != "" || m.entry.Text != "90 cm" {
		t.Errorf("after Esc: error %q, text %q", m.Error(), m.entry.Text)
	}
	m.entry.SetText("80 m")
	m.Commit()
	m.entry.SetText("90 cm") // typed back by hand: the error must go on commit
	m.Commit()
	if m.Error() != "" {
		t.Errorf("error %q stays beside a good value", m.Error())
	}
}

// A value that comes from elsewhere (undo, a worked-out figure) must not take away
// what somebody is typing.
func TestMeasureFieldKeepsWhatIsBeingTyped(t *testing.T) {
	golden.App(t, theme.Options{})
	m := NewMeasureField("Length", "", nil)
	w := test.NewTempWindow(t, m)
	m.SetValue("90 cm")
	w.Canvas().Focus(m.entry)
	m.entry.SetText("12")
	m.SetValue("95 cm")
	if m.entry.Text != "12" {
		t.Errorf("typed text became %q", m.entry.Text)
	}
	m.Revert()
	if m.entry.Text != "95 cm" {
		t.Errorf("Esc gives %q, want the newest value", m.entry.Text)
	}
}

func TestMeasureFieldSteps(t *testing.T) {
	golden.App(t, theme.Options{})
	m := NewMeasureField("Length", "", nil)
	total := 0
	m.SetOnStep(func(steps int) { total += steps*10 + 1 })
	test.NewTempWindow(t, m)
	m.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	m.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	m.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	if total != 13 {
		t.Errorf("steps summed to %d", total)
	}
}
