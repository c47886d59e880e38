package climate

import (
	"math"

	"fourturn/planner/civil"
	"fourturn/planner/working"
)

// Digest is what a daily record tells of a climate, short enough to stand in a plan
// as text: means and scatter of the months, the cold seasons one by one, dates of
// freeze at several thresholds and levels, and days above several limits. A climate
// made of a digest gives the record's own dates at the thresholds and levels that it
// holds and comes within a day or two between them (the tests print the differences), so that the plan works on when the record's file is
// gone, and a person can read in it what the record said. The days themselves, some
// twenty thousand numbers, are not kept: nobody could read a plan that holds them.
type Digest struct {
	Name        string     // of the file or wherever it came from
	From, To    civil.Date // the part of the record that counts
	TminDays    int        // days with a minimum in it
	TmaxDays    int
	Southern    bool // whether the cold seasons begin on 1 February
	Means       Means
	Scatter     Means   // K, standard deviation of single days about the smooth normals, by month
	Persistence float64 // correlation of the maxima of neighbouring days
	Seasons     []SeasonDigest
	Freezes     []FreezeDigest // by rising threshold
	Hot         []HotDigest    // by rising limit
}

// SeasonDigest is one cold season of a record. What it tells of freezes holds only
// where it counts.
type SeasonDigest struct {
	Year    int     // in which it begins
	Missing int     // days without a minimum; see [MaxMissing]
	Lowest  float64 // °C
	Last    civil.MonthDay
	First   civil.MonthDay // freeze of 0 °C; zero days where the season has none
}

// Counts reports whether few enough days are missing.
func (s SeasonDigest) Counts() bool { return s.Missing <= MaxMissing }

// FreezeDigest are dates at one threshold among the seasons that reach it.
type FreezeDigest struct {
	Threshold float64          // °C, reached or passed
	Share     float64          // of seasons that reach it
	Last      []civil.MonthDay // at [DigestLevels]; none where the share is below 10 % or the freeze may come all year
	First     []civil.MonthDay
}

// HotDigest is the mean number of days a year with a maximum above a limit.
type HotDigest struct {
	Limit float64 // °C
	Days  float64
}

// DigestLevels are the odds of the dates of a [FreezeDigest], in order: those that
// NOAA publishes, and the finest that this package works to.
var DigestLevels = [...]float64{0.01, 0.05, 0.10, 0.20, 0.30, 0.40, 0.50, 0.60, 0.70, 0.80, 0.90, 0.95, 0.99}

// The thresholds of a digest, among them all of NOAA's: from the cold of the hardiest
// winter display to what a hollow may add to a light freeze; and the limits for heat.
const (
	coldestDigestF, warmestDigestF, digestStepF = -20, 48, 2
	coolestLimit, hottestLimit                  = 20, 50 // °C, a degree apart
)

// Digest works out what a record tells. years is how many of its last years count;
// 0 means 30, the years of a climatological normal. The errors are those of [New]
// for a record.
func (r *Record) Digest(name string, southern bool, years int) (*Digest, error) {
	r = r.recent(years)
	site := Place{Latitude: 45}
	if southern {
		site.Latitude = -45
	}
	b := &base{record: r}
	if err := b.fromRecord(r, site); err != nil {
		return nil, err
	}
	d := &Digest{Name: name, From: r.First(), To: r.Last(), Southern: southern}
	d.TminDays, d.TmaxDays, _ = r.Days()
	means, _, _ := r.Means()
	d.Means = means.rounded(100)
	d.Scatter, d.Persistence = r.scatter(b.tmin, b.tmax)
	for _, s := range r.Seasons(southern) {
		d.Seasons = append(d.Seasons, r.seasonDigest(s))
	}
	for f := coldestDigestF; f <= warmestDigestF; f += digestStepF {
		// As the series themselves are rounded, so that 32 °F is 0 and 28 °F is -2.2.
		threshold := math.Round(float64(f-32)/1.8*10) / 10
		if f := digestFreeze(b.freeze.at(threshold)); f.Share >= neverBelow {
			d.Freezes = append(d.Freezes, f)
		}
	}
	for limit := coolestLimit; limit <= hottestLimit; limit++ {
		days, ok := r.hotDays(float64(limit))
		if ok == 0 || days == 0 {
			break
		}
		d.Hot = append(d.Hot, HotDigest{float64(limit), rounded(days, 100)})
	}
	return d, nil
}

func rounded(x, per float64) float64 { return math.Round(x*per) / per }

// rounded returns the means to a part of a degree, as a file shows them.
func (m Means) rounded(per float64) Means {
	for i := range 12 {
		m.Tmin[i], m.Tmax[i] = rounded(m.Tmin[i], per), rounded(m.Tmax[i], per)
	}
	return m
}

func digestFreeze(o *FreezeOdds) FreezeDigest {
	f := FreezeDigest{Threshold: o.threshold, Share: rounded(o.annual, 10000)}
	for _, p := range DigestLevels {
		last, first := o.LastFreeze(Risk(p)), o.FirstFreeze(Risk(p))
		if !last.Known() || !first.Known() {
			f.Last, f.First = nil, nil
			return f
		}
		f.Last, f.First = append(f.Last, last.Day), append(f.First, first.Day)
	}
	return f
}

func (r *Record) seasonDigest(c SeasonCheck) SeasonDigest {
	s := SeasonDigest{Year: c.From.Year(), Missing: c.Missing, Lowest: math.Inf(1)}
	for d := c.From; d <= c.To; d++ {
		v := r.On(d).Tmin
		if math.IsNaN(v) {
			continue
		}
		s.Lowest = min(s.Lowest, v)
		if v <= 0.005 { // tenths in single precision
			s.Last = d.MonthDay()
			if s.First.IsZero() {
				s.First = s.Last
			}
		}
	}
	s.Lowest = rounded(s.Lowest, 10)
	if !s.Counts() {
		s.Last, s.First, s.Lowest = civil.MonthDay{}, civil.MonthDay{}, 0
	}
	return s
}

// scatter returns by month the standard deviation of single days about the normals,
// and the correlation of the maxima of neighbouring days.
func (r *Record) scatter(tmin, tmax *Year) (s Means, persistence float64) {
	var sums [2][12]float64
	var n [2][12]float64
	var product, square float64
	before := math.NaN()
	for i := range r.tmin {
		d := r.first.AddDays(i)
		m := d.Month() - 1
		low, high := float64(r.tmin[i])-tmin.On(d), float64(r.tmax[i])-tmax.On(d)
		if !math.IsNaN(low) {
			sums[0][m] += low * low
			n[0][m]++
		}
		if !math.IsNaN(high) {
			sums[1][m] += high * high
			n[1][m]++
		}
		if x := before * high; !math.IsNaN(x) {
			product += x
			square += (before*before + high*high) / 2
		}
		before = high
	}
	for m := range 12 {
		s.Tmin[m] = max(leastScatter, math.Sqrt(sums[0][m]/max(1, n[0][m])))
		s.Tmax[m] = max(leastScatter, math.Sqrt(sums[1][m]/max(1, n[1][m])))
	}
	return s.rounded(100), rounded(clamp(product/max(1e-9, square), 0, 0.95), 100)
}

// source says what the figures of a digest rest on.
func (d *Digest) source() working.Source {
	return working.Source{Status: working.Entered, Cite: d.Name}
}

// leastScatter keeps the scatter of a day above zero, K: instruments read to a tenth.
const leastScatter = 0.3
