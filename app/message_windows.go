package main

import (
	"syscall"
	"unsafe"
)

// showMessage shows a message of the system: a program for windows has no console to
// say it on.
func showMessage(title, text string) {
	box := syscall.NewLazyDLL("user32.dll").NewProc("MessageBoxW")
	t, errTitle := syscall.UTF16PtrFromString(title)
	m, errText := syscall.UTF16PtrFromString(text)
	if errTitle != nil || errText != nil || box.Find() != nil {
		return
	}
	const iconError = 0x10 // MB_OK | MB_ICONERROR of the Windows API
	_, _, _ = box.Call(0, uintptr(unsafe.Pointer(m)), uintptr(unsafe.Pointer(t)), iconError)
}
