// Package details is what holds for the whole plan: its title, the units and the
// currency that it is read in, the risk of a freeze that the person accepts, and who
// lives with the pots. It draws nothing; what is changed is one edit.
package details

import (
	"math"
	"strings"

	"golang.org/x/text/currency"

	"fourturn/app/session"
	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/quantity"
)

// Session is the open plan with what is worked out for it.
type Session = session.Session[*planner.Outlook]

// Screen is the details of the open plan.
type Screen struct {
	session *Session
	words   *words.Words
}

// New returns the details of a session's plan.
func New(s *Session, w *words.Words) *Screen { return &Screen{session: s, words: w} }

// Details are the answers as they are typed.
type Details struct {
	Title     string
	Units     int // index into [Screen.Units]
	Currency  string
	Risk      string
	Household planner.Household
}

var systems = [...]quantity.System{quantity.Metric, quantity.USCustomary}

// Units returns the systems of units to choose from.
func (s *Screen) Units() []string {
	return []string{s.words.T("details.metric"), s.words.T("details.us")}
}

// Now returns what stands in the plan.
func (s *Screen) Now() Details {
	p := s.session.Plan()
	d := Details{Title: p.Title, Currency: p.Currency, Risk: s.words.Percent(p.Risk), Household: p.Household}
	if p.Units == quantity.USCustomary {
		d.Units = 1
	}
	return d
}

// ReadOnly reports whether the details may only be looked at.
func (s *Screen) ReadOnly() bool { return s.session.ReadOnly() }

// CheckCurrency refuses what is no code of a currency (ISO 4217); none is a code too.
func (s *Screen) CheckCurrency(typed string) error {
	_, err := s.currency(typed)
	return err
}

func (s *Screen) currency(typed string) (string, error) {
	code := strings.ToUpper(strings.TrimSpace(typed))
	if code == "" {
		return "", nil
	}
	if _, err := currency.ParseISO(code); err != nil {
		return "", &words.Refusal{Text: s.words.T("details.currency_unknown")}
	}
	return code, nil
}

// The risks that a plan may hold (planfile).
const leastRisk, mostRisk = 0.01, 0.99

// CheckRisk refuses what is no share of years from 1 to 99 %.
func (s *Screen) CheckRisk(typed string) error {
	_, err := s.risk(typed)
	return err
}

func (s *Screen) risk(typed string) (float64, error) {
	digits := strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(typed), "%"))
	percent, ok := s.words.Reader().Number(digits)
	if risk := percent / 100; ok && risk >= leastRisk && risk <= mostRisk {
		return math.Round(risk*1e4) / 1e4, nil
	}
	return 0, &words.Refusal{Text: s.words.T("details.risk_range")}
}

// Keep puts the details into the plan, as one edit. What cannot be read is refused
// with a [words.Refusal].
func (s *Screen) Keep(d Details) error {
	code, err := s.currency(d.Currency)
	if err != nil {
		return err
	}
	risk := s.session.Plan().Risk
	if strings.TrimSpace(d.Risk) != s.Now().Risk { // as written it may be rounded
		if risk, err = s.risk(d.Risk); err != nil {
			return err
		}
	}
	return s.session.Do("details.edit_details", nil, func(p planner.Plan) (planner.Plan, error) {
		title := strings.TrimSpace(d.Title)
		units := systems[d.Units]
		if p.Title == title && p.Units == units && p.Currency == code && p.Risk == risk && p.Household == d.Household {
			return p, session.ErrNothingToDo
		}
		p.Title, p.Units, p.Currency, p.Risk, p.Household = title, units, code, risk, d.Household
		return p, nil
	})
}
