package vessel

import (
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// Material is what a pot is made of, by the word that plan files use.
type Material string

// The materials.
const (
	Terracotta    Material = "terracotta"
	GlazedCeramic Material = "glazed_ceramic"
	Concrete      Material = "concrete"
	FibreCement   Material = "fibre_cement"
	Stone         Material = "stone"
	Plastic       Material = "plastic"
	Fibreglass    Material = "fibreglass"
	Softwood      Material = "softwood"
	Hardwood      Material = "hardwood"
	Steel         Material = "steel"
	Aluminium     Material = "aluminium"
	Fabric        Material = "fabric"
	WireAndCoir   Material = "wire_and_coir"
)

// Materials lists every material, in the order in which they are offered.
var Materials = [...]Material{
	Terracotta, GlazedCeramic, Plastic, Fibreglass, Softwood, Hardwood, Concrete,
	FibreCement, Stone, Steel, Aluminium, Fabric, WireAndCoir,
}

// MaterialData is what is known of a material.
type MaterialData struct {
	Density       float64         // kg/m³
	DensitySource working.Source  //
	UsualWall     quantity.Length // taken for the weight where the wall is not given; a judgement
	FrostTender   bool            // can crack when the wet mix or the wall freezes
}

const (
	masonry   = "Concrete Masonry Association of California and Nevada, cmacn.org, density: clay brick 120 lb/ft³, concrete 140 lb/ft³"
	quantList = "density of building materials, qscengineer.com"
)

func published(cite string) working.Source {
	return working.Source{Status: working.Published, Cite: cite}
}

func fromMemory(cite string) working.Source {
	return working.Source{Status: working.Memory, Cite: cite}
}

var usualWalls = working.Source{Status: working.Judgement}

// materials holds the densities. Those of fired clay and of concrete are of the
// material in building; of pots nothing better was found.
var materials = map[Material]MaterialData{
	Terracotta:    {1922, published(masonry), 12 * quantity.Millimetre, true},
	GlazedCeramic: {2243, fromMemory("stoneware, 2.0 to 2.4 g/cm³"), 15 * quantity.Millimetre, true},
	Concrete:      {2243, published(masonry), 30 * quantity.Millimetre, true},
	FibreCement:   {1668, published("glass-fibre cement panel of 8 mm, 1668 kg/m³, study of composites with GRP waste"), 12 * quantity.Millimetre, false},
	Stone:         {2600, published(quantList + ": limestone"), 40 * quantity.Millimetre, false},
	Plastic:       {950, fromMemory("polyethylene and polypropylene, 0.90 to 0.96 g/cm³"), 3 * quantity.Millimetre, false},
	Fibreglass:    {1700, fromMemory("glass-reinforced polyester, 1.5 to 1.9 g/cm³"), 5 * quantity.Millimetre, false},
	Softwood:      {500, published(quantList + ": softwood"), 25 * quantity.Millimetre, false},
	Hardwood:      {700, published(quantList + ": hardwood"), 25 * quantity.Millimetre, false},
	Steel:         {7850, published(quantList + ": mild steel"), 1.5 * quantity.Millimetre, false},
	Aluminium:     {2700, published(quantList + ": aluminium"), 2 * quantity.Millimetre, false},
	Fabric:        {120, fromMemory("felt of about 0.36 kg/m² at 3 mm"), 3 * quantity.Millimetre, false},
	WireAndCoir:   {100, fromMemory("coir liner with its wire, about 1.2 kg/m² at 12 mm"), 12 * quantity.Millimetre, false},
}

// Data returns what is known of a material, and false for a word that is not one.
func (m Material) Data() (MaterialData, bool) {
	d, ok := materials[m]
	return d, ok
}

// EmptyMass is the weight of a pot without anything in it, with its liner.
type EmptyMass struct {
	Mass  quantity.Mass
	Known bool // false where no material is given; then Mass is 0
	pot   Vessel
	liner *Vessel
}

// EmptyMass returns the weight of the empty pot: the volume of its walls and
// bottom times the density of its material. Where the wall is not given, it is the
// surface times the usual wall of the material.
func (v Vessel) EmptyMass() EmptyMass {
	e := EmptyMass{pot: v, Mass: v.shellMass(), Known: v.spec.Material != ""}
	if v.spec.Liner != nil {
		e.liner = v.holder()
		e.Mass += e.liner.shellMass()
		e.Known = e.Known && e.liner.spec.Material != ""
	}
	return e
}

func (v *Vessel) shellMass() quantity.Mass {
	data := materials[v.spec.Material]
	return quantity.Mass(v.shellVolume(data.UsualWall) * data.Density)
}

// shellVolume returns the volume of walls and bottom, m³.
func (v *Vessel) shellVolume(usual quantity.Length) float64 {
	if v.weighedByDifference() {
		return (v.outer.below(v.outer.height) - v.inner.below(v.inner.height)) * float64(v.spec.cells())
	}
	wall, bottom := v.thicknesses(usual)
	side, base := v.WallArea()
	return float64(side)*float64(wall) + float64(base)*float64(bottom)
}

// weighedByDifference reports whether both sides of the walls are known shapes.
func (v *Vessel) weighedByDifference() bool { return v.spec.Wall > 0 && v.spec.Kind != Measured }

// thicknesses returns those of wall and bottom, as given or as usual.
func (v *Vessel) thicknesses(usual quantity.Length) (wall, bottom quantity.Length) {
	wall = usual
	if v.spec.Wall > 0 {
		wall = v.spec.Wall
	}
	bottom = wall
	if v.spec.Base > 0 {
		bottom = v.spec.Base
	}
	return wall, bottom
}

// Working returns the trace of the weight of the pot, without its liner.
func (e EmptyMass) Working() working.Trace {
	v := &e.pot
	data := materials[v.spec.Material]
	side, base := v.WallArea()
	trace := working.Trace{
		Name: "vessel.empty_mass", Formula: "m = (V_outside − V_inside) × ρ",
		Result: working.Number(float64(e.Mass), working.Kilogram),
		Source: working.Source{Status: working.Definition},
	}
	density := working.Input{
		Symbol: "ρ", Name: "vessel.density",
		Value: working.Number(data.Density, working.GramPerLitre), Source: data.DensitySource, // kg/m³ = g/L
	}
	if v.weighedByDifference() {
		n := float64(v.spec.cells()) * 1000
		trace.Inputs = []working.Input{
			{Symbol: "V_outside", Name: "vessel.outside_volume", Value: working.Number(v.outer.below(v.outer.height)*n, working.Litre), Source: working.Source{Status: working.Definition}},
			{Symbol: "V_inside", Name: "vessel.brim_volume", Value: working.Number(float64(v.BrimVolume()), working.Litre), Source: working.Source{Status: working.Definition}},
			density,
		}
	} else {
		trace.Formula = "m = (A_side × t + A_bottom × b) × ρ"
		wall, bottom := v.thicknesses(data.UsualWall)
		thickness := func(symbol string, field Field, x quantity.Length, given bool) working.Input {
			if given {
				return working.Input{Symbol: symbol, Name: "vessel.field." + string(field), Value: metres(x), Source: entered}
			}
			return working.Input{Symbol: symbol, Name: "vessel.usual_wall", Value: metres(x), Source: usualWalls}
		}
		trace.Inputs = []working.Input{
			{Symbol: "A_side", Name: "vessel.side_area", Value: working.Number(float64(side), working.SquareMetre), Source: working.Source{Status: working.Definition}},
			{Symbol: "A_bottom", Name: "vessel.bottom_area", Value: working.Number(float64(base), working.SquareMetre), Source: working.Source{Status: working.Definition}},
			thickness("t", FieldWall, wall, v.spec.Wall > 0),
			thickness("b", FieldBase, bottom, v.spec.Base > 0 || v.spec.Wall > 0),
			density,
		}
	}
	if e.liner != nil {
		own := EmptyMass{Mass: e.liner.shellMass(), Known: e.Known, pot: *e.liner}.Working()
		trace.Formula += " + m_liner"
		trace.Inputs = append(trace.Inputs, working.Input{Symbol: "m_liner", Name: "vessel.liner_mass", Value: own.Result, Source: own.Source, From: &own})
	}
	if !e.Known {
		trace.Notes = append(trace.Notes, "vessel.note_no_material")
	}
	return trace
}
