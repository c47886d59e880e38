package feeding_test

import (
	"testing"

	"fyne.io/fyne/v2"

	"fourturn/app/screen/screentest"
)

// The whole page, so that what lies below the fold is looked at too.
func TestTheWholePage(t *testing.T) {
	check(t, "whole", screentest.Example(t), fyne.NewSize(1000, 2200))
}
