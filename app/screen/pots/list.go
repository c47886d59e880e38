package pots

import (
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/finding"
	"fourturn/planner/planfile"
	"fourturn/planner/vessel"
	"fourturn/planner/working"
)

// The columns of a list of pots; only the first three must be there.
const (
	nameColumn = iota
	shapeColumn
	sizesColumn
	spotColumn
	countColumn
	columnCount
)

var columnKeys = [columnCount]string{"pots.list.name", "pots.list.shape", "pots.list.sizes", "pots.list.spot", "pots.list.count"}

// mostListed is how many pots a list may add; more would not fit a plan's file.
const mostListed = 5000

// ListError says where a list of pots cannot be read: the line of the text, and the
// column of the table counted from 1, 0 for the whole line.
type ListError struct {
	Line, Column int
	Text         string // with the place, for the person
}

// Error returns the text.
func (e *ListError) Error() string { return e.Text }

// AddList adds the pots of a list copied from a spreadsheet behind the chosen pot,
// planted like it, and chooses the first. The columns are name, shape, sizes, spot and
// count, parted by tabs, or by semicolons, or by commas; a first row of headings is
// passed over. The error is a [*ListError], or a [words.Refusal] where the plan cannot
// take the pots.
func (s *Screen) AddList(list string) error {
	pots, err := s.ReadList(list)
	if err != nil {
		return err
	}
	after := ""
	if chosen := s.Chosen(); chosen != nil {
		after = chosen.ID
	}
	args := []finding.Arg{{Name: "count", Value: working.Number(float64(len(pots)), working.None)}}
	return s.insert("pots.edit_list", after, pots, args)
}

// ReadList reads the pots of a list as [Screen.AddList] does, and adds none.
func (s *Screen) ReadList(list string) ([]planner.Pot, error) {
	r := csv.NewReader(strings.NewReader(list))
	r.Comma, r.FieldsPerRecord, r.LazyQuotes = separator(list), -1, true
	r.TrimLeadingSpace = r.Comma != '\t' // a tab is a space too
	reading := &listReader{screen: s, csv: r, taken: s.taken()}
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		var parse *csv.ParseError
		if errors.As(err, &parse) {
			return nil, reading.fault(parse.Line, -1, "pots.list.columns", nil)
		}
		if err := reading.row(row); err != nil {
			return nil, err
		}
	}
	if len(reading.pots) == 0 {
		return nil, reading.fault(1, -1, "pots.list.empty", nil)
	}
	return reading.pots, nil
}

// separator is what parts the columns: a tab where there is any, as spreadsheets
// copy, else a semicolon, else a comma.
func separator(list string) rune {
	for _, one := range "\t;" {
		if strings.ContainsRune(list, one) {
			return one
		}
	}
	return ','
}

// listReader reads the rows of a list.
type listReader struct {
	screen *Screen
	csv    *csv.Reader
	taken  taken
	pots   []planner.Pot
	rows   int
}

// fault is a [*ListError] at a column of a line, −1 for the whole line.
func (r *listReader) fault(line, column int, cause string, args words.A) error {
	return r.causeAt(line, column, r.screen.words.T(cause, args))
}

// causeAt is fault with a cause in words.
func (r *listReader) causeAt(line, column int, cause string) error {
	w := r.screen.words
	e := &ListError{Line: line, Column: column + 1}
	a := words.A{"line": line, "column": column + 1, "cause": cause}
	if column < 0 {
		e.Text = w.T("pots.list.at_line", a)
		return e
	}
	a["name"] = w.T(columnKeys[column])
	e.Text = w.T("pots.list.at", a)
	return e
}

func (r *listReader) row(cells []string) error {
	line, _ := r.csv.FieldPos(0)
	for i := range cells {
		cells[i] = strings.Join(strings.Fields(strings.ToValidUTF8(cells[i], "")), " ")
	}
	for len(cells) > 0 && cells[len(cells)-1] == "" { // a wide selection has empty cells
		cells = cells[:len(cells)-1]
	}
	r.rows++
	if len(cells) == 0 || r.rows == 1 && r.isHeading(cells) {
		return nil
	}
	if len(cells) > columnCount {
		return r.fault(line, -1, "pots.list.columns", nil)
	}
	for len(cells) < columnCount {
		cells = append(cells, "")
	}
	pot := planner.Pot{}
	if chosen := r.screen.Chosen(); chosen != nil {
		pot.Spot, pot.Plantings = chosen.Spot, chosen.Plantings
	}
	switch name := cells[nameColumn]; {
	case name == "":
		return r.fault(line, nameColumn, "pots.list.no_name", nil)
	case utf8.RuneCountInString(name) > planfile.MaxName-numberRoom:
		return r.fault(line, nameColumn, "pots.list.long_name", words.A{"most": planfile.MaxName - numberRoom})
	}
	if err := r.vessel(line, &pot, cells[shapeColumn], cells[sizesColumn]); err != nil {
		return err
	}
	if err := r.spot(line, &pot, cells[spotColumn]); err != nil {
		return err
	}
	n, err := r.count(line, cells[countColumn])
	if err != nil {
		return err
	}
	for i := range n {
		one := pot
		r.taken.name(&one, cells[nameColumn], i > 0 || r.taken.names[cells[nameColumn]])
		r.pots = append(r.pots, one)
	}
	return nil
}

// numberRoom is what a number behind a name takes, such as " 5000".
const numberRoom = 6

func (r *listReader) isHeading(cells []string) bool {
	w := r.screen.words
	heads := 0
	for i, cell := range cells {
		if i < columnCount && fold(cell) == fold(w.T(columnKeys[i])) {
			heads++
		}
	}
	return heads > 1 || len(cells) > 1 && fold(cells[1]) == fold(w.T(columnKeys[shapeColumn]))
}

func (r *listReader) count(line int, cell string) (int, error) {
	n := 1
	if cell != "" {
		var err error
		if n, err = strconv.Atoi(cell); err != nil || n < 1 || n > mostAlike {
			return 0, r.fault(line, countColumn, "pots.alike_range", words.A{"most": mostAlike})
		}
	}
	if len(r.pots)+n > mostListed {
		return 0, r.fault(line, -1, "pots.list.too_many", words.A{"most": mostListed})
	}
	return n, nil
}

// spot finds a spot by name or id; none given is that of the chosen pot.
func (r *listReader) spot(line int, pot *planner.Pot, cell string) error {
	plan := r.screen.session.Plan()
	if cell == "" {
		if pot.Spot == "" && len(plan.Spots) > 0 {
			pot.Spot = plan.Spots[0].ID
		}
		return nil
	}
	i := slices.IndexFunc(plan.Spots, func(s planner.Spot) bool {
		return s.ID == cell || fold(s.Name) == fold(cell)
	})
	if i < 0 {
		return r.fault(line, spotColumn, "pots.list.no_spot", words.A{"text": cell})
	}
	pot.Spot = plan.Spots[i].ID
	return nil
}

// vessel reads shape and sizes, or a trade size.
func (r *listReader) vessel(line int, pot *planner.Pot, shape, sizes string) error {
	w := r.screen.words
	if n, ok := r.nominal(shape); ok && sizes == "" {
		pot.Vessel = n.Spec
		return nil
	}
	kind, ok := r.kind(shape)
	if !ok {
		examples := []string{w.T("vessel.kind." + string(vessel.Round)), w.T("vessel.kind." + string(vessel.Trough)), w.T("vessel.kind." + string(vessel.Bowl))}
		return r.fault(line, shapeColumn, "pots.list.no_shape", words.A{"text": shape, "shapes": w.List(examples...)})
	}
	pot.Vessel = vessel.Spec{Kind: kind}
	if err := r.sizes(line, &pot.Vessel, sizes); err != nil {
		return err
	}
	for _, f := range pot.Vessel.Validate() {
		cause := w.T("pots.list.size_wrong", words.A{
			"field": w.T("vessel.field." + string(f.Field)), "cause": r.screen.short([]vessel.Fault{f}, ofPot, f.Field),
		})
		return r.causeAt(line, sizesColumn, cause)
	}
	return nil
}

func (r *listReader) nominal(shape string) (vessel.Nominal, bool) {
	for _, n := range vessel.Nominals() {
		if fold(r.screen.words.T(n.Key)) == fold(shape) {
			return n, true
		}
	}
	return vessel.Nominal{}, false
}

func (r *listReader) kind(shape string) (vessel.Kind, bool) {
	wanted := strings.ReplaceAll(fold(shape), "_", " ")
	for _, k := range vessel.Kinds {
		if wanted == strings.ReplaceAll(string(k), "_", " ") || wanted == fold(r.screen.words.T("vessel.kind."+string(k))) {
			return k, true
		}
	}
	return "", false
}

// sizes reads "45 x 32 x 40 cm": the dimensions of the shape in the order in which
// they stand on the page. Those that may be empty may be left out together.
func (r *listReader) sizes(line int, spec *vessel.Spec, cell string) error {
	w := r.screen.words
	if spec.Kind == vessel.Measured {
		v, err := w.Reader().Volume(cell, r.screen.waterUnit())
		spec.Water = v
		return r.unread(line, r.screen.words.Unread(err))
	}
	all := vessel.Dimensions(spec.Kind, "")
	if len(all) == 0 {
		return r.fault(line, shapeColumn, "pots.list.not_here", words.A{"shape": w.T("vessel.kind." + string(spec.Kind))})
	}
	lengths, err := r.screen.readLengths(cross.Split(cell, -1))
	if err != nil {
		return r.unread(line, err)
	}
	needed := slices.DeleteFunc(slices.Clone(all), func(d vessel.Dimension) bool { return !d.Required })
	dimensions := all
	if len(lengths) == len(needed) {
		dimensions = needed
	}
	if len(lengths) != len(dimensions) {
		var names []string
		for _, d := range needed {
			names = append(names, w.T("vessel.field."+string(d.Field)))
		}
		return r.fault(line, sizesColumn, "pots.list.size_count", words.A{"shape": w.T("vessel.kind." + string(spec.Kind)), "sizes": w.List(names...)})
	}
	for i, d := range dimensions {
		d.Set(spec, lengths[i])
	}
	return nil
}

func (r *listReader) unread(line int, err error) error {
	if err == nil {
		return nil
	}
	return r.causeAt(line, sizesColumn, err.Error())
}
