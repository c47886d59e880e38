package mix

import (
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Part is one ingredient of a blend.
type Part struct {
	Key       string  // what the caller knows it by
	Parts     float64 // by volume, loose
	Expansion float64 // loose volume from one volume as sold; 0 means 1. See [BaleExpansion]
}

// Blend is a mix made of parts by volume.
type Blend struct {
	Parts []Part
	// Shrinkage is the share of the parts' volume that is lost when small grains go
	// between large ones; see [UsualShrinkage]. 0 is none.
	Shrinkage float64
}

const (
	// BaleExpansion is the loose volume that a volume of baled peat gives: about 2
	// (a peat packer's answer to customers: 3.0 ft³ give 6). It falls as the bale is
	// pressed harder (Acta Horticulturae 1266:153-158, 2019).
	BaleExpansion = 2.0
	// UsualShrinkage of mixing is common practice, no source: 10 to 20 % are allowed
	// for parts of unlike grain.
	UsualShrinkage = 0.10
)

// Portion is how much of a part goes into a batch.
type Portion struct {
	Key    string
	Loose  quantity.Volume
	AsSold quantity.Volume // before it is fluffed up
}

// Batch is a volume of a blend with what goes into it.
type Batch struct {
	Volume   quantity.Volume // mixed, loose
	Portions []Portion
	blend    Blend
}

// Make returns what goes into a volume of the blend: each part's share of the volume
// before it shrinks. It panics on a blend without parts and on negative numbers.
func (b Blend) Make(volume quantity.Volume) Batch {
	sum := b.sum()
	if !(volume >= 0) {
		panic("mix: negative volume")
	}
	batch := Batch{Volume: volume, blend: b}
	whole := volume / quantity.Volume(1-b.Shrinkage)
	for _, p := range b.Parts {
		loose := whole * quantity.Volume(p.Parts/sum)
		batch.Portions = append(batch.Portions, Portion{Key: p.Key, Loose: loose, AsSold: loose / quantity.Volume(p.expansion())})
	}
	return batch
}

// Yield returns how much of the blend can be made of what is there, as sold, in the
// order of the parts, and which part runs out first.
func (b Blend) Yield(asSold []quantity.Volume) (volume quantity.Volume, shortest int) {
	sum := b.sum()
	if len(asSold) != len(b.Parts) {
		panic("mix: yield of other parts than the blend's")
	}
	shortest = -1
	for i, p := range b.Parts {
		if p.Parts == 0 {
			continue
		}
		loose := asSold[i] * quantity.Volume(p.expansion())
		possible := loose * quantity.Volume(sum/p.Parts*(1-b.Shrinkage))
		if shortest < 0 || possible < volume {
			volume, shortest = possible, i
		}
	}
	return volume, shortest
}

func (b Blend) sum() float64 {
	if !(b.Shrinkage >= 0 && b.Shrinkage < 1) {
		panic("mix: shrinkage is not a share")
	}
	sum := 0.0
	for _, p := range b.Parts {
		if !(p.Parts >= 0 && p.Expansion >= 0) {
			panic("mix: negative share")
		}
		sum += p.Parts
	}
	if !(sum > 0) {
		panic("mix: blend without parts")
	}
	return sum
}

func (p Part) expansion() float64 {
	if p.Expansion == 0 {
		return 1
	}
	return p.Expansion
}

// Working returns the trace of one portion, by its place among the parts.
func (b Batch) Working(portion int) working.Trace {
	part := b.blend.Parts[portion]
	trace := working.Trace{
		Name: "mix.portion", Formula: "v = V / (1 − z) × p / Σp / e",
		Inputs: []working.Input{
			{Symbol: "V", Name: "mix.batch", Value: litres(b.Volume), Source: entered},
			{Symbol: "z", Name: "mix.mixing_shrinkage", Value: working.Number(b.blend.Shrinkage, working.Share), Source: settingSource(b.blend.Shrinkage == UsualShrinkage, working.CommonPractice, "")},
			{Symbol: "p", Name: "mix.parts", Value: working.Number(part.Parts, working.None), Source: entered},
			{Symbol: "Σp", Name: "mix.all_parts", Value: working.Number(b.blend.sum(), working.None), Source: entered},
			{Symbol: "e", Name: "mix.expansion", Value: working.Number(part.expansion(), working.None), Source: settingSource(part.Expansion == BaleExpansion, working.Published, "a peat packer's answers to customers: 3.0 ft³ baled give 6 ft³ loose")},
		},
		Result: litres(b.Portions[portion].AsSold),
		Source: definition,
	}
	if part.expansion() != 1 {
		trace.Notes = append(trace.Notes, "mix.note_bale")
	}
	return trace
}

// settingSource is the source of a setting: that of its usual value, or the person.
func settingSource(usual bool, status working.Status, cite string) working.Source {
	if usual {
		return working.Source{Status: status, Cite: cite}
	}
	return entered
}
