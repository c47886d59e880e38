//go:build ci

package main

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// headless says that this build draws in memory and has no window.
const headless = true

// memoryApp returns a toolkit that draws in memory and remembers nothing.
func memoryApp() fyne.App { return test.NewApp() }
