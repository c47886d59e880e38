package site

import (
	"strings"

	"fourturn/app/words"
	"fourturn/planner"
	"fourturn/planner/climate"
	"fourturn/planner/finding"
	"fourturn/planner/quantity"
	"fourturn/planner/working"
)

// SpotRow is a spot in the list of the site's.
type SpotRow struct {
	ID, Name, Kind, Light, Last, First string
	Pots                               int
}

// spots returns the spots of the chosen site.
func (s *Screen) spots() []*planner.Spot {
	var list []*planner.Spot
	site, plan := s.Chosen(), s.session.Plan()
	for i := range plan.Spots {
		if site != nil && plan.Spots[i].Site == site.ID {
			list = append(list, &plan.Spots[i])
		}
	}
	return list
}

// Spots returns the spots of the site, each with its last and first freeze at the
// threshold and the risk that hold, and the number of the chosen one, or -1.
func (s *Screen) Spots() (list []SpotRow, chosen int) {
	chosen = -1
	out := s.Outlook()
	at := s.ChosenSpot()
	for i, spot := range s.spots() {
		row := SpotRow{
			ID: spot.ID, Name: spot.Label(), Kind: words.Capital(s.words.T("climate.spot_" + kindOf(spot).Key)),
			Light: s.lightOf(spot), Pots: s.session.Plan().PotsAt(spot.ID),
		}
		if out != nil {
			freezes := s.freezesOf(out.ClimateAt(spot))
			row.Last, row.First = freezes[0].Value, freezes[1].Value
		}
		if spot == at {
			chosen = i
		}
		list = append(list, row)
	}
	return list, chosen
}

func kindOf(spot *planner.Spot) climate.Spot {
	kind, ok := climate.SpotByKey(spot.Shelter)
	if !ok {
		return climate.Open
	}
	return kind
}

func (s *Screen) lightOf(spot *planner.Spot) string {
	for i, light := range lights {
		if light == spot.Light {
			return s.Lights()[i]
		}
	}
	return ""
}

var lights = [...]planner.Light{planner.NoLight, planner.Sun, planner.PartSun, planner.Shade}

// Lights returns the words for the light of a spot.
func (s *Screen) Lights() []string {
	return []string{s.words.T("site.light_none"), s.words.T("site.light_sun"), s.words.T("site.light_part"), s.words.T("site.light_shade")}
}

// Kinds returns the words for the kinds of place, as one sees them.
func (s *Screen) Kinds() []string {
	var list []string
	for _, kind := range climate.Spots() {
		list = append(list, words.Capital(s.words.T("climate.spot_"+kind.Key)))
	}
	return list
}

// ChosenSpot returns the spot that is looked at, or nil where the site has none.
func (s *Screen) ChosenSpot() *planner.Spot {
	all := s.spots()
	for _, spot := range all {
		if spot.ID == s.spot {
			return spot
		}
	}
	if len(all) == 0 {
		return nil
	}
	return all[0]
}

// ChooseSpot looks at another spot, by its number in the list.
func (s *Screen) ChooseSpot(i int) {
	if all := s.spots(); i >= 0 && i < len(all) {
		s.spot = all[i].ID
	}
}

// SpotFields are the fields of the chosen spot.
type SpotFields struct {
	Name       string
	Kind       int // number in Kinds
	Light      int // number in Lights
	Night, Day string
	NightHelp  string // the usual offset of the kind
	DayHelp    string
	Pots       int
	Figures    []Figure
}

// Spot returns the fields of the chosen spot; false where the site has none.
func (s *Screen) Spot() (SpotFields, bool) {
	spot := s.ChosenSpot()
	if spot == nil {
		return SpotFields{}, false
	}
	kind := kindOf(spot)
	f := SpotFields{
		Name: spot.Name, NightHelp: s.words.T("site.usual", words.A{"offset": s.offset(kind.Night)}),
		DayHelp: s.words.T("site.usual", words.A{"offset": s.offset(kind.Day)}), Pots: s.session.Plan().PotsAt(spot.ID),
	}
	for i, k := range climate.Spots() {
		if k.Key == kind.Key {
			f.Kind = i
		}
	}
	for i, light := range lights {
		if light == spot.Light {
			f.Light = i
		}
	}
	if spot.NightOffset != nil {
		f.Night = s.offset(*spot.NightOffset)
	}
	if spot.DayOffset != nil {
		f.Day = s.offset(*spot.DayOffset)
	}
	if out := s.Outlook(); out != nil {
		f.Figures = s.spotFigures(out.ClimateAt(spot))
	}
	return f, true
}

// spotFigures are what the spot makes of the site's climate, and of the roots of a pot
// that stands there.
func (s *Screen) spotFigures(c *climate.Climate) []Figure {
	shift := c.Shift()
	list := []Figure{s.figure(planner.NewFigure(working.Number(shift.Night, working.Kelvin), shift.Working), s.words.T("site.shift"))}
	list[0].Value = s.offset(shift.Night)
	list = append(list, s.freezesOf(c)[:2]...)
	roots := c.RootZone(s.pot, climate.SunOnDarkPot)
	width := words.A{"width": s.words.Length(s.pot, s.units())}
	return append(list,
		s.figure(planner.NewFigure(working.Text(c.HardinessZone().String()), c.HardinessWorking), ""),
		s.figure(planner.NewFigure(working.Number(float64(roots.ExtremeMin()), working.Celsius), roots.Working), s.words.T("site.roots_cold", width)),
		s.figure(planner.NewFigure(working.Number(float64(roots.Hottest()), working.Celsius), roots.HottestWorking), s.words.T("site.roots_hot", width)),
	)
}

// offset writes a difference of temperatures with its sign.
func (s *Screen) offset(kelvin float64) string {
	text := s.words.Value(working.Number(kelvin, working.Kelvin), s.units())
	if kelvin > 0 {
		return "+" + text
	}
	return text
}

// editSpot changes the chosen spot as one step that can be taken back.
func (s *Screen) editSpot(edit func(*planner.Spot)) error {
	spot := s.ChosenSpot()
	if spot == nil {
		return nil
	}
	id := spot.ID
	return s.refused(s.session.Do("site.edit_spot", aboutSpot(spot), func(p planner.Plan) (planner.Plan, error) {
		return p.WithSpot(id, edit)
	}))
}

func aboutSpot(spot *planner.Spot) []finding.Arg {
	return []finding.Arg{{Name: "spot", Value: working.Text(spot.Label())}}
}

// AddSpot adds a spot in the open to the site and looks at it.
func (s *Screen) AddSpot() error {
	site, plan := s.Chosen(), s.session.Plan()
	if site == nil {
		return nil
	}
	id := planner.FreeID("spot", func(id string) bool { return plan.Spot(id) != nil })
	spot := planner.Spot{ID: id, Name: s.words.T("site.new_spot", words.A{"n": len(s.spots()) + 1}), Site: site.ID, Shelter: climate.Open.Key}
	err := s.session.Do("site.edit_spot_add", aboutSpot(&spot), func(p planner.Plan) (planner.Plan, error) {
		p.Spots = append(p.Spots[:len(p.Spots):len(p.Spots)], spot)
		return p, nil
	})
	if err == nil {
		s.spot = id
	}
	return s.refused(err)
}

// RemoveSpot takes the chosen spot out of the plan. Its pots stay, at no spot.
func (s *Screen) RemoveSpot() error {
	spot := s.ChosenSpot()
	if spot == nil {
		return nil
	}
	id := spot.ID
	return s.refused(s.session.Do("site.edit_spot_remove", aboutSpot(spot), func(p planner.Plan) (planner.Plan, error) { return p.WithoutSpot(id) }))
}

// SetSpotName gives the chosen spot a name.
func (s *Screen) SetSpotName(typed string) error {
	name := strings.TrimSpace(typed)
	if name == "" {
		return &words.Refusal{Text: s.words.T("site.name_empty")}
	}
	return s.editSpot(func(spot *planner.Spot) { spot.Name = name })
}

// SetSpotKind says what kind of place the chosen spot is, by its number in Kinds. The
// offsets become those usual there.
func (s *Screen) SetSpotKind(i int) error {
	kinds := climate.Spots()
	if i < 0 || i >= len(kinds) {
		return nil
	}
	return s.editSpot(func(spot *planner.Spot) { spot.Shelter, spot.NightOffset, spot.DayOffset = kinds[i].Key, nil, nil })
}

// SetSpotLight says how much sun the chosen spot gets, by its number in Lights.
func (s *Screen) SetSpotLight(i int) error {
	if i < 0 || i >= len(lights) {
		return nil
	}
	return s.editSpot(func(spot *planner.Spot) { spot.Light = lights[i] })
}

// widestOffset is the widest offset of a spot, K.
const widestOffset = 20.0

// SetSpotOffset says by how much the chosen spot is warmer by night or by day than the
// site; nothing typed takes what is usual for its kind.
func (s *Screen) SetSpotOffset(night bool, typed string) error {
	var offset *float64
	if text := strings.TrimSpace(typed); text != "" {
		x, ok := s.readOffset(text)
		if !ok {
			return &words.Refusal{Text: s.words.T("site.offset_format")}
		}
		if x < -widestOffset || x > widestOffset {
			return &words.Refusal{Text: s.words.T("site.range", words.A{"lowest": s.offset(-widestOffset), "highest": s.offset(widestOffset)})}
		}
		offset = &x
	}
	return s.editSpot(func(spot *planner.Spot) {
		if night {
			spot.NightOffset = offset
		} else {
			spot.DayOffset = offset
		}
	})
}

// PotWidth returns the width of the pot whose roots are told of.
func (s *Screen) PotWidth() string { return s.words.Length(s.pot, s.units()) }

// The pots whose roots may be asked for.
const narrowest, widest = 5 * quantity.Centimetre, 3 * quantity.Metre

// SetPotWidth asks for the roots of another pot.
func (s *Screen) SetPotWidth(typed string) error {
	unit := quantity.Centimetre
	if s.units() == quantity.USCustomary {
		unit = quantity.Inch
	}
	l, err := s.words.Reader().Length(typed, unit)
	if err != nil {
		return s.words.Unread(err)
	}
	if l < narrowest || l > widest {
		return &words.Refusal{Text: s.words.T("site.range", words.A{"lowest": s.words.Length(narrowest, s.units()), "highest": s.words.Length(widest, s.units())})}
	}
	s.pot = l
	return nil
}
