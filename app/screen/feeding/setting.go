package feeding

import (
	"errors"
	"strconv"
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/quantity"
)

func (s *Screen) refusal(err error) error {
	var parse *quantity.ParseError
	if errors.As(err, &parse) {
		return &FieldError{Text: s.words.Refusal(parse)}
	}
	return err
}

// The intervals that a person may ask for: feeds every 7 to 14 days are common
// practice, and the planner allows what lies around it.
const (
	leastInterval = 3
	mostInterval  = 60
)

// Interval returns the days between a pot's feeds, or "" where the feeder class
// decides.
func (s *Screen) Interval() string {
	if n := s.session.Plan().Feeding.Interval; n > 0 {
		return s.words.Days(n)
	}
	return ""
}

// SetInterval changes the days between a pot's feeds; nothing typed gives them back
// to the feeder class.
func (s *Screen) SetInterval(typed string) error {
	days := 0
	if typed = strings.TrimSpace(typed); typed != "" {
		number, _, _ := strings.Cut(typed, " ")
		n, err := strconv.Atoi(number)
		if err != nil || n < leastInterval || n > mostInterval {
			return &FieldError{Text: s.words.T("feeding.interval_range", words.A{"least": leastInterval, "most": mostInterval})}
		}
		days = n
	}
	return s.session.Do("feeding.edit_interval", nil, func(p planner.Plan) (planner.Plan, error) {
		p.Feeding.Interval = days
		return p, nil
	})
}

// Charge is the slow release of one pot.
type Charge struct {
	Pot    string
	Season string
	When   string
	Mass   Figure
	Spoons Figure
	Spent  Figure
}

// Charges returns the slow release that is in the pots or goes in next.
func (s *Screen) Charges() []Charge {
	all, _ := s.session.Outlook()
	if all == nil {
		return nil
	}
	var list []Charge
	for i := range all.Pots {
		p := &all.Pots[i]
		for k := range p.Stands {
			stand := &p.Stands[k]
			if stand.Charge.IsZero() || stand.To <= all.Today {
				continue
			}
			name := p.Pot.Name
			if name == "" {
				name = p.Pot.ID
			}
			list = append(list, Charge{
				Pot: name, Season: s.words.T("plan.season." + string(stand.Season)), When: s.words.Date(stand.From),
				Mass: s.figure("feeding.charge", stand.Charge), Spoons: s.figure("feeding.tablespoons", stand.Spoons),
				Spent: s.figure("feeding.spent", stand.Spent),
			})
			break
		}
	}
	return list
}
