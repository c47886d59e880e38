package year

import (
	"slices"
	"time"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/plants"
)

// Tick is the first day of a month with its name, of a year in January; or the first
// day of a week with its number in the month.
type Tick struct {
	Day   civil.Date
	Label string
	Year  bool
}

// Ticks returns the months shown.
func (s *Screen) Ticks() []Tick {
	first, last := s.Span()
	y, m, _ := first.Date()
	var ticks []Tick
	for d := civil.New(y, m+1, 1); d < last; d = d.AddMonths(1) {
		t := Tick{Day: d, Label: s.words.ShortMonth(d.Month())}
		if d.Month() == 1 {
			t.Year, t.Label = true, s.words.MonthYear(d)
		}
		ticks = append(ticks, t)
	}
	return ticks
}

// Weeks returns the Mondays shown.
func (s *Screen) Weeks() []Tick {
	first, last := s.Span()
	if first == last {
		return nil
	}
	const week = 7
	ticks := make([]Tick, 0, int(last-first)/week+1)
	d := first.AddDays((int(time.Monday) - int(first.Weekday()) + week) % week)
	for ; d < last; d = d.AddDays(week) {
		ticks = append(ticks, Tick{Day: d, Label: s.words.Count(d.Day())})
	}
	return ticks
}

// Habit is how a plant grows, as far as it is drawn in small.
type Habit int

// The habits.
const (
	Mounding Habit = iota
	Upright
	Trailing
)

// Plant is one kind of plant of a planting, as it is drawn in small. The colours are
// words of the plant book, or "" where it names none.
type Plant struct {
	Habit  Habit
	Flower string
	Leaf   string
}

// Segment is one planting on a strip.
type Segment struct {
	From, To         civil.Date
	Earliest, Latest civil.Date
	Season           int // 0 spring to 3 winter
	Label            string
	Plants           []Plant
	GoodFrom, GoodTo civil.Date // the days about From that cost little; none where nothing was searched for
	Profile          []float32  // expected display value, 0 to 1, on each day from From; nil where it is not known
	Pinned           bool
	Happened         bool
	Start            planner.Figure
}

// Mark is one feed.
type Mark struct {
	Day  civil.Date
	Turn int // which product of the turn, from 0
	Done bool
}

// Row is one pot.
type Row struct {
	ID       string
	Label    string
	Detail   string
	Segments []Segment
	Feeds    []Mark
}

// Rows returns how many pots are shown.
func (s *Screen) Rows() int { return len(s.visible()) }

// Row returns the strip of one pot.
func (s *Screen) Row(i int) Row {
	all, p := s.outlook(), s.pot(i)
	if p == nil {
		return Row{}
	}
	row := Row{
		ID: p.Pot.ID, Label: p.Pot.Label(),
		Segments: make([]Segment, 0, len(p.Stands)), Feeds: make([]Mark, 0, len(p.Feeds)),
	}
	if p.Spot != nil {
		row.Detail = p.Spot.Label()
	}
	from, curve := p.ValueCurve()
	for k := range p.Stands {
		st := &p.Stands[k]
		row.Segments = append(row.Segments, Segment{
			From: st.From, To: st.To, Earliest: st.Earliest, Latest: st.Latest, Season: seasonIndex(st.Season),
			GoodFrom: st.Good.From, GoodTo: st.Good.Last(), Profile: profile(st, from, curve),
			Label: s.name(all.Plan, st), Plants: small(st.Plants), Pinned: st.Pinned, Happened: st.Happened, Start: st.Start,
		})
	}
	for _, f := range p.Feeds {
		row.Feeds = append(row.Feeds, Mark{Day: f.Date, Turn: turnOf(all.Plan, f.Product), Done: f.Done})
	}
	return row
}

// profile returns the part of a curve that a stand has. Before the first day of the
// curve nothing is known, and the stand is drawn as on that day.
func profile(st *planner.Stand, from civil.Date, curve []float64) []float32 {
	if len(curve) == 0 || st.To <= from || st.From >= from.AddDays(len(curve)) {
		return nil
	}
	values := make([]float32, max(0, int(st.To-st.From)))
	for i := range values {
		at := max(0, min(int(st.From-from)+i, len(curve)-1))
		values[i] = float32(curve[at])
	}
	return values
}

// small returns the kinds of plant as they are drawn in small.
func small(counts []planner.PlantCount) []Plant {
	list := make([]Plant, 0, len(counts))
	used := map[plants.Colour]bool{plants.White: true, plants.Cream: true, plants.Green: true}
	for _, c := range counts {
		p := Plant{Habit: habits[c.Role]}
		if c.Known != nil {
			p.Flower, p.Leaf = telling(c.Known.Colours, used), telling(c.Known.Foliage.Colours, nil)
		}
		list = append(list, p)
	}
	return list
}

// telling returns the colour by which a plant is known best beside others: the first
// that it comes in and that is not used, or its first.
func telling(list []plants.Colour, used map[plants.Colour]bool) string {
	for _, c := range list {
		if used != nil && !used[c] {
			used[c] = true
			return string(c)
		}
	}
	if len(list) == 0 {
		return ""
	}
	return string(list[0])
}

var habits = map[planner.Role]Habit{planner.Thriller: Upright, planner.Filler: Mounding, planner.Spiller: Trailing}

func seasonIndex(season planner.Season) int {
	return max(0, slices.Index(planner.Seasons[:], season))
}

func turnOf(plan *planner.Plan, product string) int {
	for i, id := range plan.Feeding.Turn {
		if id == product {
			return i
		}
	}
	return len(plan.Feeding.Turn)
}

// name names a planting by its recipe, its first plant, or its season.
func (s *Screen) name(plan *planner.Plan, st *planner.Stand) string {
	if r := plan.Recipe(st.Planting.Recipe); r != nil && len(st.Planting.Plants) == 0 && r.Name != "" {
		return r.Name
	}
	if len(st.Plants) > 0 && st.Plants[0].Known != nil {
		return st.Plants[0].Known.Name()
	}
	return s.words.T("plan.season." + string(st.Season))
}
