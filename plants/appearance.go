package plants

// Colour is a colour as plant labels name it.
type Colour string

// The colours.
const (
	White     Colour = "white"
	Cream     Colour = "cream"
	Yellow    Colour = "yellow"
	Gold      Colour = "gold"
	Orange    Colour = "orange"
	Apricot   Colour = "apricot"
	Salmon    Colour = "salmon"
	Pink      Colour = "pink"
	Rose      Colour = "rose"
	Red       Colour = "red"
	Burgundy  Colour = "burgundy"
	Magenta   Colour = "magenta"
	Purple    Colour = "purple"
	Violet    Colour = "violet"
	Lavender  Colour = "lavender"
	Blue      Colour = "blue"
	Lime      Colour = "lime"
	Green     Colour = "green"
	BlueGreen Colour = "blue_green"
	Grey      Colour = "grey"
	Silver    Colour = "silver"
	Bronze    Colour = "bronze"
	Brown     Colour = "brown"
	Black     Colour = "black"
)

// Texture is how coarse a plant's leaves look from across a terrace.
type Texture string

// The textures.
const (
	Fine   Texture = "fine"
	Middle Texture = "medium"
	Bold   Texture = "bold"
)

// Foliage is what the leaves look like.
type Foliage struct {
	Colours   []Colour
	Texture   Texture
	Evergreen bool // keeps its leaves through the winter where it lives
}

// Scent is how strongly a plant smells, by flower or by leaf.
type Scent string

// The strengths of scent. No scent is written as "none".
const (
	NoScent     Scent = "none"
	LightScent  Scent = "light"
	StrongScent Scent = "strong"
)

// Pollinator is a visitor that the flowers feed.
type Pollinator string

// The pollinators.
const (
	Bees        Pollinator = "bees"
	Butterflies Pollinator = "butterflies"
	Moths       Pollinator = "moths"
	Hoverflies  Pollinator = "hoverflies"
	Birds       Pollinator = "birds" // hummingbirds, sunbirds, honeyeaters
)

// EdiblePart is a part that people eat when it was grown without sprays for
// ornament.
type EdiblePart string

// The edible parts.
const (
	EdibleFlowers EdiblePart = "flowers"
	EdibleLeaves  EdiblePart = "leaves"
	EdibleFruit   EdiblePart = "fruit"
	EdibleRoots   EdiblePart = "roots"
)

// The words of each vocabulary in the order that a screen lists them.
var (
	Colours = [...]Colour{
		White, Cream, Yellow, Gold, Orange, Apricot, Salmon, Pink, Rose, Red, Burgundy, Magenta,
		Purple, Violet, Lavender, Blue, Lime, Green, BlueGreen, Grey, Silver, Bronze, Brown, Black,
	}
	Textures    = [...]Texture{Fine, Middle, Bold}
	Scents      = [...]Scent{NoScent, LightScent, StrongScent}
	Pollinators = [...]Pollinator{Bees, Butterflies, Moths, Hoverflies, Birds}
	EdibleParts = [...]EdiblePart{EdibleFlowers, EdibleLeaves, EdibleFruit, EdibleRoots}
)
