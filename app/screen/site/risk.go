package site

import (
	"math"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/climate"
)

// The least and the greatest risk, in per cent.
const (
	LeastRisk = 1
	MostRisk  = 99
)

// RiskMark is a risk that has a name.
type RiskMark struct {
	Percent int
	Label   string
}

// RiskMarks returns the named risks.
func (s *Screen) RiskMarks() []RiskMark {
	var marks []RiskMark
	for _, one := range []struct {
		risk climate.Risk
		key  string
	}{{climate.Cautious, "site.cautious"}, {climate.Even, "site.even"}, {climate.Bold, "site.bold"}} {
		marks = append(marks, RiskMark{percent(float64(one.risk)), s.words.T(one.key, words.A{"odds": s.words.Percent(float64(one.risk))})})
	}
	return marks
}

func percent(risk float64) int { return int(math.Round(100 * risk)) }

// Risk returns the risk of the dates that are shown, in whole per cent.
func (s *Screen) Risk() int {
	switch plan := s.session.Plan(); {
	case s.tried != 0:
		return percent(s.tried)
	case plan.Risk != 0:
		return percent(plan.Risk)
	}
	return percent(planner.DefaultRisk)
}

// The borders between the words for a risk, in per cent.
const cautiousTo, ratherCautiousTo, evenTo, ratherBoldTo = 15, 39, 60, 84

// RiskWords says what a risk means.
func (s *Screen) RiskWords(percent int) string {
	key := "site.risk_bold"
	switch {
	case percent <= cautiousTo:
		key = "site.risk_cautious"
	case percent <= ratherCautiousTo:
		key = "site.risk_rather_cautious"
	case percent <= evenTo:
		key = "site.risk_even"
	case percent <= ratherBoldTo:
		key = "site.risk_rather_bold"
	}
	return s.words.T(key, words.A{"odds": s.words.Percent(float64(percent) / 100)})
}

// TryRisk shows all dates at a risk without changing the plan.
func (s *Screen) TryRisk(percent int) {
	s.tried = float64(max(LeastRisk, min(percent, MostRisk))) / 100
}

// TakeRisk makes a risk the plan's.
func (s *Screen) TakeRisk(percent int) error {
	s.tried = 0
	risk := float64(max(LeastRisk, min(percent, MostRisk))) / 100
	plan := s.session.Plan()
	if plan.Risk == risk || plan.Risk == 0 && risk == planner.DefaultRisk {
		return nil
	}
	err := s.session.Do("site.edit_risk", nil, func(p planner.Plan) (planner.Plan, error) {
		p.Risk = risk
		return p, nil
	})
	if err == nil {
		s.tried = risk // until the plan is worked out at it, so that no date jumps back
	}
	return s.refused(err)
}

// settleRisk ends trying once the plan has been worked out at the risk.
func (s *Screen) settleRisk() {
	if _, current := s.session.Outlook(); current && s.tried == s.session.Plan().Risk {
		s.tried = 0
	}
}
