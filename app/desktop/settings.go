package desktop

import (
	"slices"

	"fyne.io/fyne/v2"

	"fourturn/app/theme"
)

// Settings are what is remembered between starts, in the preferences of the
// toolkit. The plan is never kept there.
type Settings struct{ preferences fyne.Preferences }

// The names in the preferences.
const (
	keyStarted   = "started"
	keyWidth     = "window_width"
	keyHeight    = "window_height"
	keyMode      = "page" // "", "light" or "dark"
	keyContrast  = "high_contrast"
	keyColorSafe = "color_safe"
	keyTextScale = "text_scale"
	keyLanguage  = "language"
	keyRecent    = "recent_plans"
	keyCrash     = "told_crash"
)

const recentKept = 8 // plans; a list that can be read at a glance

// The window: as small as it may become, and as it is at the first start.
var (
	LeastWindow = fyne.NewSize(900, 600)
	FirstWindow = fyne.NewSize(1280, 800)
)

// NewSettings returns the settings in some preferences.
func NewSettings(preferences fyne.Preferences) *Settings { return &Settings{preferences} }

// Started reports whether the program was started before, and remembers that it
// is now.
func (s *Settings) Started() bool {
	before := s.preferences.Bool(keyStarted)
	s.preferences.SetBool(keyStarted, true)
	return before
}

// Window returns the size of the window when it was last closed.
func (s *Settings) Window() fyne.Size {
	size := fyne.NewSize(
		float32(s.preferences.FloatWithFallback(keyWidth, float64(FirstWindow.Width))),
		float32(s.preferences.FloatWithFallback(keyHeight, float64(FirstWindow.Height))),
	)
	return size.Max(LeastWindow)
}

// SetWindow remembers the size of the window.
func (s *Settings) SetWindow(size fyne.Size) {
	s.preferences.SetFloat(keyWidth, float64(size.Width))
	s.preferences.SetFloat(keyHeight, float64(size.Height))
}

var modes = map[theme.Mode]string{theme.System: "", theme.Light: "light", theme.Dark: "dark"}

// Look returns the look that was chosen.
func (s *Settings) Look() theme.Options {
	options := theme.Options{
		HighContrast: s.preferences.Bool(keyContrast),
		ColorSafe:    s.preferences.Bool(keyColorSafe),
		TextScale:    float32(s.preferences.FloatWithFallback(keyTextScale, 1)),
	}
	for mode, name := range modes {
		if name == s.preferences.String(keyMode) {
			options.Mode = mode
		}
	}
	return options
}

// SetLook remembers a look.
func (s *Settings) SetLook(options theme.Options) {
	s.preferences.SetString(keyMode, modes[options.Mode])
	s.preferences.SetBool(keyContrast, options.HighContrast)
	s.preferences.SetBool(keyColorSafe, options.ColorSafe)
	s.preferences.SetFloat(keyTextScale, float64(options.TextScale))
}

// Language returns the chosen language, or "" to follow the system.
func (s *Settings) Language() string { return s.preferences.String(keyLanguage) }

// SetLanguage remembers a language.
func (s *Settings) SetLanguage(language string) { s.preferences.SetString(keyLanguage, language) }

// Recent returns the paths of the plans that were opened last, the newest first.
func (s *Settings) Recent() []string { return s.preferences.StringList(keyRecent) }

// AddRecent puts a plan at the head of the list.
func (s *Settings) AddRecent(path string) {
	list := slices.DeleteFunc(slices.Clone(s.Recent()), func(p string) bool { return p == path })
	list = append([]string{path}, list...)
	s.preferences.SetStringList(keyRecent, list[:min(len(list), recentKept)])
}

// ForgetRecent takes a plan off the list, as when it is no longer there.
func (s *Settings) ForgetRecent(path string) {
	s.preferences.SetStringList(keyRecent, slices.DeleteFunc(slices.Clone(s.Recent()), func(p string) bool { return p == path }))
}

// ToldCrash returns the crash file that was last spoken of.
func (s *Settings) ToldCrash() string { return s.preferences.String(keyCrash) }

// SetToldCrash remembers that a crash file was spoken of.
func (s *Settings) SetToldCrash(path string) { s.preferences.SetString(keyCrash, path) }
