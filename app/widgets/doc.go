// Package widgets holds the drawn parts of Fourturn's screens. They know nothing
// of plans or pots: they take plain data, words already translated, and functions
// to call back.
//
// # Use
//
// Make a widget once with New…, keep it, and give it new data with Set…; both must
// happen on the interface goroutine. Set draws what changed. Functions named On…
// are called after a person acted; the widget then shows the new state only if the
// caller sets it, except where the comment says otherwise, so that the model stays
// the one truth.
//
// # Rules kept by every widget
//
//   - Colours and sizes come from the theme in Refresh, so that light, dark, high
//     contrast and the text size change at once.
//   - All that the mouse can do, the keyboard can. The focus is a ring in pen blue.
//     Enter or Space presses; F1 opens a working; Esc gives up or closes.
//   - Nothing is told by colour alone: a sign, a hatch or a word goes with it.
//   - A name and a role for screen readers (fyne.Accessible).
//   - Canvas objects are made once and moved; nothing runs beside the interface.
//
// Days are whole numbers counted from any day the caller likes; lengths in drawings
// are metres; shares are 0 to 1.
package widgets
