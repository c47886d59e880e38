package working

// Status says how far a value can be trusted.
type Status string

// The kinds of ground that a value can stand on, firmest first.
const (
	Definition     Status = "definition"      // exact by definition or by geometry
	Entered        Status = "entered"         // typed in by the person
	Published      Status = "published"       // read in the named source
	Derived        Status = "derived"         // arithmetic on published values
	Estimated      Status = "estimated"       // by a calibration, with its error
	CommonPractice Status = "common_practice" // common practice, no source
	Memory         Status = "memory"          // from memory of the named source, not checked
	Judgement      Status = "judgement"       // the planner's own, to be changed by the person
)

// Source says where a value or a formula is from. Cite is the reference as one
// would print it, or empty for common practice and for what the person typed.
type Source struct {
	Status Status
	Cite   string
}

// Soft reports whether the person should be told that the value is not from a
// checked source.
func (s Source) Soft() bool {
	switch s.Status {
	case Estimated, CommonPractice, Memory, Judgement:
		return true
	case Definition, Entered, Published, Derived:
		return false
	}
	return true
}
