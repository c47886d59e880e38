package plants

import (
	"cmp"
	"slices"

	"fourturn/planner/working"
)

// What is waited between hosts in the same mix. The season after healthy use is
// the planner's own; three years is the usual rotation of vegetable families,
// carried over to flowers in pots by inference.
const (
	seasonsAfterHealthy  = 1
	yearsAfterDisease    = 3
	rotationFamilyShared = "Solanaceae" // petunia, calibrachoa, flowering tobacco, pepper, tomato: shared viruses and root rots
)

// WaitReason says why the next planting should wait.
type WaitReason string

// The reasons.
const (
	SameHost     WaitReason = "same_host"     // kin of the last planting, with a disease that stays in mix
	SharedFamily WaitReason = "shared_family" // a family whose plants share their diseases
	AfterDisease WaitReason = "after_disease" // a disease of it was recorded in this mix
)

// Wait is why one plant should not follow another in the same mix, and for how
// long: so many plantings of something else after healthy use, or so many years
// after the disease was recorded.
type Wait struct {
	Disease string // id of the disease group
	Reason  WaitReason
	Seasons int
	Years   float64
	NewMix  Clearing // what replacing all of the mix and cleaning the pot does

	stays Stay
	cite  Provenance
	book  *Book
}

// WaitReasons lists the reasons.
var WaitReasons = [...]WaitReason{SameHost, SharedFamily, AfterDisease}

// Waits returns what stands against planting next after previous in the same
// mix, longest first. recorded names the disease groups that were seen in this
// mix. Diseases that come to almost every plant, or that do not live in mix, are
// no reason to wait.
func (b *Book) Waits(previous, next *Plant, recorded []string) []Wait {
	var waits []Wait
	for _, id := range next.Diseases {
		d, ok := b.Disease(id)
		if !ok || d.Hosts.Scope == Everywhere || d.NewMix == NoMatter {
			continue
		}
		if w, ok := b.wait(d, previous, next, slices.Contains(recorded, id)); ok {
			waits = append(waits, w)
		}
	}
	slices.SortStableFunc(waits, func(x, y Wait) int {
		return cmp.Or(cmp.Compare(y.Years, x.Years), cmp.Compare(y.Seasons, x.Seasons))
	})
	return waits
}

func (b *Book) wait(d Disease, previous, next *Plant, recorded bool) (Wait, bool) {
	w := Wait{Disease: d.ID, NewMix: d.NewMix, stays: d.Stays, cite: d.Ground, book: b}
	switch {
	case recorded && d.reaches(previous, next):
		w.Reason, w.Years = AfterDisease, max(yearsAfterDisease, d.Stays.Years.Low)
	case !slices.Contains(previous.Diseases, d.ID):
		return Wait{}, false
	case shareGenus(previous, next):
		w.Reason, w.Seasons = SameHost, seasonsAfterHealthy
	case previous.Family == next.Family && next.Family == rotationFamilyShared:
		w.Reason, w.Seasons = SharedFamily, seasonsAfterHealthy
	default:
		return Wait{}, false
	}
	return w, true
}

func shareGenus(p, q *Plant) bool { return share(p.Genera(), q.Genera()) && len(p.Genera()) > 0 }

// reaches reports whether the disease goes from the one plant to the other.
func (d Disease) reaches(previous, next *Plant) bool {
	switch d.Hosts.Scope {
	case SameGenus:
		return shareGenus(previous, next)
	case SameFamily:
		return previous.Family == next.Family
	case Listed, Everywhere:
		return true
	}
	return true
}

// Working returns how the wait came about.
func (w Wait) Working() working.Trace {
	judged := working.Source{Status: working.Judgement}
	if w.Years == 0 {
		return working.Trace{
			Name: "plants.wait", Formula: "n = 1",
			Result: working.Number(float64(w.Seasons), working.None), Source: judged,
			Notes: []string{"plants.wait_note_healthy"},
		}
	}
	return working.Trace{
		Name: "plants.wait_years", Formula: "y = max(y₀, s)",
		Inputs: []working.Input{
			{Symbol: "y₀", Name: "plants.wait_usual", Value: working.Number(yearsAfterDisease, working.None), Source: working.Source{
				Status: working.Judgement, Cite: "usual rotation of vegetable families; applying it to flowers in pots is inference",
			}},
			{Symbol: "s", Name: "plants.wait_stays", Value: working.Number(w.stays.Years.Low, working.None), Source: w.book.written(w.cite)},
		},
		Result: working.Number(w.Years, working.None), Source: judged,
		Notes: []string{"plants.wait_note_new_mix"},
	}
}
