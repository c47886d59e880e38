// Package desktop is the shell around the rooms: the rail, the page, the panel
// with the working of a figure, the line at the foot, notices, dialogs, and the
// one table of actions from which the menus, the shortcuts and the page of help
// are made.
//
// A [Shell] knows no room by name. Package main hands it a list of them
// ([Room]); a room is made when it is first opened. The shell listens to the
// session and has the room in sight read its screen again; a room out of sight
// is refreshed when somebody comes back to it.
//
// Undo, cut, copy and paste ask what has the focus first, so that they work in a
// field as everywhere else.
//
// Nothing here runs beside the interface. Files are the session's business; only
// lists of earlier copies and of unsaved work, a few small files, are read here.
//
// Limits: the toolkit's menus know no keys without Ctrl, Alt or Cmd, so Esc and F1
// are keys of the canvas and reach the shell only where nothing else takes them.
package desktop
