package desktop

import "os"

// PickFile asks for a file that a page reads, such as a list from a spreadsheet. takes
// says which files are listed, by name; title is the key of what is asked.
func (s *Shell) PickFile(title string, takes func(name string) bool, choose func(path string)) {
	f := s.newFileDialog("", exists, choose)
	f.browser.takes = takes
	f.browser.show(f.browser.folder)
	f.show(s, title, "desktop.open_accept")
}

// exists is the check of a file that is to be read.
func exists(path string) error {
	_, err := os.Stat(path)
	return err
}
