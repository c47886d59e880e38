package planner

import (
	"fmt"
	"reflect"
	"strings"
)

// FigurePlace says where in an outlook a figure stands, in terms of the plan: a pot by
// its id, a planting by its season, a round by its day. The same place in the outlook of
// a changed plan holds what has become of the figure. "" is no place.
type FigurePlace string

// PlaceOf returns where a figure of the outlook stands, or "" for a figure that is
// not of it, such as one that a screen added up.
func (o *Outlook) PlaceOf(f Figure) (at FigurePlace) {
	if f.IsZero() {
		return ""
	}
	o.eachFigure(func(place FigurePlace, one Figure) bool {
		if one.trace == f.trace {
			at = place
		}
		return at == ""
	})
	return at
}

// FigureAt returns the figure at a place, or a zero Figure where there is none.
func (o *Outlook) FigureAt(at FigurePlace) (f Figure) {
	if at == "" {
		return f
	}
	o.eachFigure(func(place FigurePlace, one Figure) bool {
		if place == at {
			f = one
		}
		return f.IsZero()
	})
	return f
}

// eachFigure calls yield for the figures of the outlook until it returns false. The
// outlook is read by its fields, so that a new figure needs no word here.
func (o *Outlook) eachFigure(yield func(FigurePlace, Figure) bool) {
	w := figureWalk{yield: yield}
	w.fields(reflect.ValueOf(o).Elem(), "")
}

type figureWalk struct {
	yield func(FigurePlace, Figure) bool
	over  bool
}

var figureType = reflect.TypeFor[Figure]()

func (w *figureWalk) fields(v reflect.Value, at string) {
	for i := range v.NumField() {
		if w.over {
			return
		}
		if field := v.Type().Field(i); field.IsExported() {
			w.value(v.Field(i), at+"/"+field.Name)
		}
	}
}

// value goes on into structs and lists of this package; what is pointed to belongs to
// the plan, the book, or stands elsewhere in the outlook.
func (w *figureWalk) value(v reflect.Value, at string) {
	switch {
	case v.Type() == figureType:
		if f := v.Interface().(Figure); !f.IsZero() {
			w.over = !w.yield(FigurePlace(at), f)
		}
	case v.Kind() == reflect.Struct && v.Type().PkgPath() == figureType.PkgPath():
		w.fields(v, at)
	case v.Kind() == reflect.Slice && holdsFigures(v.Type().Elem()):
		seen := map[string]int{}
		for i := range v.Len() {
			name := elementName(v.Index(i))
			seen[name]++
			w.value(v.Index(i), fmt.Sprintf("%s/%s.%d", at, name, seen[name]))
			if w.over {
				return
			}
		}
	}
}

func holdsFigures(t reflect.Type) bool {
	return t == figureType || t.Kind() == reflect.Struct && t.PkgPath() == figureType.PkgPath()
}

// elementName names an element of a list by what it is about. Elements of one name are
// told apart by their order.
func elementName(v reflect.Value) string {
	switch e := v.Interface().(type) {
	case PotOutlook:
		return e.Pot.ID
	case SiteOutlook:
		return e.Site.ID
	case Stand:
		return string(e.Season)
	case Round:
		return strings.Join([]string{e.Date.String(), e.Product}, " ")
	case Feed:
		return strings.Join([]string{e.Date.String(), e.Product}, " ")
	case SeasonOutlook:
		return string(e.Season)
	case PlantCount:
		return e.Plant
	case Buying:
		return e.Product
	}
	return ""
}
