package mix

import (
	"math"

	"fourturn/planner/quantity"
)

// Policy says what is done with old mix at a change-out, by the words of plan files.
type Policy string

// The policies. The empty policy means [ReplaceShare].
const (
	ReplaceShare Policy = "share"  // take out a share of the old mix
	TopUp        Policy = "top_up" // put in only what went out with the root balls
	AllFresh     Policy = "fresh"  // empty the pot
)

const (
	// DefaultShare of the old mix is replaced: about one third by volume (UC Master
	// Gardeners of Orange County, soils, fertilizers, compost).
	DefaultShare = 1.0 / 3
	// DefaultRetireAfter is the mean age, in planting seasons, from which mix is
	// replaced: "more than one to two seasons" (the same page), of which the longer
	// is taken, each a growing year of four planting seasons.
	DefaultRetireAfter = 8
)

// Content is what stands in a pot beneath its fill line.
type Content struct {
	Volume quantity.Volume // mix and root balls, firm
	Age    float64         // volume-weighted mean, in planting seasons
}

// ChangeOut is what happens to a pot's mix on one day.
type ChangeOut struct {
	Capacity     quantity.Volume // room to the fill line
	OldRootBalls quantity.Volume // as they are lifted, with the mix that they hold
	NewRootBalls quantity.Volume // as they are planted
	Policy       Policy
	Share        float64 // of the mix left in the pot that is taken out; 0 means [DefaultShare]
	Settling     float64 // share; 0 means [DefaultSettling]
	Elapsed      float64 // planting seasons since the last change-out, usually 1
	Shrinkage    float64 // share of the content that rotted or washed away meanwhile
	RetireAfter  float64 // mean age from which all is replaced; 0 means [DefaultRetireAfter], +Inf never
	Diseased     bool    // the last planting was diseased
}

// Reason says why a pot was refreshed as it was.
type Reason string

// The reasons; each is the key of its text.
const (
	ByShare   Reason = "mix.reason.share"
	ByTopUp   Reason = "mix.reason.top_up"
	ByPolicy  Reason = "mix.reason.fresh"
	ByDisease Reason = "mix.reason.disease"
	ByAge     Reason = "mix.reason.age"
	ByFirst   Reason = "mix.reason.first" // the pot was empty
)

// Balance is one change-out in volumes, firm: Before − Shrunk − BallsOut − OldOut +
// BallsIn + Fresh = After.
type Balance struct {
	Before, After Content
	Shrunk        quantity.Volume // rotted or washed away since the last change-out
	BallsOut      quantity.Volume // lifted with the old plants
	OldOut        quantity.Volume // old mix taken out besides
	BallsIn       quantity.Volume // root balls of the new plants
	Fresh         quantity.Volume // fresh mix, firm
	NoRoom        quantity.Volume // of new root balls that do not go in
	Reason        Reason
	in            ChangeOut
}

// At returns the content after a change-out and what went in and out. Old mix that
// the new root balls leave no room for comes out too. It panics on negative volumes
// and on shares outside 0 to 1.
func (c Content) At(ch ChangeOut) Balance {
	ch.check()
	b := Balance{Before: c, in: ch}
	b.Shrunk = c.Volume * quantity.Volume(ch.Shrinkage)
	left := c.Volume - b.Shrunk
	age := c.Age + ch.Elapsed
	b.Reason = ch.reason(c.Volume, age)

	b.BallsOut = min(ch.OldRootBalls, left)
	left -= b.BallsOut
	switch b.Reason {
	case ByShare:
		b.OldOut = left * quantity.Volume(ch.shareOr())
	case ByTopUp:
	default:
		b.OldOut = left
	}
	kept := left - b.OldOut

	b.BallsIn = min(ch.NewRootBalls, ch.Capacity)
	b.NoRoom = ch.NewRootBalls - b.BallsIn
	if over := kept + b.BallsIn - ch.Capacity; over > 0 {
		over = min(over, kept)
		b.OldOut += over
		kept -= over
	}
	b.Fresh = max(0, ch.Capacity-b.BallsIn-kept)
	b.After.Volume = min(kept+b.BallsIn+b.Fresh, ch.Capacity)
	if b.After.Volume > 0 {
		b.After.Age = age * float64(kept/b.After.Volume) // what went in has age 0
	}
	return b
}

func (ch *ChangeOut) reason(content quantity.Volume, age float64) Reason {
	retire := ch.RetireAfter
	if retire == 0 {
		retire = DefaultRetireAfter
	}
	switch {
	case content == 0:
		return ByFirst
	case ch.Diseased:
		return ByDisease
	case ch.Policy == AllFresh:
		return ByPolicy
	case age >= retire:
		return ByAge
	case ch.Policy == TopUp:
		return ByTopUp
	}
	return ByShare
}

func (ch *ChangeOut) shareOr() float64 {
	if ch.Share == 0 {
		return DefaultShare
	}
	return ch.Share
}

func (ch *ChangeOut) check() {
	switch {
	case !(ch.Capacity >= 0 && ch.OldRootBalls >= 0 && ch.NewRootBalls >= 0):
		panic("mix: negative volume")
	case !(ch.Share >= 0 && ch.Share <= 1 && ch.Shrinkage >= 0 && ch.Shrinkage <= 1):
		panic("mix: share is not from 0 to 1")
	case !(ch.Elapsed >= 0) || math.IsInf(ch.Elapsed, 0) || !(ch.RetireAfter >= 0):
		panic("mix: negative age")
	}
	switch ch.Policy {
	case "", ReplaceShare, TopUp, AllFresh:
	default:
		panic("mix: unknown policy")
	}
	settlingOr(ch.Settling)
}

// Loose returns the fresh mix as it is bought, before it settles.
func (b Balance) Loose() quantity.Volume { return Loosened(b.Fresh, b.in.Settling) }

// Year works through the change-outs of one pot in order and appends the balance of
// each to into, which may be nil or a slice to use again.
func Year(start Content, changes []ChangeOut, into []Balance) []Balance {
	content := start
	for i := range changes {
		into = append(into, content.At(changes[i]))
		content = into[len(into)-1].After
	}
	return into
}

// Total is a sum of balances, of one pot or of many.
type Total struct {
	Fresh    quantity.Volume // firm
	Loose    quantity.Volume // as bought
	OldOut   quantity.Volume // old mix to be got rid of
	BallsOut quantity.Volume
	BallsIn  quantity.Volume
	Shrunk   quantity.Volume
}

// Add adds balances to the total.
func (t *Total) Add(balances ...Balance) {
	for i := range balances {
		b := &balances[i]
		t.Fresh += b.Fresh
		t.Loose += b.Loose()
		t.OldOut += b.OldOut
		t.BallsOut += b.BallsOut
		t.BallsIn += b.BallsIn
		t.Shrunk += b.Shrunk
	}
}
