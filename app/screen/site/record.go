package site

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/climate"
)

// readingRecord is the work of reading a daily record.
const readingRecord session.Work = "site.reading_record"

// RecordChoice is what a person says of a daily record; zero values let it be found out.
type RecordChoice struct {
	Unit  climate.Unit
	Order climate.DateOrder
	All   bool // all years count, not only the last thirty
}

// Fact is one thing that was understood of a record.
type Fact struct {
	Label, Value string
	Doubtful     bool // guessed: the person should look
}

// SeasonRow is a cold season of a record.
type SeasonRow struct {
	Name, Missing, Lowest, Last, First string
	Counts                             bool
}

// Preview is what was understood of a daily record, before it is taken in.
type Preview struct {
	Name    string
	Choice  RecordChoice
	Facts   []Fact
	Faults  []Fact // what is wrong, what is done about it, and in which lines
	Seasons []SeasonRow
	Problem string // why it cannot be taken in, or ""
	text    []byte
	digest  *climate.Digest
}

// CanRead reports whether a daily record can be read: the site must be on the map, since
// the cold season begins at different times north and south of the equator.
func (s *Screen) CanRead() bool {
	_, ok := s.place()
	return ok || s.Outlook() != nil
}

// ReadFile reads a daily record from a file in the background and hands over what was
// understood of it. The function that it returns gives up.
func (s *Screen) ReadFile(path string, done func(*Preview, error)) (stop func()) {
	south := s.southern()
	return session.Send(s.session, session.Errand[*planner.Outlook, *Preview]{
		Name: readingRecord, Outlasts: true,
		Work: func(context.Context, *planner.Outlook) (*Preview, error) {
			text, err := readWhole(path)
			if err != nil {
				return nil, err
			}
			return s.look(filepath.Base(path), text, RecordChoice{}, south), nil
		},
		Done: func(p *Preview, err error) {
			if err != nil && !errors.Is(err, session.ErrStopped) {
				err = &words.Refusal{Text: s.words.T("site.record_unread", words.A{"file": filepath.Base(path), "cause": err.Error()})}
			}
			done(p, err)
		},
	})
}

// readWhole reads a file up to a little more than the loader of records takes.
func readWhole(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, climate.DefaultMaxBytes+1))
}

// ReadPasted reads a daily record from text.
func (s *Screen) ReadPasted(text string) *Preview {
	return s.look(s.words.T("site.pasted"), []byte(text), RecordChoice{}, s.southern())
}

// Reread reads the same record as the person says.
func (s *Screen) Reread(p *Preview, choice RecordChoice) *Preview {
	return s.look(p.Name, p.text, choice, s.southern())
}

func (s *Screen) southern() bool {
	if out := s.Outlook(); out != nil {
		return out.Latitude < 0
	}
	place, _ := s.place()
	return place.Southern()
}

// look reads a record and says what was understood. It reads nothing of the screen but
// its words and units.
func (s *Screen) look(name string, text []byte, choice RecordChoice, south bool) *Preview {
	p := &Preview{Name: name, Choice: choice, text: text}
	record, report, err := climate.ReadDaily(bytes.NewReader(text), climate.ReadOptions{Unit: choice.Unit, Order: choice.Order})
	p.Facts, p.Faults = s.facts(report), s.faults(report)
	if err != nil {
		p.Problem = s.words.T("site.record_no_days")
		if report.Layout == climate.LayoutNone {
			p.Problem = s.words.T("site.record_unreadable")
		}
		return p
	}
	years := 0
	if choice.All {
		years = report.Last.Year() - report.First.Year() + 1
	}
	digest, err := record.Digest(name, south, years)
	if err != nil {
		for _, c := range record.Seasons(south) {
			p.Seasons = append(p.Seasons, s.seasonRow(climate.SeasonDigest{Year: c.From.Year(), Missing: c.Missing}, false))
		}
		p.Problem = s.climateFault(err)
		return p
	}
	p.digest = digest
	p.Seasons = s.seasonRows(digest)
	return p
}

// climateFault writes an error of the climate chapter.
func (s *Screen) climateFault(err error) string {
	fault := new(climate.Error)
	if !errors.As(err, &fault) {
		return err.Error()
	}
	args := words.A{}
	for name, x := range fault.Args {
		args[name] = s.words.Significant(x, 3)
	}
	return s.words.T(fault.Code, args)
}

// facts lists what was understood of a record.
func (s *Screen) facts(r *climate.ReadReport) []Fact {
	w := s.words
	list := []Fact{{Label: w.T("site.record_layout"), Value: words.Capital(w.T(r.Layout.Key()))}}
	if r.Layout == climate.LayoutNone {
		return append(list, Fact{Label: w.T("site.record_lines"), Value: w.Count(r.Lines)})
	}
	if r.Separator != 0 {
		list[0].Value += ", " + w.T(separatorKey(r.Separator))
	}
	columns := []string{r.Date.Name, r.Tmin.Name, r.Tmax.Name}
	for i := range columns {
		if columns[i] == "" {
			columns[i] = "–"
		}
	}
	list = append(list,
		Fact{Label: w.T("site.record_columns"), Value: w.T("site.record_columns_are", words.A{"date": columns[0], "low": columns[1], "high": columns[2]})},
		s.unitFact(r), s.orderFact(r),
		Fact{Label: w.T("site.record_period"), Value: s.period(r.First, r.Last)},
		Fact{Label: w.T("site.record_days"), Value: w.T("site.record_days_are", words.A{"low": w.Count(r.TminDays), "high": w.Count(r.TmaxDays), "all": w.Count(r.AllDays)})})
	if r.Station != "" {
		list = append(list, Fact{Label: w.T("site.record_station"), Value: strings.Join(append([]string{r.Station}, r.OtherStations...), ", "), Doubtful: len(r.OtherStations) > 0})
	}
	if r.Truncated {
		list = append(list, Fact{Label: w.T("site.record_truncated"), Value: w.T("site.record_truncated_is"), Doubtful: true})
	}
	return list
}

func (s *Screen) unitFact(r *climate.ReadReport) Fact {
	if r.Unit == climate.UnitUnknown {
		return Fact{Label: s.words.T("site.record_unit"), Value: "–", Doubtful: true}
	}
	return Fact{
		Label: s.words.T("site.record_unit"), Value: s.words.T(r.Unit.Key()) + ", " + s.words.T(r.UnitBy.Key()),
		Doubtful: r.UnitBy == climate.Guessed,
	}
}

func (s *Screen) orderFact(r *climate.ReadReport) Fact {
	if r.Order == climate.OrderUnknown {
		return Fact{Label: s.words.T("site.record_order"), Value: "–", Doubtful: true}
	}
	return Fact{
		Label: s.words.T("site.record_order"), Value: s.words.T(r.Order.Key()) + ", " + s.words.T(r.OrderBy.Key()),
		Doubtful: r.OrderBy == climate.Guessed,
	}
}

func (s *Screen) period(from, to civil.Date) string {
	if from.IsZero() {
		return "–"
	}
	return s.words.Date(from) + " – " + s.words.Date(to)
}

func separatorKey(sep rune) string {
	switch sep {
	case ';':
		return "site.separator_semicolon"
	case '\t':
		return "site.separator_tab"
	case '|':
		return "site.separator_bar"
	}
	return "site.separator_comma"
}

// shownGaps is how many of a record's gaps are named, the longest.
const shownGaps = 5

// faults lists what is wrong with a record, with what is done about it and where.
func (s *Screen) faults(r *climate.ReadReport) []Fact {
	var list []Fact
	for _, f := range r.Faults {
		list = append(list, Fact{Label: s.words.T("site.record_times", words.A{"count": f.Count}), Value: words.Capital(s.words.T(f.Fault.Key())) + s.lines(f)})
	}
	if n := len(r.Gaps); n > 0 {
		days := 0
		for _, g := range r.Gaps {
			days += g.Days()
		}
		list = append(list, Fact{
			Label: s.words.T("site.record_gaps", words.A{"count": n}),
			Value: s.words.T("site.record_gaps_are", words.A{"days": s.words.Days(days), "list": s.longestGaps(r.Gaps)}),
		})
	}
	return list
}

// lines names the first lines of a fault.
func (s *Screen) lines(f climate.FaultCount) string {
	const most = 6
	var names []string
	for _, line := range f.Lines[:min(most, len(f.Lines))] {
		names = append(names, fmt.Sprint(line))
	}
	more := ""
	if f.Count > len(names) {
		more = " …"
	}
	return s.words.T("site.record_at_lines", words.A{"count": len(names), "lines": strings.Join(names, ", ") + more})
}

// seasonRows writes the cold seasons of a record.
func (s *Screen) seasonRows(d *climate.Digest) []SeasonRow {
	var list []SeasonRow
	for _, season := range d.Seasons {
		list = append(list, s.seasonRow(season, season.Counts()))
	}
	return list
}

func (s *Screen) seasonRow(d climate.SeasonDigest, told bool) SeasonRow {
	row := SeasonRow{Name: s.words.T("site.cold_season", words.A{"from": fmt.Sprint(d.Year), "to": fmt.Sprintf("%02d", (d.Year+1)%100)}), Missing: s.words.Count(d.Missing), Counts: d.Counts()}
	if told {
		row.Lowest = s.temperature(d.Lowest)
		row.Last, row.First = s.words.T("site.no_freeze"), s.words.T("site.no_freeze")
	}
	if !d.Last.IsZero() {
		row.Last = s.words.MonthDay(d.Last)
	}
	if !d.First.IsZero() {
		row.First = s.words.MonthDay(d.First)
	}
	return row
}

// SeasonFacts are the cold seasons of a preview in words.
func (s *Screen) SeasonFacts(p *Preview) []Fact {
	var list []Fact
	for _, row := range p.Seasons {
		key := "site.season_is"
		if !row.Counts || row.Lowest == "" {
			key = "site.season_left_out"
		}
		list = append(list, Fact{Label: row.Name, Value: s.words.T(key, words.A{"missing": row.Missing, "lowest": row.Lowest, "last": row.Last, "first": row.First})})
	}
	return list
}

// Uncounted names the seasons that do not count, of those that a preview shows.
func (p *Preview) Uncounted() (names []string) {
	for _, row := range p.Seasons {
		if !row.Counts {
			names = append(names, row.Name)
		}
	}
	return names
}

// TakeRecord makes what a record tells the site's climate.
func (s *Screen) TakeRecord(p *Preview) error {
	if p.digest == nil {
		return &words.Refusal{Text: p.Problem}
	}
	return s.edit("site.edit_record", func(site *planner.Site) {
		site.Record = p.digest
		if site.Latitude != nil || site.Station != "" {
			return
		}
		if out := s.Outlook(); out != nil { // a site that knew its place only from its climate keeps it
			place := out.Climate().Place()
			site.Latitude, site.Longitude = &place.Latitude, &place.Longitude
		}
	})
}

// DropRecord takes the record out of the plan.
func (s *Screen) DropRecord() error {
	return s.edit("site.edit_record_drop", func(site *planner.Site) { site.Record = nil })
}

// Record returns what the plan keeps of the site's daily record; false without one.
func (s *Screen) Record() (facts []Fact, seasons []SeasonRow, ok bool) {
	site := s.Chosen()
	if site == nil || site.Record == nil {
		return nil, nil, false
	}
	d, w := site.Record, s.words
	seasons = s.seasonRows(d)
	counted := 0
	for _, row := range seasons {
		if row.Counts {
			counted++
		}
	}
	return []Fact{
		{Label: w.T("site.record_file"), Value: d.Name},
		{Label: w.T("site.record_counts"), Value: s.period(d.From, d.To)},
		{Label: w.T("site.record_days"), Value: w.T("site.record_days_are", words.A{"low": w.Count(d.TminDays), "high": w.Count(d.TmaxDays), "all": w.Count(int(d.To-d.From) + 1)})},
		{Label: w.T("site.record_seasons"), Value: w.T("site.record_seasons_are", words.A{"counted": counted, "all": len(seasons)})},
	}, seasons, true
}
