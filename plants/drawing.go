package plants

import "fourturn/planner/quantity"

// Drawing is what a drawing routine needs beside height, spread and colours to
// draw a plant like no other.
type Drawing struct {
	Habit       Habit
	Leaf        Leaf
	Flower      Flower // the zero Flower for plants grown for their leaves
	Arrangement Arrangement
}

// Leaf is one leaf, or one tuft of needles.
type Leaf struct {
	Form    LeafForm
	Length  quantity.Length // of the blade
	Edge    LeafEdge
	Pattern LeafPattern
}

// Flower is one flower, flower head or fruit.
type Flower struct {
	Form   FlowerForm
	Width  quantity.Length // across one flower or head
	Petals int             // that are seen; 0 where they cannot be counted
	Eye    Eye
}

// Habit is the outline of the plant and how its stems go.
type Habit string

// The habits.
const (
	Mound    Habit = "mound"    // a dome of branching stems
	Cushion  Habit = "cushion"  // a low tight dome
	Clump    Habit = "clump"    // leaves and stems from one crown
	Bushy    Habit = "bushy"    // upright, branching, as wide as tall
	Erect    Habit = "erect"    // few straight stems, taller than wide
	Vase     Habit = "vase"     // narrow below, wide above
	Fountain Habit = "fountain" // arching blades from one crown
	Fan      Habit = "fan"      // stiff blades from one crown
	Rosette  Habit = "rosette"  // leaves in a flat or cupped whorl
	Mat      Habit = "mat"      // creeping, flat
	Cascade  Habit = "cascade"  // stems that hang over the rim
	Runner   Habit = "runner"   // long trailing stems with leaves along them
	Climber  Habit = "climber"  // twining up a support
	Column   Habit = "column"
	Cone     Habit = "cone"
	Globe    Habit = "globe"
	Stems    Habit = "stems" // bare stems stuck in the mix
	Boughs   Habit = "boughs"
)

// LeafForm is the outline of a leaf.
type LeafForm string

// The leaf forms.
const (
	Ovate      LeafForm = "ovate"
	Elliptic   LeafForm = "elliptic"
	Lanceolate LeafForm = "lanceolate"
	Spoon      LeafForm = "spoon" // obovate, spatulate
	Linear     LeafForm = "linear"
	Strap      LeafForm = "strap"
	Sword      LeafForm = "sword"
	GrassBlade LeafForm = "grass"
	Round      LeafForm = "round"
	Kidney     LeafForm = "kidney"
	Heart      LeafForm = "heart"
	Arrow      LeafForm = "arrow"
	Palmate    LeafForm = "palmate" // lobed like a hand
	IvyLobed   LeafForm = "ivy"
	OakLobed   LeafForm = "oak" // pinnately lobed
	Pinnate    LeafForm = "pinnate"
	Feathery   LeafForm = "feathery" // twice or thrice divided
	Trifoliate LeafForm = "trifoliate"
	Frond      LeafForm = "frond" // of a fern
	Paddle     LeafForm = "paddle"
	Needle     LeafForm = "needle"
	Scale      LeafForm = "scale"
	Succulent  LeafForm = "succulent"
	Tube       LeafForm = "tube" // hollow, as of chives
	NoLeaf     LeafForm = "none"
)

// LeafEdge is the margin of a leaf.
type LeafEdge string

// The leaf edges.
const (
	Smooth    LeafEdge = "smooth"
	Toothed   LeafEdge = "toothed"
	Scalloped LeafEdge = "scalloped"
	Frilled   LeafEdge = "frilled"
	Spiny     LeafEdge = "spiny"
	Wavy      LeafEdge = "wavy"
)

// LeafPattern is how the second colour of the foliage lies on a leaf.
type LeafPattern string

// The leaf patterns.
const (
	Plain     LeafPattern = "plain"
	Margined  LeafPattern = "margined"
	Striped   LeafPattern = "striped"
	Veined    LeafPattern = "veined"
	Zoned     LeafPattern = "zoned"
	Speckled  LeafPattern = "speckled"
	Centred   LeafPattern = "centred"
	TwoFaced  LeafPattern = "two_faced" // another colour beneath
	Marbled   LeafPattern = "marbled"
	Feathered LeafPattern = "feathered"
)

// FlowerForm is what one flower, head or fruit looks like.
type FlowerForm string

// The flower forms.
const (
	NoFlower  FlowerForm = ""
	FlatFive  FlowerForm = "flat"  // flat round petals
	Face      FlowerForm = "face"  // pansy
	Star      FlowerForm = "star"  // pointed petals
	Cross     FlowerForm = "cross" // four petals
	Daisy     FlowerForm = "daisy"
	Double    FlowerForm = "double" // full of petals
	Pompon    FlowerForm = "pompon"
	Cup       FlowerForm = "cup"
	Goblet    FlowerForm = "goblet"
	Bowl      FlowerForm = "bowl"
	Bell      FlowerForm = "bell"
	Trumpet   FlowerForm = "trumpet"
	Corona    FlowerForm = "corona" // daffodil
	LilyForm  FlowerForm = "lily"
	FlagForm  FlowerForm = "flag" // iris
	TubeForm  FlowerForm = "tube"
	Lipped    FlowerForm = "lipped"
	Jaw       FlowerForm = "jaw" // snapdragon
	Spurred   FlowerForm = "spurred"
	FanForm   FlowerForm = "fan"
	Reflexed  FlowerForm = "reflexed" // cyclamen
	Pendant   FlowerForm = "pendant"  // fuchsia
	Pea       FlowerForm = "pea"
	Plume     FlowerForm = "plume"
	Crest     FlowerForm = "crest" // cockscomb
	Globular  FlowerForm = "globe"
	Bristle   FlowerForm = "bristle" // of grasses
	Spathe    FlowerForm = "spathe"
	Tiny      FlowerForm = "tiny" // read as dots
	Berry     FlowerForm = "berry"
	Fruit     FlowerForm = "fruit"
	ConeFruit FlowerForm = "cone"
	Catkin    FlowerForm = "catkin"
	Bracts    FlowerForm = "bracts"
	LaceForm  FlowerForm = "lacecap"
	Ruffled   FlowerForm = "ruffled"
	Slipper   FlowerForm = "slipper"
	Urn       FlowerForm = "urn" // heather, pieris
)

// Arrangement is how flowers stand on the plant.
type Arrangement string

// The arrangements.
const (
	NoArrangement Arrangement = ""
	Solitary      Arrangement = "solitary" // one to a stem above the leaves
	Scattered     Arrangement = "scattered"
	Spike         Arrangement = "spike"
	Raceme        Arrangement = "raceme"
	Panicle       Arrangement = "panicle"
	Umbel         Arrangement = "umbel"
	Cluster       Arrangement = "cluster" // rounded heads
	Whorls        Arrangement = "whorls"
	Axils         Arrangement = "axils" // along the stems
	Hanging       Arrangement = "hanging"
)

// Eye is what the middle of a flower shows.
type Eye string

// The eyes.
const (
	NoEye     Eye = ""
	DarkEye   Eye = "dark"
	YellowEye Eye = "yellow"
	WhiteEye  Eye = "white"
	GreenEye  Eye = "green"
	Blotch    Eye = "blotch" // rays or blotches
)

// The words of each vocabulary.
var (
	Habits = [...]Habit{
		Mound, Cushion, Clump, Bushy, Erect, Vase, Fountain, Fan, Rosette, Mat, Cascade, Runner, Climber,
		Column, Cone, Globe, Stems, Boughs,
	}
	LeafForms = [...]LeafForm{
		Ovate, Elliptic, Lanceolate, Spoon, Linear, Strap, Sword, GrassBlade, Round, Kidney, Heart, Arrow,
		Palmate, IvyLobed, OakLobed, Pinnate, Feathery, Trifoliate, Frond, Paddle, Needle, Scale, Succulent, Tube, NoLeaf,
	}
	LeafEdges    = [...]LeafEdge{Smooth, Toothed, Scalloped, Frilled, Spiny, Wavy}
	LeafPatterns = [...]LeafPattern{Plain, Margined, Striped, Veined, Zoned, Speckled, Centred, TwoFaced, Marbled, Feathered}
	FlowerForms  = [...]FlowerForm{
		FlatFive, Face, Star, Cross, Daisy, Double, Pompon, Cup, Goblet, Bowl, Bell, Trumpet, Corona, LilyForm,
		FlagForm, TubeForm, Lipped, Jaw, Spurred, FanForm, Reflexed, Pendant, Pea, Plume, Crest, Globular, Bristle,
		Spathe, Tiny, Berry, Fruit, ConeFruit, Catkin, Bracts, LaceForm, Ruffled, Slipper, Urn,
	}
	Arrangements = [...]Arrangement{Solitary, Scattered, Spike, Raceme, Panicle, Umbel, Cluster, Whorls, Axils, Hanging}
	Eyes         = [...]Eye{DarkEye, YellowEye, WhiteEye, GreenEye, Blotch}
)
