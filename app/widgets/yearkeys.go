package widgets

import "fyne.io/fyne/v2"

// FocusGained makes the ring of the selected place firm.
func (b *yearBody) FocusGained() {
	b.focused = true
	b.touch()
}

// FocusLost gives up a move and makes the ring thin.
func (b *yearBody) FocusLost() {
	b.focused = false
	b.cancelMove()
}

// TypedRune zooms with + and −, shows everything with 0, scrolls sideways with [ and ]
// and goes to today with T.
func (b *yearBody) TypedRune(r rune) {
	switch r {
	case '+', '=':
		b.chart.SetZoom(b.zoom * zoomStep)
	case '-', '−':
		b.chart.SetZoom(b.zoom / zoomStep)
	case '0':
		b.chart.FitAll()
	case '[':
		b.chart.scrollBy(-b.view.Width/4, 0)
	case ']':
		b.chart.scrollBy(b.view.Width/4, 0)
	case 't', 'T':
		b.chart.ScrollToToday()
	default:
		if b.chart.OnRune != nil {
			b.chart.OnRune(r, b.selected)
		}
	}
}

// TypedKey goes through rows, segments and joints, and moves a joint that was
// taken with Enter.
func (b *yearBody) TypedKey(ev *fyne.KeyEvent) {
	if b.move != nil && b.move.byKey {
		b.moveKey(ev.Name)
		return
	}
	p := b.selected
	switch ev.Name {
	case fyne.KeyUp:
		b.goToRow(p.Row - 1)
	case fyne.KeyDown:
		b.goToRow(p.Row + 1)
	case fyne.KeyPageUp:
		b.goToRow(p.Row - b.page())
	case fyne.KeyPageDown:
		b.goToRow(p.Row + b.page())
	case fyne.KeyHome:
		b.goToRow(0)
	case fyne.KeyEnd:
		b.goToRow(b.data.Rows - 1)
	case fyne.KeyLeft:
		b.goAlong(-1)
	case fyne.KeyRight:
		b.goAlong(1)
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		if p.Joint {
			b.grab(p, true)
			return
		}
		b.chart.open(p)
	case fyne.KeyEscape:
		if b.move != nil {
			b.cancelMove()
			return
		}
		escape(b)
	}
}

// moveKey moves the joint in hand: arrows by a day, Page Up and Page Down by a
// week, Enter puts it down, Esc puts it back.
func (b *yearBody) moveKey(key fyne.KeyName) {
	switch key {
	case fyne.KeyLeft:
		b.moveTo(b.move.day - 1)
	case fyne.KeyRight:
		b.moveTo(b.move.day + 1)
	case fyne.KeyPageUp:
		b.moveTo(b.move.day - 7)
	case fyne.KeyPageDown:
		b.moveTo(b.move.day + 7)
	case fyne.KeyHome:
		b.moveTo(b.move.first)
	case fyne.KeyEnd:
		b.moveTo(b.move.last)
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		b.drop()
	case fyne.KeyEscape:
		b.cancelMove()
	}
}

func (b *yearBody) page() int {
	first, end := b.visible()
	return max(1, end-first-1)
}

// goToRow selects the segment of another row that lies below or above.
func (b *yearBody) goToRow(index int) {
	index = max(0, min(index, b.data.Rows-1))
	if index < 0 || index == b.selected.Row {
		return
	}
	day := b.data.Axis.First
	if s := b.row(b.selected.Row).Segments; b.selected.Segment >= 0 && b.selected.Segment < len(s) {
		at := s[b.selected.Segment]
		day = (max(at.Start, b.data.Axis.First) + min(at.End, b.data.Axis.Last)) / 2
	}
	best := 0
	for i, s := range b.row(index).Segments {
		if s.Start <= day {
			best = i
		}
	}
	b.chart.Select(YearPlace{Row: index, Segment: best})
}

// goAlong goes to the next or previous stop of a row: segment, joint, segment.
func (b *yearBody) goAlong(step int) {
	row, p := b.row(b.selected.Row), b.selected
	if step > 0 {
		switch {
		case p.Joint:
			p.Joint = false
		case p.Segment+1 < len(row.Segments):
			p = YearPlace{p.Row, p.Segment + 1, row.movable(p.Segment+1, b.data.Axis)}
		}
	} else {
		switch {
		case p.Joint || !row.movable(p.Segment, b.data.Axis):
			if p.Segment > 0 {
				p = YearPlace{p.Row, p.Segment - 1, false}
			}
		default:
			p.Joint = true
		}
	}
	b.chart.Select(p)
}
