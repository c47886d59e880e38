package climate

import "fourturn/planner/civil"

// Means are the twelve monthly means of a place, January first.
type Means struct {
	Tmin [12]float64 // mean daily minimum, °C
	Tmax [12]float64 // mean daily maximum, °C
}

// FreezeTable holds dates of last and first freeze at one threshold, at the three
// levels 10, 50 and 90 %. A zero day is one that was not published. The levels
// follow NOAA: p10 is the cautious date, late in spring and early in autumn.
type FreezeTable struct {
	Threshold float64 // °C, reached or passed
	Last      [3]civil.MonthDay
	First     [3]civil.MonthDay
}

// The levels of a [FreezeTable], in order.
var tableLevels = [3]float64{0.10, 0.50, 0.90}

// FreezeNote says what a publisher states about freezes at a station where it
// gives no dates.
type FreezeNote string

// The notes on freezes.
const (
	FreezeDated   FreezeNote = ""         // dates are given, or nothing is known
	FreezeRare    FreezeNote = "rare"     // in fewer than one year of ten; no dates are given
	FreezeAllYear FreezeNote = "all_year" // the risk of freeze lasts all year; no dates are given
)

// DataSource names where the figures of a station are from.
type DataSource string

// The sources of the station table; NOTICE gives their licences.
const (
	SourceCLIMAT     DataSource = "DWD-CLIMAT"          // means of monthly CLIMAT reports
	SourceMetOffice  DataSource = "UKMO-historic"       // means of historic station data
	SourceNOAA9120   DataSource = "NOAA-NCEI-1991-2020" // published normals
	SourceNOAA8110   DataSource = "NOAA-NCEI-1981-2010" // published normals
	SourceGHCN       DataSource = "GHCN-DAILY"          // worked out from a daily series
	SourceMetEireann DataSource = "MET-EIREANN"         // worked out from a daily series
	SourceFreezeUS   DataSource = "NOAA-FREEZE"         // published freeze dates 1981-2010
)

// Station is one row of the built-in table.
type Station struct {
	ID      string
	Name    string
	Also    string // other names that people search for, separated by spaces
	Country string
	Admin   string // state or province of the US, Canada and Australia
	Place   Place
	Means   Means
	Rain    *[12]float64 // whole-month means in mm, or nil where not known

	Freezes      []FreezeTable // none, one or two thresholds
	FreezeNote   FreezeNote
	FreezeSource DataSource // of Freezes or of FreezeNote; empty where there is neither
	FreezePeriod string     // years of the freeze dates

	ExtremeMin  *float64 // mean of the yearly lowest temperatures, °C, or nil
	ExtremeFrom int      // number of cold seasons in it

	Source   DataSource
	Period   string // of the means, such as "1991-2020"
	MinYears int    // the fewest years behind any of the twelve months; 0 where not known
}

// FreezeStation is one station of NOAA's published freeze dates 1981-2010 at
// 0 °C (32 °F): the 50 and 90 % levels.
type FreezeStation struct {
	ID      string
	Name    string
	State   string
	Place   Place
	Freezes FreezeTable // Last[0] and First[0] are not published
	Note    FreezeNote
	Season  [2]int // freeze-free days that are exceeded in 50 and in 90 % of years
	Flag    string // completeness: C complete, S standard, R representative, P provisional, Q estimated
}
