package year

import (
	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
)

// Risk returns the plan's appetite for risk in words.
func (s *Screen) Risk() string {
	return s.words.T("year.risk", words.A{"risk": s.words.Percent(s.session.Plan().Risk)})
}

// Risks are the named appetites, with the number of the plan's or -1.
func (s *Screen) Risks() (names []string, chosen int) {
	chosen = -1
	for i, r := range namedRisks {
		names = append(names, s.words.T(r.key, words.A{"risk": s.words.Percent(r.risk)}))
		if r.risk == s.session.Plan().Risk {
			chosen = i
		}
	}
	return names, chosen
}

var namedRisks = [...]struct {
	key  string
	risk float64
}{{"year.cautious", 0.10}, {"year.even", 0.50}, {"year.bold", 0.90}}

// SetRisk takes one of the named appetites.
func (s *Screen) SetRisk(i int) error {
	if i < 0 || i >= len(namedRisks) {
		return nil
	}
	risk := namedRisks[i].risk
	return s.session.Do("year.edit_risk", nil, func(p planner.Plan) (planner.Plan, error) {
		if p.Risk == risk {
			return p, session.ErrNothingToDo
		}
		p.Risk = risk
		return p, nil
	})
}
