package widgets

import (
	"math"

	"fyne.io/fyne/v2"

	"fourturn/app/theme"
	"fourturn/app/widgets/ink"
)

// potSheet says where the views of a pot lie on the drawing, in units of the
// screen, and at which scale.
type potSheet struct {
	scale float64 // units per metre
	views [2]viewPlace
}

// viewPlace is where one view lies.
type viewPlace struct {
	shown        bool
	metres       box
	left, bottom float64 // of the area, in units
	outer        box     // of the pot itself, without plants
}

// Room that the drawing leaves around the views, in units.
const (
	potMargin  = 6.0
	viewGap    = 28.0
	dimOffset  = 14.0 // from the pot to the dimension line
	groundRise = 8.0  // room under the ground line
)

// layOut fits the views into a size. Text is the height of a caption.
func layOut(data PotData, size fyne.Size, text float32) potSheet {
	var s potSheet
	if data.Side != nil {
		s.views[SideView] = viewPlace{shown: true, metres: data.Side.bounds(), outer: spread(data.Side.Outer, data.Side.Cells)}
	}
	if data.Plan != nil {
		s.views[PlanView] = viewPlace{shown: true, metres: data.Plan.bounds(), outer: spread(data.Plan.Outer, data.Plan.Cells)}
	}
	var margins [2][4]float64 // per view: above, below, left, right
	for v := range margins {
		margins[v] = [4]float64{potMargin, potMargin, potMargin, potMargin}
	}
	margins[SideView][Below] += groundRise
	for _, d := range data.Dimensions {
		room := dimOffset + float64(text)*1.6
		if d.Edge == LeftOf || d.Edge == RightOf {
			room = dimOffset + float64(text)*4.2
		}
		margins[d.View][d.Edge] = math.Max(margins[d.View][d.Edge], room)
	}
	s.fit(size, margins, float64(data.UnitsPerMetre))
	return s
}

// fit works out the scale and places the views side by side, standing on one line.
func (s *potSheet) fit(size fyne.Size, margins [2][4]float64, fixed float64) {
	free, tallest, count := float64(size.Width), 0.0, 0
	high := math.Inf(1)
	width := 0.0
	for v, place := range s.views {
		if !place.shown || place.metres.empty() {
			continue
		}
		m := margins[v]
		free -= m[LeftOf] + m[RightOf]
		width += place.metres.width()
		tallest = place.metres.height()
		high = math.Min(high, (float64(size.Height)-m[Above]-m[Below])/tallest)
		count++
	}
	if count == 0 {
		return
	}
	free -= viewGap * float64(count-1)
	s.scale = math.Max(0, math.Min(free/width, high))
	if fixed > 0 {
		s.scale = fixed
	}
	rest := free - width*s.scale
	x := rest / float64(count+1)
	for v := range s.views {
		place := &s.views[v]
		if !place.shown || place.metres.empty() {
			place.shown = false
			continue
		}
		m := margins[v]
		place.left = x + m[LeftOf]
		place.bottom = float64(size.Height) - m[Below]
		if fixed == 0 || v == int(PlanView) {
			spare := float64(size.Height) - m[Above] - m[Below] - place.metres.height()*s.scale
			place.bottom -= spare / 2
		}
		x = place.left + place.metres.width()*s.scale + m[RightOf] + viewGap + rest/float64(count+1)
	}
}

func (s *potSheet) has(v PotView) bool { return s.views[v].shown && s.scale > 0 }

// point returns where a point lies, in units.
func (s *potSheet) point(v PotView, p Metres) ink.Point {
	place := s.views[v]
	return ink.Point{
		X: place.left + (p.X-place.metres.x0)*s.scale,
		Y: place.bottom - (p.Y-place.metres.y0)*s.scale,
	}
}

// dimension returns the ends of a dimension line, moved outside the pot.
func (s *potSheet) dimension(d PotDimension) (from, to ink.Point) {
	place := s.views[d.View]
	from, to = s.point(d.View, d.From), s.point(d.View, d.To)
	switch d.Edge {
	case Above:
		top := s.point(d.View, Metres{0, place.metres.y1}).Y - float64(theme.Step)
		from.Y, to.Y = top, top
	case Below:
		foot := s.point(d.View, Metres{0, place.metres.y0}).Y + dimOffset
		from.Y, to.Y = foot, foot
	case LeftOf:
		left := s.point(d.View, Metres{place.metres.x0, 0}).X - dimOffset
		from.X, to.X = left, left
	case RightOf:
		right := s.point(d.View, Metres{place.metres.x1, 0}).X + dimOffset
		from.X, to.X = right, right
	}
	return from, to
}
