package main

import (
	"fmt"
	"io"
	"text/tabwriter"

	"fourturn/app/words"
	"fourturn/planner"
)

// writeFigures writes everything worked out for a plan as tables for a person.
func writeFigures(w io.Writer, words *words.Words, o *planner.Outlook) {
	t := &textTables{w: w, words: words, outlook: o}
	fmt.Fprintf(w, "%s — %s\n", o.Plan.Title, words.LongDate(o.Today))
	t.sites()
	t.pots()
	t.years()
	t.feeds()
	t.buying()
	t.findings()
}

// textTables are the tables of one outlook.
type textTables struct {
	w       io.Writer
	words   *words.Words
	outlook *planner.Outlook
}

// heading starts a table under its title.
func (t *textTables) heading(key string) *tabwriter.Writer {
	fmt.Fprintf(t.w, "\n%s\n", t.words.T(key))
	return tabwriter.NewWriter(t.w, 0, 0, 2, ' ', 0)
}

// value writes a figure, or a dash where there is none. A figure that rests on an
// estimate has the sign ≈.
func (t *textTables) value(name string, f planner.Figure) string {
	if f.IsZero() {
		return "–"
	}
	trace := f.Working()
	written := t.words.Named(name, f.Value, t.outlook.Plan.Units)
	if trace.Soft() {
		return "≈ " + written
	}
	return written
}

func (t *textTables) sites() {
	table := t.heading("figures.sites")
	for i := range t.outlook.Sites {
		site := &t.outlook.Sites[i]
		fmt.Fprintf(table, "  %s\t%s\t%s\n", site.Site.Name, site.Place, site.Period)
		for _, f := range site.Figures {
			trace := f.Working()
			fmt.Fprintf(table, "  \t%s\t%s\n", t.words.T(trace.Name), t.value(trace.Name, f))
		}
		for _, s := range site.Seasons {
			fmt.Fprintf(table, "  \t%s\t%s\t%s\n", t.words.T("plan.season."+string(s.Season)), t.value("", s.Start), t.words.T(s.Reason))
		}
	}
	table.Flush()
}

func (t *textTables) pots() {
	table := t.heading("figures.pots")
	fmt.Fprintf(table, "  \t%s\t%s\t%s\t%s\t%s\t%s\n", t.words.T("figures.fill"), t.words.T("figures.mix"),
		t.words.T("figures.refresh"), t.words.T("figures.charge"), t.words.T("figures.spoons"), t.words.T("figures.wet"))
	for i := range t.outlook.Pots {
		p := &t.outlook.Pots[i]
		fmt.Fprintf(table, "  %s\t%s\t%s\t%s\t%s\t%s\t%s\n", p.Pot.Name, t.value("", p.Fill), t.value("", p.Mix),
			t.value("", p.Refresh), t.value("", p.Charge), t.value("", p.Spoons), t.value("", p.Wet))
	}
	table.Flush()
}

func (t *textTables) years() {
	table := t.heading("figures.years")
	for i := range t.outlook.Pots {
		p := &t.outlook.Pots[i]
		for k := range p.Stands {
			s := &p.Stands[k]
			name := ""
			if k == 0 {
				name = p.Pot.Name
			}
			fmt.Fprintf(table, "  %s\t%s\t%s\t%s\t%s\t%s\n", name, t.words.T("plan.season."+string(s.Season)),
				t.words.Date(s.From), t.value("", s.Mix), t.value("", s.Charge), t.plants(s))
		}
	}
	table.Flush()
}

func (t *textTables) plants(s *planner.Stand) string {
	var list []string
	for _, p := range s.Plants {
		name := p.Plant
		if p.Known != nil {
			name = p.Known.Name()
		}
		count := 0
		if !p.Count.IsZero() {
			count = int(p.Count.Number())
		}
		list = append(list, fmt.Sprintf("%d × %s", count, name))
	}
	return t.words.List(list...)
}

// feedsShown is how many coming rounds the table lists.
const feedsShown = 12

func (t *textTables) feeds() {
	table := t.heading("figures.rounds")
	shown := 0
	for _, r := range t.outlook.Rounds {
		if r.Done {
			continue
		}
		if shown++; shown > feedsShown {
			break
		}
		fmt.Fprintf(table, "  %s\t%s\t%s\t%s\t%s\n", t.words.WeekdayDate(r.Date), t.outlook.Plan.ProductLabel(r.Product),
			t.words.T("figures.round_pots", words.A{"count": len(r.Pots)}), t.value("feed.water", r.Water), t.value("", r.Dose))
	}
	table.Flush()
}

func (t *textTables) buying() {
	table := t.heading("figures.buying")
	for _, b := range t.outlook.Buying {
		name := t.words.T("figures.potting_mix")
		if b.Product != "" {
			name = t.outlook.Plan.ProductLabel(b.Product)
		}
		fmt.Fprintf(table, "  %s\t%s\n", name, t.value("", b.Need))
	}
	table.Flush()
}

func (t *textTables) findings() {
	if len(t.outlook.Findings) == 0 {
		return
	}
	table := t.heading("figures.findings")
	for _, f := range t.outlook.Findings {
		fmt.Fprintf(table, "  %s\t%s\t%s\n", t.words.Severity(f.Severity), t.words.Place(f.Where), t.words.Finding(f, t.outlook.Plan.Units))
	}
	table.Flush()
}
