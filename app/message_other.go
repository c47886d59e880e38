//go:build !windows

package main

// showMessage does nothing: the message stands on the standard error.
func showMessage(_, _ string) {}
