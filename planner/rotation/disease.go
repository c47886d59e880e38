package rotation

import (
	"math"
	"slices"
	"strings"
)

// groupIndex numbers the disease groups that matter to a request: those that stay
// after a host, and those that the history holds back.
type groupIndex struct {
	req           *Request
	numbers       map[string]int
	names         []string
	stays         []int
	standingStays []int
	release       []int
}

// Names of groups: a plant, its family and a named disease do not collide.
func plantGroup(id string) string    { return "plant:" + id }
func familyGroup(name string) string { return "family:" + name }
func diseaseGroup(name string) string {
	return "disease:" + name
}

func newGroupIndex(req *Request) *groupIndex {
	x := &groupIndex{req: req, numbers: make(map[string]int)}
	for _, h := range req.History {
		switch {
		case h.Plant != "":
			x.record(plantGroup(h.Plant), req.Lingers.Host, h)
		case h.Family != "":
			x.record(familyGroup(h.Family), req.Lingers.Families[h.Family], h)
		default:
			x.record(diseaseGroup(h.Group), req.Lingers.disease(h.Group), h)
		}
	}
	return x
}

func (l *Lingers) disease(group string) Linger {
	if linger, ok := l.Groups[group]; ok {
		return linger
	}
	return l.Other
}

// record takes an entry of the history in. A disease that was seen since the
// present planting went out stays as long after it is taken out.
func (x *groupIndex) record(name string, linger Linger, h Host) {
	g := x.number(name, linger)
	days := linger.Healthy
	if h.Diseased {
		days = linger.Diseased
		x.standingStays[g] = max(x.standingStays[g], linger.Diseased)
	}
	x.release[g] = max(x.release[g], int(h.Last.AddDays(days)-x.req.Today))
}

func (x *groupIndex) number(name string, linger Linger) int {
	if g, ok := x.numbers[name]; ok {
		return g
	}
	g := len(x.stays)
	x.numbers[name], x.names = g, append(x.names, name)
	x.stays = append(x.stays, linger.Healthy)
	x.standingStays = append(x.standingStays, linger.Healthy)
	x.release = append(x.release, math.MinInt32)
	return g
}

// of returns the groups that a planting, or its staying parts, are hosts of, as
// far as they matter.
func (x *groupIndex) of(p *Planting, onlyStaying bool) []int {
	var found []int
	add := func(name string, linger Linger) {
		_, known := x.numbers[name]
		if !known && linger.Healthy <= 0 {
			return
		}
		if g := x.number(name, linger); !slices.Contains(found, g) {
			found = append(found, g)
		}
	}
	for _, part := range p.Parts {
		if onlyStaying && !part.Stays || part.Plant.Cut {
			continue
		}
		add(plantGroup(part.Plant.ID), x.req.Lingers.Host)
		if linger, ok := x.req.Lingers.Families[part.Plant.Family]; ok {
			add(familyGroup(part.Plant.Family), linger)
		}
		for _, group := range part.Plant.Groups {
			add(diseaseGroup(group), x.req.Lingers.disease(group))
		}
	}
	return found
}

// Breach is a rule of the mix that a sequence breaks: a host goes out before its
// disease group is gone from the mix.
type Breach struct {
	ChangeOut int    // in the best sequence
	Kind      string // "plant", "family" or "disease"
	Name      string // id of the plant or disease, or the family
}

// Breaches returns the rules of the mix that the best sequence breaks, each once. There
// are some only where the request wants them told and not kept.
func (r *Result) Breaches() []Breach {
	var list []Breach
	groups, stays := r.problem.breaches(r.path)
	for k, g := range groups {
		kind, name, _ := strings.Cut(r.problem.groupNames[g], ":")
		list = append(list, Breach{ChangeOut: stays[k] - 1, Kind: kind, Name: name})
	}
	return list
}
