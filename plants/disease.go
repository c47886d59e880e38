package plants

import (
	"slices"

	"gopkg.in/yaml.v3"
)

// Disease is a group of diseases that a planting can leave behind for the next.
type Disease struct {
	ID       string
	Name     string
	Pathogen string // scientific name, where one stands behind the group
	Way      Way
	Hosts    Hosts
	Stays    Stay
	NewMix   Clearing // what replacing all of the mix does
	Note     string
	Ground   Provenance
}

// Way is how a disease reaches the next planting.
type Way string

// The ways.
const (
	SoilBorne   Way = "soil"   // lives in mix and roots
	DebrisBorne Way = "debris" // lives in fallen leaves and stems
	AirBorne    Way = "air"    // spores drift in from outside
	InsectBorne Way = "insect" // a virus or phytoplasma carried by insects
	PlantBorne  Way = "plant"  // comes with the plant, by sap, seed or bulb
)

// Hosts says which plants a disease attacks.
type Hosts struct {
	Scope  Scope
	Names  []string // families or genera, for the scopes that list them
	Spared []string // families or genera that resist it although in scope
}

// Scope is how far a disease reaches from one of its hosts.
type Scope string

// The scopes, narrowest first. A plant is a host only if it names the disease.
const (
	SameGenus  Scope = "same_genus"  // a form of it for each genus
	SameFamily Scope = "same_family" // a form of it for each family
	Listed     Scope = "listed"      // between all plants that name the disease
	Everywhere Scope = "everywhere"  // almost every plant, always about: no rotation helps
)

// Stay is how long a disease stays in the mix after its hosts are gone.
type Stay struct {
	Years Years
	Why   string // what keeps it, such as "chlamydospores"
}

// Years is a range of years, both ends included.
type Years struct {
	Low, High float64
}

// Clearing is what replacing all of the mix does against a disease.
type Clearing string

// What new mix does.
const (
	Clears     Clearing = "clears"      // with the pot cleaned
	ClearsPart Clearing = "clears_part" // the disease also comes by air, insects or plants
	NoMatter   Clearing = "no_matter"   // it does not live in the mix
)

// The words of each vocabulary.
var (
	Ways      = [...]Way{SoilBorne, DebrisBorne, AirBorne, InsectBorne, PlantBorne}
	Scopes    = [...]Scope{SameGenus, SameFamily, Listed, Everywhere}
	Clearings = [...]Clearing{Clears, ClearsPart, NoMatter}
)

var diseaseParts = []part[Disease]{
	must(partOf("id", func(d *Disease) *string { return &d.ID }, idCodec)),
	must(partOf("name", func(d *Disease) *string { return &d.Name }, textCodec)),
	partOf("pathogen", func(d *Disease) *string { return &d.Pathogen }, textCodec),
	must(partOf("way", func(d *Disease) *Way { return &d.Way }, wordCodec(Ways[:]))),
	must(partOf("hosts", func(d *Disease) *Hosts { return &d.Hosts }, hostsCodec)),
	must(partOf("stays", func(d *Disease) *Stay { return &d.Stays }, stayCodec)),
	must(partOf("new_mix", func(d *Disease) *Clearing { return &d.NewMix }, wordCodec(Clearings[:]))),
	partOf("note", func(d *Disease) *string { return &d.Note }, textCodec),
	must(partOf("from", func(d *Disease) *Provenance { return &d.Ground }, provenanceCodec)),
}

var hostsCodec = structCodec(
	must(partOf("scope", func(h *Hosts) *Scope { return &h.Scope }, wordCodec(Scopes[:]))),
	partOf("names", func(h *Hosts) *[]string { return &h.Names }, listCodec(textCodec)),
	partOf("spared", func(h *Hosts) *[]string { return &h.Spared }, listCodec(textCodec)),
)

var stayCodec = structCodec(
	must(partOf("years", func(s *Stay) *Years { return &s.Years }, yearsCodec)),
	must(partOf("why", func(s *Stay) *string { return &s.Why }, textCodec)),
)

// yearsCodec reads a range of years, such as "2-5".
var yearsCodec = codec[Years]{
	read: func(r *reader, n *yaml.Node) (Years, bool) {
		w, ok := weeksCodec.read(r, n)
		return Years(w), ok
	},
	write: func(y Years) *yaml.Node { return weeksCodec.write(Weeks(y)) },
}

// include reports whether the plant can be a host: its family or one of its
// genera is named, or the disease attacks almost everything.
func (h Hosts) include(p *Plant) bool {
	if h.Scope == Everywhere {
		return true
	}
	names := append(p.Genera(), p.Family)
	return share(names, h.Names) && !slices.ContainsFunc(names, func(name string) bool { return slices.Contains(h.Spared, name) })
}
