package desktop

import (
	"fyne.io/fyne/v2"

	"fourturn/app/words"
)

// undoer is a field with an undo of its own for what is typed in it.
type undoer interface {
	Undo()
	Redo()
}

// typist is a field that says whether something is typed in it that is not in the
// plan yet. A field that does not say so is taken to be.
type typist interface{ Typing() bool }

// focusedUndoer returns the field whose typing undo and redo are about, or nil.
func (s *Shell) focusedUndoer() undoer {
	focused := s.Canvas().Focused()
	if t, ok := focused.(typist); ok && !t.Typing() {
		return nil
	}
	u, _ := focused.(undoer)
	return u
}

// Undo takes back what was typed in the field that has the focus, else the last
// edit of the plan.
func (s *Shell) Undo() {
	if field := s.focusedUndoer(); field != nil {
		field.Undo()
		return
	}
	if step, ok := s.session.UndoStep(); ok && !s.dialogOpen() {
		s.session.Undo()
		s.Status(s.words.T("desktop.undone", words.A{"edit": s.stepName(step)}))
	}
}

// Redo does again what [Shell.Undo] took back.
func (s *Shell) Redo() {
	if field := s.focusedUndoer(); field != nil {
		field.Redo()
		return
	}
	if step, ok := s.session.RedoStep(); ok && !s.dialogOpen() {
		s.session.Redo()
		s.Status(s.words.T("desktop.redone", words.A{"edit": s.stepName(step)}))
	}
}

// dialogOpen reports whether something lies over the page.
func (s *Shell) dialogOpen() bool { return s.Canvas().Overlays().Top() != nil }

func (s *Shell) canUndo() bool {
	_, ok := s.session.UndoStep()
	return ok || s.focusedUndoer() != nil
}

func (s *Shell) canRedo() bool {
	_, ok := s.session.RedoStep()
	return ok || s.focusedUndoer() != nil
}

func (s *Shell) undoLabel() string {
	if step, ok := s.session.UndoStep(); ok {
		return s.words.T("desktop.undo_named", words.A{"edit": s.stepName(step)})
	}
	return s.words.T("desktop.undo")
}

func (s *Shell) redoLabel() string {
	if step, ok := s.session.RedoStep(); ok {
		return s.words.T("desktop.redo_named", words.A{"edit": s.stepName(step)})
	}
	return s.words.T("desktop.redo")
}

// toFocus gives a shortcut to what has the focus, which may know what to do.
func (s *Shell) toFocus(shortcut fyne.Shortcut) {
	if focused, ok := s.Canvas().Focused().(fyne.Shortcutable); ok {
		focused.TypedShortcut(shortcut)
	}
}

func (s *Shell) cut()       { s.toFocus(&fyne.ShortcutCut{Clipboard: s.config.App.Clipboard()}) }
func (s *Shell) copy()      { s.toFocus(&fyne.ShortcutCopy{Clipboard: s.config.App.Clipboard()}) }
func (s *Shell) paste()     { s.toFocus(&fyne.ShortcutPaste{Clipboard: s.config.App.Clipboard()}) }
func (s *Shell) selectAll() { s.toFocus(&fyne.ShortcutSelectAll{}) }
