package versions

import (
	"slices"

	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner/planfile"
)

// Row is one place at which another version differs from the plan.
type Row struct {
	Place  string
	Was    string // what both began from
	Mine   string
	Theirs string
	Taken  planfile.Side
	// Remark says why there is nothing to choose, or that only one side changed the
	// value; it may be "".
	Remark string
	Choice bool // whether the person chooses
}

// Merge is another version of the plan that waits for a person's choices.
type Merge struct {
	merging *session.Merging
	rows    []Row
	asked   []int // the conflict of each row with a choice, in the order of the rows; −1 for others
}

// NewMerge returns the choices between a plan and another version of it. What needs a
// word of the person comes first, then what only one side changed, then what comes in
// without a question.
func NewMerge(m *session.Merging, r *Reader) *Merge {
	merge := &Merge{merging: m}
	rank := func(c planfile.Conflict) int {
		switch {
		case c.Fixed:
			return 2
		case c.OneSided:
			return 1
		}
		return 0
	}
	for wanted := range 3 {
		for i, c := range m.Conflicts {
			if rank(c) != wanted {
				continue
			}
			merge.rows = append(merge.rows, r.conflict(c))
			if c.Fixed {
				i = -1
			}
			merge.asked = append(merge.asked, i)
		}
	}
	for _, d := range m.Incoming {
		if stillInUse(m.Conflicts, d) {
			continue // told as a conflict
		}
		merge.rows = append(merge.rows, r.incoming(d))
		merge.asked = append(merge.asked, -1)
	}
	return merge
}

func stillInUse(conflicts []planfile.Conflict, d planfile.Difference) bool {
	return slices.ContainsFunc(conflicts, func(c planfile.Conflict) bool {
		return c.Kind == planfile.StillInUse && slices.Equal(c.Where, d.Where)
	})
}

func (r *Reader) conflict(c planfile.Conflict) Row {
	said := r.Contents(c.Steps, c.Base, c.Mine, c.Theirs)
	row := Row{Place: r.Place(c.Steps), Was: said[0], Mine: said[1], Theirs: said[2], Taken: c.Taken, Choice: !c.Fixed}
	switch {
	case c.Kind == planfile.StillInUse:
		row.Mine, row.Theirs, row.Remark = "", "", r.words.T("versions.still_in_use")
	case c.Fixed:
		row.Remark = r.words.T("versions.follows")
	case c.Kind == planfile.DeletedMine:
		row.Mine, row.Remark = r.words.T("versions.removed"), r.words.T("versions.deleted_mine")
	case c.Kind == planfile.DeletedTheirs:
		row.Theirs, row.Remark = r.words.T("versions.removed"), r.words.T("versions.deleted_theirs")
	case c.OneSided && c.Taken == planfile.Theirs:
		row.Remark = r.words.T("versions.only_theirs")
	case c.OneSided:
		row.Remark = r.words.T("versions.only_mine")
	}
	return row
}

// incoming is a change of the other version that nothing here speaks against.
func (r *Reader) incoming(d planfile.Difference) Row {
	line := r.Line(d)
	return Row{Place: line.Place, Was: line.Before, Mine: line.Before, Theirs: line.After, Taken: planfile.Theirs, Remark: r.words.T("versions.comes_in")}
}

// Rows returns the places in the order in which they are shown.
func (m *Merge) Rows() []Row { return m.rows }

// Questions returns how many places the person chooses at, and Comes how many
// changes come in without a question.
func (m *Merge) Questions() int {
	n := 0
	for _, row := range m.rows {
		if row.Choice {
			n++
		}
	}
	return n
}

// Take chooses the side of one row. A row without a choice stays as it is.
func (m *Merge) Take(row int, side planfile.Side) {
	if row >= 0 && row < len(m.rows) && m.rows[row].Choice {
		m.rows[row].Taken = side
	}
}

// Turn chooses the other side of one row.
func (m *Merge) Turn(row int) {
	if row >= 0 && row < len(m.rows) {
		m.Take(row, planfile.Theirs-m.rows[row].Taken)
	}
}

// TakeAll chooses the same side everywhere.
func (m *Merge) TakeAll(side planfile.Side) {
	for row := range m.rows {
		m.Take(row, side)
	}
}

// Chooser returns the choices for [session.Session.BringIn]. It is asked for the
// conflicts in their order, and a conflict that nobody was shown gets the usual side.
func (m *Merge) Chooser() func(planfile.Conflict) planfile.Side {
	type answer struct {
		conflict planfile.Conflict
		side     planfile.Side
	}
	answers := make([]answer, 0, len(m.asked))
	sides := map[int]planfile.Side{}
	for row, i := range m.asked {
		if i >= 0 {
			sides[i] = m.rows[row].Taken
		}
	}
	for i, c := range m.merging.Conflicts {
		if side, ok := sides[i]; ok {
			answers = append(answers, answer{c, side})
		}
	}
	return func(c planfile.Conflict) planfile.Side {
		for i, a := range answers {
			if a.conflict.Kind == c.Kind && slices.Equal(a.conflict.Where, c.Where) {
				answers = answers[i+1:]
				return a.side
			}
		}
		return c.Taken
	}
}

// Summary says in a sentence what there is to choose and what comes in.
func (m *Merge) Summary(w *words.Words) string {
	questions := m.Questions()
	rest := len(m.rows) - questions
	switch {
	case questions == 0:
		return w.T("versions.no_questions", words.A{"count": rest})
	case rest == 0:
		return w.T("versions.questions", words.A{"count": questions})
	}
	return w.T("versions.questions", words.A{"count": questions}) + " " + w.T("versions.rest", words.A{"count": rest})
}
