// Package screentest opens plans for the tests of screens and views: a real session
// with a store in a folder of the test's, on a fixed day, without a window.
package screentest

import (
	"context"
	"fmt"
	"os"
	"sync"
	"testing"
	"time"

	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/planfile"
	"fourturn/planner/quantity"
	"fourturn/plants"
)

// The days on which the example is looked at.
var (
	SummerDay = civil.MustParse("2027-06-08")
	WinterDay = civil.MustParse("2027-01-14")
	MayDay    = civil.MustParse("2027-05-15") // the first day planned for falls into December
)

// Session is the open plan with what is worked out for it.
type Session = session.Session[*planner.Outlook]

// Desk is an open plan. Its test plays the interface goroutine: what the session
// posts is kept until [Desk.Settle] runs it.
type Desk struct {
	*Session
	Words *words.Words
	tb    testing.TB

	mu     sync.Mutex
	posted []func()
	came   chan struct{}
	ids    int
}

// Open opens a plan on a day and waits for its outlook.
func Open(tb testing.TB, plan *planner.Plan, today civil.Date) *Desk {
	tb.Helper()
	d := Waiting(tb, plan, today)
	d.Settle()
	return d
}

// Waiting opens a plan whose outlook is not there yet; [Desk.Settle] brings it.
func Waiting(tb testing.TB, plan *planner.Plan, today civil.Date) *Desk {
	tb.Helper()
	d := &Desk{Words: words.New("en-GB"), tb: tb, came: make(chan struct{}, 1)}
	names := 0
	clock := func() time.Time { return time.Date(2027, 6, 8, 9, 0, 0, 0, time.UTC) }
	var mu sync.Mutex
	store := planfile.NewStore(tb.TempDir(), clock, func() string {
		mu.Lock()
		defer mu.Unlock()
		names++
		return fmt.Sprintf("n%d", names)
	})
	book := Book(tb)
	d.Session = session.New(session.Config[*planner.Outlook]{
		Store: store, Holder: planfile.Holder{User: "ann", Host: "shed"}, Post: d.post,
		WorkOut: func(_ context.Context, p *planner.Plan) *planner.Outlook {
			return planner.WorkOut(p, planner.Reference{Book: book}, today)
		},
	})
	if err := d.Start(plan); err != nil {
		tb.Fatal(err)
	}
	tb.Cleanup(func() {
		d.Discard()
		d.Close()
	})
	return d
}

var builtinBook = sync.OnceValues(plants.Builtin)

// Book returns the plant book that the plans are worked out with.
func Book(tb testing.TB) *plants.Book {
	tb.Helper()
	book, err := builtinBook()
	if err != nil {
		tb.Fatal(err)
	}
	return book
}

func (d *Desk) post(f func()) {
	d.mu.Lock()
	d.posted = append(d.posted, f)
	d.mu.Unlock()
	select {
	case d.came <- struct{}{}:
	default:
	}
}

// Settle runs what is posted until the outlook belongs to the plan.
func (d *Desk) Settle() {
	d.tb.Helper()
	deadline := time.After(60 * time.Second)
	for {
		d.mu.Lock()
		posted := d.posted
		d.posted = nil
		d.mu.Unlock()
		for _, f := range posted {
			f()
		}
		if _, current := d.Outlook(); current {
			return
		}
		if len(posted) > 0 {
			continue
		}
		select {
		case <-d.came:
		case <-deadline:
			d.tb.Fatal("waited in vain for the outlook")
		}
	}
}

// NewID makes the ids of log entries.
func (d *Desk) NewID() string {
	d.ids++
	return fmt.Sprintf("entry-%d", d.ids)
}

// Edit changes the plan as a person would on some other page, and settles.
func (d *Desk) Edit(edit func(*planner.Plan)) {
	d.tb.Helper()
	err := d.Do("edit.test", nil, func(p planner.Plan) (planner.Plan, error) {
		edit(&p)
		return p, nil
	})
	if err != nil {
		d.tb.Fatal(err)
	}
	d.Settle()
}

// UndoName returns what the menu would call taking back the last edit, or "".
func (d *Desk) UndoName() string {
	step, ok := d.UndoStep()
	if !ok {
		return ""
	}
	return d.Words.Finding(finding.Finding{Code: step.Name, Args: step.Args}, d.Plan().Units)
}

// Example returns a plan of its own like the built-in example. It is to be called
// from a package three folders below the project's, as screens and views are.
func Example(tb testing.TB) *planner.Plan {
	tb.Helper()
	text, err := os.ReadFile("../../../assets/example.yaml")
	if err != nil {
		tb.Fatal(err)
	}
	document, err := planfile.Decode(text)
	if err != nil {
		tb.Fatal(err)
	}
	return document.Plan()
}

// Customary returns the example for a person who reads US customary units.
func Customary(tb testing.TB) *planner.Plan {
	tb.Helper()
	plan := Example(tb)
	plan.Units = quantity.USCustomary
	return plan
}

// Empty returns a plan with nothing in it.
func Empty() *planner.Plan { return &planner.Plan{Risk: planner.DefaultRisk} }

// Many returns the example with its pots repeated until there are n.
func Many(tb testing.TB, n int) *planner.Plan {
	tb.Helper()
	plan := Example(tb)
	first := plan.Pots
	plan.Pots = nil
	for i := range n {
		pot := first[i%len(first)]
		pot.ID = fmt.Sprintf("%s-%d", pot.ID, i)
		pot.Name = fmt.Sprintf("%s %d", pot.Name, i+1)
		plan.Pots = append(plan.Pots, pot)
	}
	return plan
}

// LongestNames returns the example with the names that leave the least room, and
// every pot at one of two clients.
func LongestNames(tb testing.TB) *planner.Plan {
	tb.Helper()
	plan := Example(tb)
	for i := range plan.Pots {
		plan.Pots[i].Name = "The very long trough under the second kitchen window, " + plan.Pots[i].Name
		plan.Pots[i].Client = [...]string{"Household at the end of the long lane behind the mill", "Copper Kettle"}[i%2]
	}
	for i := range plan.Spots {
		plan.Spots[i].Name = "South-west facing terrace behind the long hall, " + plan.Spots[i].Name
	}
	for i := range plan.Products {
		plan.Products[i].Name += ", the large sack from the back of the shed"
	}
	for i := range plan.Recipes {
		plan.Recipes[i].Name += " with everything that ever did well beside it"
	}
	plan.Sites[0].Name = "The walled yard behind the old brewery on the canal"
	return plan
}
