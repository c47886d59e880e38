package desktop

import (
	"errors"
	"io/fs"
	"strings"

	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner/finding"
	"fourturn/planner/planfile"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// problemsShown is how many problems of a file a notice lists; the rest is counted.
const problemsShown = 5

// Explain writes an error of the session or of a file in words: what failed, why,
// and what is still safe. An error from elsewhere is written as it says itself.
func Explain(w *words.Words, err error, units quantity.System) string {
	var file *planfile.FileError
	var problems *planfile.Problems
	switch {
	case errors.Is(err, session.ErrReadOnly):
		return w.T("session.read_only")
	case errors.Is(err, session.ErrNoFile):
		return w.T("session.no_file")
	case errors.Is(err, session.ErrMeanwhile):
		return w.T("session.meanwhile")
	case errors.Is(err, session.ErrUnsaved):
		return w.T("session.unsaved")
	case errors.As(err, &file):
		what := w.T(file.TextKey(), words.A{"path": file.Path, "cause": cause(w, file.Err, units)})
		return what + "\n" + w.T(file.SafeKey())
	case errors.As(err, &problems):
		return cause(w, err, units)
	}
	return err.Error()
}

// cause says why something failed.
func cause(w *words.Words, err error, units quantity.System) string {
	var problems *planfile.Problems
	var path *fs.PathError
	switch {
	case errors.As(err, &problems):
		return listProblems(w, problems, units)
	case errors.Is(err, planfile.ErrChanged):
		return w.T("planfile.changed_elsewhere")
	case errors.Is(err, planfile.ErrNewer):
		return w.T("planfile.newer")
	case errors.Is(err, fs.ErrNotExist):
		return w.T("desktop.cause_missing")
	case errors.Is(err, fs.ErrPermission):
		return w.T("desktop.cause_permission")
	case errors.As(err, &path):
		return path.Err.Error()
	}
	return err.Error()
}

// listProblems lists what is wrong in a plan file, each with its place.
func listProblems(w *words.Words, problems *planfile.Problems, units quantity.System) string {
	var lines []string
	for _, p := range problems.List[:min(len(problems.List), problemsShown)] {
		what := w.Finding(p.Finding, units)
		switch {
		case p.Line > 0:
			what = w.T("desktop.problem_at", words.A{"line": p.Line, "column": p.Column, "place": w.Place(p.Where), "what": what})
		case len(p.Where) > 0:
			what = w.Place(p.Where) + ": " + what
		}
		lines = append(lines, what)
	}
	if more := len(problems.List) - len(lines) + problems.More; more > 0 {
		lines = append(lines, w.T("desktop.problems_more", words.A{"count": more}))
	}
	if len(lines) == 1 {
		return lines[0]
	}
	return "\n" + strings.Join(lines, "\n")
}

// stepName returns what an edit is called, for undo and redo.
func (s *Shell) stepName(step session.Step) string {
	return s.words.Finding(finding.Finding{Code: step.Name, Args: step.Args}, s.units())
}

// textArg is an argument of a text.
func textArg(name, text string) finding.Arg {
	return finding.Arg{Name: name, Value: working.Text(text)}
}
