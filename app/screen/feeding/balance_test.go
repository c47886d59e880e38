package feeding_test

import (
	"strings"
	"testing"

	"fourturn/app/screen/screentest"
)

func TestTheBalanceOfAPot(t *testing.T) {
	d, s := open(t, screentest.Example(t), screentest.SummerDay)
	names, places := s.Pots()
	if len(names) == 0 || len(names) != len(places) {
		t.Fatalf("%d pots have a balance", len(names))
	}
	now := 0
	for _, w := range s.Balance(places[0]) {
		if w.Charge < 0 || w.Charge+w.Feed > 1+1e-9 || w.Low > w.High || w.High > 1+1e-9 {
			t.Errorf("week %+v", w)
		}
		if w.Now {
			now++
		}
	}
	if now != 1 || s.Balance(-1) != nil || s.Balance(999) != nil || s.Fewest().Figure.IsZero() {
		t.Errorf("%d weeks are this one", now)
	}
	if texts, more := s.Remarks(1); len(texts) != 1 || more == 0 || strings.Contains(texts[0], "⟦") {
		t.Errorf("remarks %v and %d more", texts, more)
	}
	r := s.Rounds(1)[0]
	if days, _ := s.History(places[0]); len(days) != 0 || r.Strength.Figure.IsZero() || r.EC.Figure.IsZero() {
		t.Errorf("history %v, round %+v", days, r)
	}
	if err := s.Tick(r, ""); err != nil {
		t.Fatal(err)
	}
	d.Settle()
	if days, what := s.History(places[0]); len(days) != 1 || what[0] != "fed with "+r.Product {
		t.Errorf("history %v %v", days, what)
	}
}
