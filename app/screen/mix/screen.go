// Package mix is the mix and what is to buy: litres and slow release a pot for the next
// change-out, a season or the year, and the cheapest bags that cover them.
//
// It draws nothing.
package mix

import (
	"slices"

	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/quantity"
)

// Session is the open plan with what is worked out for it.
type Session = session.Session[*planner.Outlook]

// Screen is the page of mix and buying.
type Screen struct {
	session *Session
	words   *words.Words
	span    int       // index into spans
	season  int       // index into the seasons, for the span of a season; 0 is the next
	client  string    // whose pots; "" for all
	best    purchases // of what was last asked for
}

// New returns the page of a session, for the next change-out of all pots.
func New(s *Session, w *words.Words) *Screen { return &Screen{session: s, words: w} }

// The spans that can be bought for.
var spans = [...]string{"mix_buying.span_next", "mix_buying.span_season", "mix_buying.span_year"}

const (
	nextSpan, seasonSpan, yearSpan = 0, 1, 2

	yearDays = 365
)

func (s *Screen) outlook() *planner.Outlook {
	all, _ := s.session.Outlook()
	return all
}

// Known reports whether anything is worked out yet.
func (s *Screen) Known() bool { return s.outlook() != nil }

// Spans returns what can be bought for, with the number of the chosen one.
func (s *Screen) Spans() (names []string, chosen int) {
	for _, key := range spans {
		names = append(names, s.words.T(key))
	}
	return names, s.span
}

// ChooseSpan buys for another span.
func (s *Screen) ChooseSpan(i int) {
	if i >= 0 && i < len(spans) {
		if i == seasonSpan && s.span != seasonSpan {
			s.season = s.nextSeason()
		}
		s.span = i
	}
}

// Seasons returns the plantings that a season can be bought for, with the number of the
// chosen one, or nothing where the span is none.
func (s *Screen) Seasons() (names []string, chosen int) {
	if s.span != seasonSpan {
		return nil, 0
	}
	for _, season := range planner.Seasons {
		names = append(names, s.words.T("plan.season."+string(season)))
	}
	return names, s.season
}

// ChooseSeason buys for the change-outs into another season.
func (s *Screen) ChooseSeason(i int) {
	if i >= 0 && i < len(planner.Seasons) {
		s.season = i
	}
}

// nextSeason is the number of the season of the next change-out.
func (s *Screen) nextSeason() int {
	all := s.outlook()
	if all == nil {
		return 0
	}
	year := planner.Span{From: all.Today, To: all.Today.AddDays(yearDays), Client: s.bought()}
	first, _ := s.nextChangeOut(year)
	for _, n := range all.Needs(year) {
		if stand := &all.Pots[n[0]].Stands[n[1]]; stand.From == first {
			return slices.Index(planner.Seasons[:], stand.Season)
		}
	}
	return 0
}

// Clients returns whose pots can be bought for, "all pots" first, with the number of
// the chosen one.
func (s *Screen) Clients() (names []string, chosen int) {
	names = []string{s.words.T("mix_buying.all_pots")}
	for _, c := range s.clients() {
		names = append(names, c)
		if c == s.client {
			chosen = len(names) - 1
		}
	}
	return names, chosen
}

func (s *Screen) clients() []string {
	var list []string
	for _, p := range s.session.Plan().Pots {
		if p.Client != "" && !slices.Contains(list, p.Client) {
			list = append(list, p.Client)
		}
	}
	return list
}

// bought is the client whose pots are bought for; one who has no pots any more gives
// way to all.
func (s *Screen) bought() string {
	if slices.Contains(s.clients(), s.client) {
		return s.client
	}
	return ""
}

// ChooseClient buys for one client's pots; 0 for all.
func (s *Screen) ChooseClient(i int) {
	s.client = ""
	if list := s.clients(); i > 0 && i <= len(list) {
		s.client = list[i-1]
	}
}

// buySpan returns the chosen span of days of an outlook that is there.
func (s *Screen) buySpan() planner.Span {
	all := s.outlook()
	span := planner.Span{From: all.Today, To: all.Today.AddDays(yearDays), Client: s.bought()}
	switch s.span {
	case nextSpan:
		span.From, span.To = s.nextChangeOut(span)
	case seasonSpan:
		span.Season = planner.Seasons[s.season]
	}
	return span
}

// nextChangeOut returns the days of the next change-out of a season: from the first pot
// that changes until two weeks later, which takes in the pots at other spots.
func (s *Screen) nextChangeOut(year planner.Span) (from, to civil.Date) {
	const together = 14
	all := s.outlook()
	first := civil.Date(0)
	for _, n := range all.Needs(year) {
		if day := all.Pots[n[0]].Stands[n[1]].From; first.IsZero() || day < first {
			first = day
		}
	}
	if first.IsZero() {
		return year.From, year.To
	}
	return first, first.AddDays(together)
}

// Days writes out which days are bought for.
func (s *Screen) Days() string {
	if !s.Known() {
		return ""
	}
	span := s.buySpan()
	return s.words.DateRange(span.From, span.To.AddDays(-1))
}

// Figure is a value with its working, written out.
type Figure struct {
	Label  string
	Value  string
	Soft   bool
	Figure planner.Figure
}

func (s *Screen) figure(key string, f planner.Figure) Figure {
	if f.IsZero() {
		return Figure{Label: s.words.T(key), Value: "–"}
	}
	trace := f.Working()
	value := s.words.Value(f.Value, s.session.Plan().Units)
	return Figure{Label: s.words.T(key), Value: value, Soft: trace.Soft(), Figure: f}
}

func (s *Screen) byHand(key string, by planner.ByHand) Figure {
	return Figure{Label: s.words.T(key), Value: s.hands(by), Soft: len(by.Hands) > 0, Figure: by.Figure}
}

// Row is one change-out of one pot.
type Row struct {
	Pot    string
	Season string
	When   string
	Mix    Figure
	Pails  Figure // the same as it is measured by hand
	Charge Figure
	Spoons Figure // the same as it is measured by hand
}

// Rows returns the change-outs of the span.
func (s *Screen) Rows() []Row {
	all := s.outlook()
	if all == nil {
		return nil
	}
	var rows []Row
	for _, n := range all.Needs(s.buySpan()) {
		p := &all.Pots[n[0]]
		stand := &p.Stands[n[1]]
		name := p.Pot.Label()
		rows = append(rows, Row{
			Pot: name, Season: s.words.T("plan.season." + string(stand.Season)), When: s.words.ShortDate(stand.From),
			Mix: s.figure("mix_buying.mix", stand.Mix), Pails: s.byHand("mix_buying.pails", all.MixByHand(stand.Mix)),
			Charge: s.figure("mix_buying.charge", stand.Charge), Spoons: s.byHand("mix_buying.spoons", all.ChargeByHand(stand.Charge)),
		})
	}
	return rows
}

// Totals returns the sums of the rows: loose mix and slow release.
func (s *Screen) Totals() (loose, charge string) {
	all := s.outlook()
	if all == nil {
		return "", ""
	}
	litres, kilograms := 0.0, 0.0
	for _, n := range all.Needs(s.buySpan()) {
		stand := &all.Pots[n[0]].Stands[n[1]]
		litres += stand.Mix.Number()
		if !stand.Charge.IsZero() {
			kilograms += stand.Charge.Number()
		}
	}
	units := s.session.Plan().Units
	return s.words.Volume(quantity.Volume(litres), units), s.words.Mass(quantity.Mass(kilograms), units)
}
