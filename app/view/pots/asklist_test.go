package pots_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	screen "fourturn/app/screen/pots"
	"fourturn/app/screen/screentest"
	"fourturn/app/theme"
	"fourturn/app/view/pots"
	"fourturn/app/widgets/golden"
)

// pickingShell is a shell that asks for a file; the test chooses one.
type pickingShell struct {
	*shell
	takes  func(string) bool
	choose func(string)
}

func (s *pickingShell) PickFile(_ string, takes func(string) bool, choose func(string)) {
	s.takes, s.choose = takes, choose
}

func written(c fyne.Canvas) string {
	var all []string
	for _, o := range test.LaidOutObjects(c.Overlays().Top()) {
		if l, ok := o.(interface{ AccessibilityLabel() string }); ok {
			all = append(all, l.AccessibilityLabel())
		}
	}
	return strings.Join(all, "|")
}

func TestAListFromAFileIsSeenBeforeItIsTaken(t *testing.T) {
	golden.App(t, theme.Options{Mode: theme.Light})
	d := screentest.Open(t, screentest.Example(t), screentest.SummerDay)
	sh := &pickingShell{shell: &shell{}}
	w := test.NewTempWindow(t, pots.New(screen.New(d.Session, d.Words, d.NewID), d.Words, sh).Object())
	w.SetPadded(false)
	w.Resize(small)
	sh.canvas = w.Canvas()
	before := len(d.Plan().Pots)
	press(t, sh.canvas, "From a list")
	press(t, sh.canvas, "From a file…")
	if sh.choose == nil || !sh.takes("pots.xlsx") || sh.takes("plan.yaml") {
		t.Fatal("nobody was asked for a spreadsheet")
	}
	sh.choose("../../screen/pots/testdata/faulty.xlsx")
	if said := written(sh.canvas); !strings.Contains(said, "Sheet “Faulty”: Line 5, column 2 (shape)") {
		t.Errorf("of a fault it says %q", said)
	}
	sh.choose("../../screen/pots/testdata/pots.xlsx")
	if said := written(sh.canvas); !strings.Contains(said, "Sheet “Pots of the yard”: 3 pots can be added.") || len(d.Plan().Pots) != before {
		t.Errorf("before it is taken it says %q, and the plan has %d pots", said, len(d.Plan().Pots))
	}
	golden.Picture(t, "list-from-file-900x600.png", sh.canvas)
	press(t, sh.canvas, "Add them")
	d.Settle()
	if len(d.Plan().Pots) != before+3 {
		t.Errorf("the plan has %d pots", len(d.Plan().Pots))
	}
}
