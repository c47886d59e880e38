package figures

import (
	"encoding/json"
	"io"

	"fourturn/planner"
	"fourturn/planner/civil"
	"fourturn/planner/finding"
	"fourturn/planner/working"
)

// Format names the version of the keys.
const Format = "fourturn figures 1"

type document struct {
	Format   string        `json:"format"`
	Title    string        `json:"title"`
	Today    civil.Date    `json:"today"`
	First    civil.Date    `json:"first_day"`
	Last     civil.Date    `json:"last_day"`
	Risk     float64       `json:"risk_share"`
	Sites    []siteJSON    `json:"sites"`
	Pots     []potJSON     `json:"pots"`
	Rounds   []roundJSON   `json:"rounds"`
	Due      []dueJSON     `json:"due"`
	Buying   []buyingJSON  `json:"buying"`
	Findings []findingJSON `json:"findings"`
}

type siteJSON struct {
	ID        string       `json:"id"`
	Name      string       `json:"name"`
	Station   string       `json:"station"`
	Place     string       `json:"place"`
	Period    string       `json:"normals_period"`
	Estimated bool         `json:"freeze_dates_estimated"`
	Figures   []figureJSON `json:"figures"`
	Seasons   []seasonJSON `json:"seasons"`
}

type potJSON struct {
	ID      string      `json:"id"`
	Name    string      `json:"name"`
	Spot    string      `json:"spot"`
	Kind    string      `json:"shape"`
	Brim    *figureJSON `json:"volume_to_brim_L"`
	Fill    *figureJSON `json:"volume_to_fill_line_L"`
	Mix     *figureJSON `json:"loose_mix_to_fill_L"`
	Refresh *figureJSON `json:"loose_mix_to_refresh_L"`
	Charge  *figureJSON `json:"slow_release_to_fill_kg"`
	Spoons  *figureJSON `json:"slow_release_to_fill_level_tablespoons"`
	Dry     *figureJSON `json:"dry_mass_kg"`
	Wet     *figureJSON `json:"wet_mass_kg"`
	Empty   *figureJSON `json:"empty_mass_kg"`
	Tops    *figureJSON `json:"plants_mass_kg"`
	Load    *figureJSON `json:"floor_load_kg_m2"`
	Layer   *figureJSON `json:"drainage_layer_L"`
	Water   *figureJSON `json:"reservoir_L"`
	Stands  []standJSON `json:"plantings"`
	Feeds   []feedJSON  `json:"feeds"`
}

type standJSON struct {
	Season   string      `json:"season"`
	From     *figureJSON `json:"change_out_date"`
	To       civil.Date  `json:"until_date"`
	Earliest civil.Date  `json:"earliest_date"`
	Latest   civil.Date  `json:"latest_date"`
	Reason   string      `json:"reason"`
	Pinned   bool        `json:"pinned"`
	Happened bool        `json:"happened"`
	Plants   []plantJSON `json:"plants"`
	Mix      *figureJSON `json:"fresh_loose_mix_L"`
	Charge   *figureJSON `json:"slow_release_kg"`
	Spoons   *figureJSON `json:"slow_release_level_tablespoons"`
	Spent    *figureJSON `json:"slow_release_spent_date"`
	Policy   string      `json:"mix_reason,omitempty"`
	Before   float64     `json:"content_before_L"`
	BallsOut float64     `json:"root_balls_out_L"`
	OldOut   float64     `json:"old_mix_out_L"`
	BallsIn  float64     `json:"root_balls_in_L"`
	Fresh    float64     `json:"fresh_firm_mix_L"`
	Age      float64     `json:"mix_age_after_seasons"`
}

type plantJSON struct {
	Plant string      `json:"plant"`
	Role  string      `json:"role"`
	Count *figureJSON `json:"count"`
}

type feedJSON struct {
	Date    civil.Date  `json:"date"`
	Product string      `json:"product"`
	Water   *figureJSON `json:"dilute_feed_L"`
	Done    bool        `json:"done"`
}

type roundJSON struct {
	Date    civil.Date  `json:"date"`
	Product string      `json:"product"`
	Pots    []string    `json:"pots"`
	Water   *figureJSON `json:"dilute_feed_L"`
	Dose    *figureJSON `json:"product_kg"`
	Spoons  *figureJSON `json:"level_teaspoons_per_can"`
	Cans    *figureJSON `json:"cans"`
	Done    bool        `json:"done"`
}

type dueJSON struct {
	Date    civil.Date `json:"date"`
	Kind    string     `json:"kind"`
	Pots    []string   `json:"pots"`
	Product string     `json:"product,omitempty"`
	Season  string     `json:"season,omitempty"`
	Overdue int        `json:"overdue_days"`
}

type buyingJSON struct {
	Product string      `json:"product"`
	Unit    string      `json:"unit"`
	Need    *figureJSON `json:"need"`
}

type findingJSON struct {
	Code     string            `json:"code"`
	Severity string            `json:"severity"`
	Where    []string          `json:"where"`
	Args     map[string]anyArg `json:"args,omitempty"`
}

// Write writes the outlook as indented JSON.
func Write(w io.Writer, o *planner.Outlook) error {
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	return encoder.Encode(of(o))
}

func of(o *planner.Outlook) document {
	d := document{
		Format: Format, Title: o.Plan.Title, Today: o.Today, First: o.First, Last: o.Last, Risk: o.Plan.Risk,
		Sites: []siteJSON{}, Pots: []potJSON{}, Rounds: []roundJSON{}, Due: []dueJSON{}, Buying: []buyingJSON{},
		Findings: []findingJSON{},
	}
	for i := range o.Sites {
		d.Sites = append(d.Sites, siteOf(&o.Sites[i]))
	}
	for i := range o.Pots {
		d.Pots = append(d.Pots, potOf(&o.Pots[i]))
	}
	for i := range o.Rounds {
		r := &o.Rounds[i]
		d.Rounds = append(d.Rounds, roundJSON{
			Date: r.Date, Product: r.Product, Pots: ids(o, r.Pots), Water: figureOf(r.Water),
			Dose: figureOf(r.Dose), Spoons: figureOf(r.Spoons), Cans: figureOf(r.Cans), Done: r.Done,
		})
	}
	for _, due := range o.Due {
		d.Due = append(d.Due, dueJSON{
			Date: due.Date, Kind: string(due.Kind), Pots: ids(o, due.Pots), Product: due.Product,
			Season: string(due.Season), Overdue: due.Overdue(o.Today),
		})
	}
	for _, b := range o.Buying {
		d.Buying = append(d.Buying, buyingJSON{Product: b.Product, Unit: string(b.Need.Value.Unit), Need: figureOf(b.Need)})
	}
	for _, f := range o.Findings {
		d.Findings = append(d.Findings, findingOf(f))
	}
	return d
}

func ids(o *planner.Outlook, pots []int) []string {
	names := make([]string, len(pots))
	for i, p := range pots {
		names[i] = o.Pots[p].Pot.ID
	}
	return names
}

func potOf(p *planner.PotOutlook) potJSON {
	out := potJSON{
		ID: p.Pot.ID, Name: p.Pot.Name, Spot: p.Pot.Spot, Kind: string(p.Pot.Vessel.Kind),
		Brim: figureOf(p.Brim), Fill: figureOf(p.Fill), Mix: figureOf(p.Mix), Refresh: figureOf(p.Refresh),
		Charge: figureOf(p.Charge), Spoons: figureOf(p.Spoons), Dry: figureOf(p.Dry), Wet: figureOf(p.Wet),
		Empty: figureOf(p.Empty), Tops: figureOf(p.Tops), Load: figureOf(p.Load), Layer: figureOf(p.Layer), Water: figureOf(p.Reservoir),
		Stands: []standJSON{}, Feeds: []feedJSON{},
	}
	for i := range p.Stands {
		out.Stands = append(out.Stands, standOf(&p.Stands[i]))
	}
	for _, f := range p.Feeds {
		out.Feeds = append(out.Feeds, feedJSON{Date: f.Date, Product: f.Product, Water: figureOf(f.Water), Done: f.Done})
	}
	return out
}

func standOf(s *planner.Stand) standJSON {
	out := standJSON{
		Season: string(s.Season), From: figureOf(s.Start), To: s.To, Earliest: s.Earliest, Latest: s.Latest,
		Reason: s.Reason, Pinned: s.Pinned, Happened: s.Happened, Plants: []plantJSON{},
		Mix: figureOf(s.Mix), Charge: figureOf(s.Charge), Spoons: figureOf(s.Spoons), Spent: figureOf(s.Spent),
		Policy: string(s.Balance.Reason), Before: float64(s.Balance.Before.Volume), BallsOut: float64(s.Balance.BallsOut),
		OldOut: float64(s.Balance.OldOut), BallsIn: float64(s.Balance.BallsIn), Fresh: float64(s.Balance.Fresh), Age: s.Balance.After.Age,
	}
	for _, p := range s.Plants {
		out.Plants = append(out.Plants, plantJSON{Plant: p.Plant, Role: string(p.Role), Count: figureOf(p.Count)})
	}
	return out
}

func findingOf(f finding.Finding) findingJSON {
	out := findingJSON{Code: f.Code, Severity: f.Severity.String(), Where: f.Where}
	if len(f.Args) > 0 {
		out.Args = map[string]anyArg{}
		for _, a := range f.Args {
			out.Args[a.Name] = anyArg{Value: valueOf(a.Value), Unit: unitOf(a.Value)}
		}
	}
	return out
}

type anyArg struct {
	Value any    `json:"value"`
	Unit  string `json:"unit,omitempty"`
}

func unitOf(v working.Value) string {
	if v.Text != "" {
		return ""
	}
	return string(v.Unit)
}
