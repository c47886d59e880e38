package desktop

import (
	"slices"

	"fourturn/app/session"
	"fourturn/app/theme"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
)

// textScales are the sizes of text to choose from, each about a seventh larger.
var textScales = []float32{0.8, 0.9, 1, 1.15, 1.3, 1.5, 1.75, 2}

// changeLook changes, shows and remembers the look.
func (s *Shell) changeLook(change func(*theme.Options)) {
	options := s.settings.Look()
	change(&options)
	s.settings.SetLook(options)
	s.config.App.Settings().SetTheme(theme.New(options))
	s.content.Refresh()
	s.refreshMenus()
}

// textStep returns where the size of text is among those to choose from.
func (s *Shell) textStep() int {
	i, _ := slices.BinarySearch(textScales, s.settings.Look().TextScale)
	return min(i, len(textScales)-1)
}

func (s *Shell) canGrow() bool   { return s.textStep() < len(textScales)-1 }
func (s *Shell) canShrink() bool { return s.textStep() > 0 }

func (s *Shell) stepText(steps int) { s.setText(textScales[s.textStep()+steps]) }

func (s *Shell) setText(scale float32) {
	s.changeLook(func(o *theme.Options) { o.TextScale = scale })
	s.Status(s.words.T("desktop.text_is", words.A{"size": s.words.Percent(float64(scale))}))
}

func (s *Shell) textLabel() string {
	return s.words.T("desktop.text_usual", words.A{"size": s.words.Percent(float64(s.settings.Look().TextScale))})
}

// setUnits changes the units of the plan. It is an edit like any other.
func (s *Shell) setUnits(system quantity.System) {
	err := s.session.Do("desktop.edit_units", []finding.Arg{textArg("units", unitNames[system])}, func(p planner.Plan) (planner.Plan, error) {
		if p.Units == system {
			return p, session.ErrNothingToDo
		}
		p.Units = system
		return p, nil
	})
	if err != nil {
		s.fail("desktop.not_done", err)
	}
}

var unitNames = map[quantity.System]string{
	quantity.Metric:      "desktop.units_metric",
	quantity.USCustomary: "desktop.units_us",
}

func (s *Shell) setLanguage(language string) {
	if language == s.words.Language() {
		return
	}
	s.settings.SetLanguage(language)
	s.config.Reword()
}
