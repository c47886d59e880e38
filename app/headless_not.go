//go:build !ci

package main

import "fyne.io/fyne/v2"

// headless says that this build draws in memory and has no window.
const headless = false

// memoryApp returns nil: a build for windows cannot draw without one.
func memoryApp() fyne.App { return nil }
