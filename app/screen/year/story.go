package year

import (
	"fourturn/app/words"
	"fourturn/planner"
)

// Figure is a value with its working, written out.
type Figure struct {
	Label  string
	Value  string
	Soft   bool
	Figure planner.Figure
}

// Chapter is one planting of a pot's story.
type Chapter struct {
	Segment int // on the strip
	Title   string
	Plants  string // with counts
	Told    Told
	Figures []Figure
	Refused string // that the planting is refused and stands all the same, or ""
}

// Story is what stands in a pot from today on: what, when and why.
type Story struct {
	Title    string
	About    string
	Chapters []Chapter
	Bans     []string // what is refused for the pot, in words
}

// mostChapters is a year and what follows it.
const mostChapters = 6

// Story returns the story of the pot of a row.
func (s *Screen) Story(row int) Story {
	p := s.pot(row)
	if p == nil {
		return Story{}
	}
	story := Story{Title: p.Pot.Label(), About: s.aboutPot(p)}
	for k := range p.Stands {
		if st := &p.Stands[k]; st.To > s.Today() && len(story.Chapters) < mostChapters {
			story.Chapters = append(story.Chapters, s.chapter(row, k, p, st))
		}
	}
	for _, ban := range p.Pot.Bans {
		story.Bans = append(story.Bans, s.banText(ban))
	}
	return story
}

func (s *Screen) aboutPot(p *planner.PotOutlook) string {
	about := ""
	if p.Spot != nil {
		about = s.words.T("year.stands_at", words.A{"place": p.Spot.Label()})
	}
	if p.Pot.Client != "" {
		about = s.words.T("year.of_client", words.A{"place": about, "client": p.Pot.Client})
	}
	return about
}

func (s *Screen) chapter(row, segment int, p *planner.PotOutlook, st *planner.Stand) Chapter {
	c := Chapter{
		Segment: segment, Told: s.Tell(row, segment), Plants: s.plants(st),
		Title: s.words.T("year.chapter", words.A{"season": s.words.T("plan.season." + string(st.Season)), "planting": s.name(s.outlook().Plan, st)}),
	}
	for _, one := range []struct {
		key    string
		figure planner.Figure
	}{{"year.display_days", st.Display}, {"year.fresh_mix", st.Mix}, {"year.charge", st.Charge}, {"year.spent", st.Spent}} {
		if f, ok := s.figure(one.key, one.figure); ok {
			c.Figures = append(c.Figures, f)
		}
	}
	if s.isRefused(p.Pot, st) {
		c.Refused = s.words.T("year.stands_refused")
	}
	return c
}

// plants writes out what is planted, with counts.
func (s *Screen) plants(st *planner.Stand) string {
	var list []string
	for _, p := range st.Plants {
		count := 0
		if !p.Count.IsZero() {
			count = int(p.Count.Number())
		}
		name := p.Plant
		if p.Known != nil {
			name = p.Known.Name()
		}
		list = append(list, s.words.T("year.plants", words.A{"n": s.words.Count(count), "plant": name}))
	}
	return s.words.List(list...)
}

func (s *Screen) figure(key string, f planner.Figure) (Figure, bool) {
	if f.IsZero() {
		return Figure{}, false
	}
	trace := f.Working()
	return Figure{Label: s.words.T(key), Value: s.words.Named(key, f.Value, s.session.Plan().Units), Soft: trace.Soft(), Figure: f}, true
}
