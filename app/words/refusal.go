package words

// Refusal is why something was not done, such as why what was typed into a field will
// not do. Its text is for the person, and short enough for the line under a field.
type Refusal struct{ Text string }

// Error returns the text.
func (e *Refusal) Error() string { return e.Text }
