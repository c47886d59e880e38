package plants

import "strings"

// The words of each vocabulary have their texts in the catalogues under these
// keys, such as "plants.kind.cool_annual".

// Key returns the key of the word's text.
func (k Kind) Key() string { return "plants.kind." + string(k) }

// Key returns the key of the word's text.
func (s Season) Key() string { return "plants.season." + string(s) }

// Key returns the key of the word's text.
func (r Role) Key() string { return "plants.role." + string(r) }

// Key returns the key of the word's text.
func (l Light) Key() string { return "plants.light." + string(l) }

// Key returns the key of the word's text.
func (l Level) Key() string { return "plants.water." + string(l) }

// Key returns the key of the word's text.
func (f Feeder) Key() string { return "plants.feeder." + string(f) }

// Key returns the key of the word's text.
func (c FrostClass) Key() string { return "plants.frost_class." + string(c) }

// Key returns the key of the word's text.
func (c TemperatureClass) Key() string { return "plants.temperature_class." + string(c) }

// Key returns the key of the word's text.
func (c Colour) Key() string { return "plants.colour." + string(c) }

// Key returns the key of the word's text.
func (t Texture) Key() string { return "plants.texture." + string(t) }

// Key returns the key of the word's text.
func (s Scent) Key() string { return "plants.scent." + string(s) }

// Key returns the key of the word's text.
func (p Pollinator) Key() string { return "plants.pollinator." + string(p) }

// Key returns the key of the word's text.
func (e EdiblePart) Key() string { return "plants.edible." + string(e) }

// Key returns the key of the word's text.
func (l Listing) Key() string { return "plants.listing." + string(l) }

// Key returns the key of the word's text.
func (c Creature) Key() string { return "plants.creature." + string(c) }

// Key returns the key of the word's text.
func (h Hazard) Key() string { return "plants.hazard." + string(h) }

// Key returns the key of the word's text.
func (h Habit) Key() string { return "plants.habit." + string(h) }

// Key returns the key of the word's text.
func (l LeafForm) Key() string { return "plants.leaf_form." + string(l) }

// Key returns the key of the word's text.
func (l LeafEdge) Key() string { return "plants.leaf_edge." + string(l) }

// Key returns the key of the word's text.
func (l LeafPattern) Key() string { return "plants.leaf_pattern." + string(l) }

// Key returns the key of the word's text.
func (f FlowerForm) Key() string { return "plants.flower_form." + string(f) }

// Key returns the key of the word's text.
func (a Arrangement) Key() string { return "plants.arrangement." + string(a) }

// Key returns the key of the word's text.
func (e Eye) Key() string { return "plants.eye." + string(e) }

// Key returns the key of the word's text.
func (w Way) Key() string { return "plants.way." + string(w) }

// Key returns the key of the word's text.
func (s Scope) Key() string { return "plants.scope." + string(s) }

// Key returns the key of the word's text.
func (c Clearing) Key() string { return "plants.new_mix." + string(c) }

// Key returns the key of the word's text.
func (w WaitReason) Key() string { return "plants.wait_reason." + string(w) }

// Key returns the key of the word's text.
func (g Grade) Key() string { return "plants.grade." + string(g) }

// Key returns the key of the word's text.
func (o Order) Key() string { return "plants.order." + string(o) }

// Key returns the key of the field's text; parts of a field have that of the whole.
func (f Field) Key() string {
	whole, _, _ := strings.Cut(string(f), ".")
	return "plants.field." + whole
}

// HandlingKey returns the key of how a plant with the hazard is handled.
func (h Hazard) HandlingKey() string { return "plants.handling." + string(h) }
