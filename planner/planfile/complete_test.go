package planfile

import (
	"reflect"
	"strconv"
	"testing"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/climate"
	"fourturn/planner/vessel"
)

// A field that is added to the plan's vocabulary and forgotten here would be lost
// by every save. This test sets each field of each struct in turn and asks whether
// the written form changes.
func TestEveryFieldOfThePlanIsWritten(t *testing.T) {
	plan := &planner.Plan{
		Sites: make([]planner.Site, 1), Spots: make([]planner.Spot, 1), Products: make([]planner.Product, 1),
		Recipes: make([]planner.Recipe, 1), Pots: make([]planner.Pot, 1), Log: make([]planner.Entry, 1),
	}
	plan.Sites[0].Means = make([]planner.MonthMeans, 1)
	plan.Sites[0].Record = &climate.Digest{
		Seasons: make([]climate.SeasonDigest, 1), Freezes: make([]climate.FreezeDigest, 1), Hot: make([]climate.HotDigest, 1),
	}
	plan.Products[0].Packs = make([]planner.Pack, 1)
	plan.Blends = []planner.Blend{{Parts: make([]planner.BlendPart, 1)}}
	plan.Snoozed = make([]planner.Snooze, 1)
	plan.Recipes[0].Parts = make([]planner.Part, 1)
	plan.Pots[0].Plantings = []planner.Planting{{Plants: make([]planner.Part, 1)}}
	plan.Pots[0].Pins, plan.Pots[0].Bans = make([]planner.Pin, 1), make([]planner.Ban, 1)
	plan.Year.Refused = make([]planner.Days, 1)
	plan.Pots[0].Vessel.Rings = make([]vessel.Ring, 1)
	plan.Pots[0].Vessel.Liner = &vessel.Spec{Rings: make([]vessel.Ring, 1)}
	leaves := 0
	probe(t, plan, reflect.ValueOf(plan).Elem(), "Plan", &leaves)
	if leaves < 100 {
		t.Errorf("only %d fields were looked at", leaves)
	}
}

func probe(t *testing.T, plan *planner.Plan, v reflect.Value, name string, leaves *int) {
	switch {
	case name == "Plan.Pots[].Vessel.Liner.Liner": // refused by Check
	case v.Type() == reflect.TypeFor[civil.MonthDay]():
		*leaves++
		before, was := valueOf(plan), v.Interface().(civil.MonthDay)
		v.Set(reflect.ValueOf(civil.MonthDay{Month: 5, Day: 31}))
		if same(before, valueOf(plan)) {
			t.Errorf("%s is not written to the plan file", name)
		}
		v.Set(reflect.ValueOf(was))
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			probe(t, plan, v.Field(i), name+"."+v.Type().Field(i).Name, leaves)
		}
	case v.Kind() == reflect.Array:
		for i := range v.Len() {
			probe(t, plan, v.Index(i), name+"["+strconv.Itoa(i)+"]", leaves)
		}
	case v.Kind() == reflect.Slice && v.Len() > 0:
		probe(t, plan, v.Index(0), name+"[]", leaves)
	case v.Kind() == reflect.Pointer && !v.IsNil():
		probe(t, plan, v.Elem(), name, leaves)
	default:
		*leaves++
		before := valueOf(plan)
		was := reflect.New(v.Type()).Elem()
		was.Set(v)
		set(t, v, name)
		if same(before, valueOf(plan)) {
			t.Errorf("%s is not written to the plan file", name)
		}
		v.Set(was)
	}
}

func set(t *testing.T, v reflect.Value, name string) {
	switch v.Kind() {
	case reflect.String:
		v.SetString("x")
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Int, reflect.Int32:
		v.SetInt(1)
	case reflect.Float64:
		v.SetFloat(0.5)
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1, 1))
		if v.Type().Elem().Kind() == reflect.String {
			v.Index(0).SetString("x")
		}
	default:
		t.Fatalf("%s: a %s cannot be set here", name, v.Kind())
	}
}
