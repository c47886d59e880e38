package quantity

// Length is a distance in metres.
type Length float64

// Area is a surface in square metres.
type Area float64

// Volume is a capacity in litres.
type Volume float64

// Mass is a mass in kilograms.
type Mass float64

// Temperature is a temperature in degrees Celsius.
type Temperature float64

// Lengths. The inch is 25.4 mm exactly (NIST Handbook 44, appendix C).
const (
	Metre      Length = 1
	Centimetre Length = 0.01
	Millimetre Length = 0.001
	Inch       Length = 0.0254
	Foot       Length = 12 * Inch
	Yard       Length = 3 * Foot
)

// Volumes. A US gallon is 231 in³ and a bushel 2150.42 in³ exactly (NIST
// Handbook 44, appendix C); a bushel is 32 dry quarts, a gallon 4 liquid quarts,
// a gallon 256 tablespoons.
const (
	Litre       Volume = 1
	Millilitre  Volume = 0.001
	CubicMetre  Volume = 1000
	CubicInch   Volume = 0.016387064
	CubicFoot          = 1728 * CubicInch
	CubicYard          = 27 * CubicFoot
	Gallon             = 231 * CubicInch
	LiquidQuart        = Gallon / 4
	Pint               = Gallon / 8
	Cup                = Gallon / 16
	FluidOunce         = Gallon / 128
	Tablespoon         = Gallon / 256
	Teaspoon           = Gallon / 768
	Bushel             = 2150.42 * CubicInch
	DryGallon          = Bushel / 8
	DryQuart           = Bushel / 32
	DryPint            = Bushel / 64
	// TradeGallon is the nursery's "#1": 3 liquid quarts (J. Environ. Hort. 18:188, 2000).
	TradeGallon = 3 * LiquidQuart
	// ImperialGallon is 4.54609 L exactly (UK Units of Measurement Regulations 1995).
	ImperialGallon Volume = 4.54609
)

// Masses. The avoirdupois pound is 0.45359237 kg exactly (NIST Handbook 44, appendix C).
const (
	Kilogram  Mass = 1
	Gram      Mass = 0.001
	Milligram Mass = 1e-6
	Tonne     Mass = 1000
	Pound     Mass = 0.45359237
	Ounce     Mass = Pound / 16
)

// CubicMetres returns the volume in cubic metres.
func (v Volume) CubicMetres() float64 { return float64(v / CubicMetre) }

// Litres returns the volume in litres.
func (v Volume) Litres() float64 { return float64(v) }

// Grams returns the mass in grams.
func (m Mass) Grams() float64 { return float64(m / Gram) }

// Kilograms returns the mass in kilograms.
func (m Mass) Kilograms() float64 { return float64(m) }

// Metres returns the length in metres.
func (l Length) Metres() float64 { return float64(l) }

// Centimetres returns the length in centimetres.
func (l Length) Centimetres() float64 { return float64(l / Centimetre) }

// Fahrenheit returns the temperature in degrees Fahrenheit, T(°C) × 1.8 + 32.
func (t Temperature) Fahrenheit() float64 { return float64(t)*1.8 + 32 }

// FromFahrenheit returns the temperature of a reading in degrees Fahrenheit.
func FromFahrenheit(f float64) Temperature { return Temperature((f - 32) / 1.8) }

// System is the family of units a person reads.
type System int

// The two systems a plan can be shown in. The zero System is metric.
const (
	Metric System = iota
	USCustomary
)

// String returns the word that plan files use: "metric" or "us".
func (s System) String() string {
	if s == USCustomary {
		return "us"
	}
	return "metric"
}
