package widgets

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// FormField is one thing to type or to choose.
type FormField struct {
	Key     string // tells the field from the others
	Label   string
	Help    string
	Value   string
	Error   string
	Lines   bool     // a text of several lines
	Options []string // of a choice; nil for what is typed
	Chosen  int

	Take   func(text string) error // takes what was typed
	Choose func(i int)             // takes what was chosen
	Typed  func(text string)       // is told what is being typed; may be nil
}

// Form is fields side by side, and texts of several lines below. As long as the fields
// are the same ones they are kept, so that the one that has the focus keeps it.
type Form struct {
	object, grid, long *fyne.Container
	fields             []*formField
}

type formField struct {
	now     FormField
	measure *MeasureField
	note    *NoteField
	choice  *ChoiceField
}

// NewForm returns an empty form whose fields are laid out by grid.
func NewForm(grid fyne.Layout) *Form {
	f := &Form{grid: container.New(grid), long: container.NewVBox()}
	f.object = container.NewVBox(f.grid, f.long)
	return f
}

// Object returns the form to be shown.
func (f *Form) Object() fyne.CanvasObject { return f.object }

// Set shows fields.
func (f *Form) Set(fields []FormField) {
	same := slices.EqualFunc(f.fields, fields, func(a *formField, b FormField) bool {
		return a.now.Key == b.Key && (a.choice != nil) == (b.Options != nil)
	})
	if !same {
		f.build(fields)
	}
	for i, now := range fields {
		f.fields[i].show(now)
	}
}

func (f *Form) build(fields []FormField) {
	f.fields, f.grid.Objects, f.long.Objects = nil, nil, nil
	for _, now := range fields {
		one := &formField{now: now}
		f.fields = append(f.fields, one)
		switch {
		case now.Options != nil:
			one.choice = NewChoiceField(now.Label, now.Help, now.Options, func(i int) { one.now.Choose(i) })
			f.grid.Add(one.choice)
		case now.Lines:
			one.note = NewNoteField(now.Label, func(text string) error { return one.now.Take(text) })
			f.long.Add(one.note)
		default:
			one.measure = NewMeasureField(now.Label, now.Help, func(text string) error { return one.now.Take(text) })
			one.measure.SetOnTyped(func(text string) {
				if one.now.Typed != nil {
					one.now.Typed(text)
				}
			})
			f.grid.Add(one.measure)
		}
	}
	f.grid.Refresh()
	f.long.Refresh()
}

func (f *formField) show(now FormField) {
	f.now = now
	switch {
	case f.choice != nil:
		f.choice.SetOptions(now.Options)
		f.choice.SetChoice(now.Chosen)
	case f.note != nil:
		f.note.SetValue(now.Value)
	default:
		f.measure.SetLabels(now.Label, now.Help)
		f.measure.SetValue(now.Value)
		f.measure.SetError(now.Error)
	}
}
