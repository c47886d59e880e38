package planner

import (
	"slices"

	"fourturn/planner/arrange"
	"fourturn/planner/finding"
	"fourturn/planner/mix"
	"fourturn/planner/nutrition"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
	"fourturn/plants"
)

// growthFloor is the mean temperature below which a display hardly grows and no
// charge is given for it: no feed is counted below 5 °C of the mix (a judgement, as
// no published sharp limit was found).
const growthFloor = 5

// usualSpacing is taken for a plant that the book does not know: the spacing at which
// the published counts per pot diameter come out.
const usualSpacing = 25 * quantity.Centimetre

// fillStands works out for each stand the plants, the mix that its change-out takes
// and its charge of slow release. The content of the pot is carried along.
func (w *workOut) fillStands(out *PotOutlook, where finding.Where) {
	if out.Vessel == nil {
		return
	}
	content := mix.Content{Volume: out.Vessel.FillVolume()}
	oldBalls := quantity.Volume(0)
	for i := range out.Stands {
		s := &out.Stands[i]
		at := append(slices.Clone(where), "plantings", string(s.Season))
		parts := w.parts(s.Planting)
		w.countPlants(out, s, parts, at)
		feeder, balls := w.growing(s)
		before, change := w.mixChange(out, i, content, oldBalls, balls)
		balance := before.At(change)
		s.Balance = balance
		w.Findings = append(w.Findings, w.once(balance.Findings(at), s)...)
		s.Mix = NewFigure(working.Number(float64(balance.Loose()), working.Litre), balance.Working)
		content, oldBalls = balance.After, balls
		s.Feeder = feeder
		w.charge(out, s, balance)
	}
}

// once keeps findings of the stand that is there or comes next, so that a planting
// that comes every year is remarked on once.
func (w *workOut) once(found []finding.Finding, s *Stand) []finding.Finding {
	if !s.first {
		return nil
	}
	return found
}

// parts returns what is planted: the planting's own list, or its recipe's.
func (w *workOut) parts(p *Planting) []Part {
	if len(p.Plants) > 0 {
		return p.Plants
	}
	if r := w.recipes[p.Recipe]; r != nil {
		return r.Parts
	}
	return nil
}

func (w *workOut) countPlants(out *PotOutlook, s *Stand, parts []Part, where finding.Where) {
	kinds := make([]arrange.Kind, len(parts))
	s.Plants = make([]PlantCount, len(parts))
	for i, part := range parts {
		kinds[i] = arrange.Kind{Spacing: usualSpacing, Share: part.Share, Fixed: part.Count}
		s.Plants[i] = PlantCount{Plant: part.Plant, Role: part.Role}
		if plant, ok := w.ref.Book.Plant(part.Plant); ok {
			s.Plants[i].Known = plant
			kinds[i].Spacing = plant.Spacing
			if part.Role == "" {
				s.Plants[i].Role = Role(plant.Role)
			}
		} else if s.first {
			w.find("plan.unknown_plant", finding.Warning, where, finding.Arg{Name: "plant", Value: working.Text(part.Plant)})
		}
	}
	o := out.Vessel.Opening()
	for i, count := range arrange.Counts(arrange.Opening{Area: o.Area, Perimeter: o.Perimeter}, kinds) {
		s.Plants[i].Count = NewFigure(working.Number(float64(count.Plants), working.None), count.Working)
	}
}

// growing returns the feeder class of the hungriest plant of a stand and the root
// balls of all its plants, each in the first size that it is sold in.
func (w *workOut) growing(s *Stand) (nutrition.Feeder, quantity.Volume) {
	feeder, balls := nutrition.NoFeeder, quantity.Volume(0)
	for _, p := range s.Plants {
		if p.Known == nil {
			continue
		}
		feeder = feeder.Heavier(nutrition.Feeder(p.Known.Feeder))
		balls += quantity.Volume(p.Count.Number()) * w.rootBall(p.Known)
	}
	return feeder, balls
}

func (w *workOut) rootBall(p *plants.Plant) quantity.Volume {
	if len(p.Sold) == 0 {
		return 0
	}
	size, ok := w.ref.Book.Size(p.Sold[0].Size)
	if !ok {
		return 0
	}
	return size.RootBall
}
