package quantity

// unitNames lists, for each kind, every spelling that is understood, in SI. Case,
// points and "^" do not matter: "Cu. Ft." and "ft^3" are found too.
var unitNames = map[Kind]map[string]float64{
	KindLength: {
		"m": 1, "metre": 1, "metres": 1, "meter": 1, "meters": 1,
		"cm": float64(Centimetre), "centimetre": float64(Centimetre), "centimetres": float64(Centimetre),
		"centimeter": float64(Centimetre), "centimeters": float64(Centimetre),
		"mm": float64(Millimetre), "millimetre": float64(Millimetre), "millimetres": float64(Millimetre),
		"millimeter": float64(Millimetre), "millimeters": float64(Millimetre),
		"in": float64(Inch), "inch": float64(Inch), "inches": float64(Inch), `"`: float64(Inch),
		"ft": float64(Foot), "foot": float64(Foot), "feet": float64(Foot), "'": float64(Foot),
		"yd": float64(Yard), "yard": float64(Yard), "yards": float64(Yard),
	},
	KindVolume: volumeNames,
	KindMass: {
		"kg": 1, "kilogram": 1, "kilograms": 1,
		"g": float64(Gram), "gram": float64(Gram), "grams": float64(Gram),
		"mg": float64(Milligram), "t": float64(Tonne), "tonne": float64(Tonne), "tonnes": float64(Tonne),
		"lb": float64(Pound), "lbs": float64(Pound), "pound": float64(Pound), "pounds": float64(Pound),
		"oz": float64(Ounce), "ounce": float64(Ounce), "ounces": float64(Ounce),
	},
}

var volumeNames = map[string]float64{
	"l": 1, "litre": 1, "litres": 1, "liter": 1, "liters": 1,
	"dm3": 1, "dm³": 1, "hl": 100, "dl": 0.1, "cl": 0.01,
	"ml": float64(Millilitre), "millilitre": float64(Millilitre), "millilitres": float64(Millilitre),
	"milliliter": float64(Millilitre), "milliliters": float64(Millilitre),
	"cm3": float64(Millilitre), "cm³": float64(Millilitre), "cc": float64(Millilitre),
	"m3": 1000, "m³": 1000, "cu m": 1000, "cubic metre": 1000, "cubic metres": 1000, "cubic meter": 1000, "cubic meters": 1000,

	"cu in": float64(CubicInch), "in3": float64(CubicInch), "in³": float64(CubicInch),
	"cubic inch": float64(CubicInch), "cubic inches": float64(CubicInch),
	"cu ft": float64(CubicFoot), "cuft": float64(CubicFoot), "ft3": float64(CubicFoot), "ft³": float64(CubicFoot), "cf": float64(CubicFoot),
	"cubic foot": float64(CubicFoot), "cubic feet": float64(CubicFoot),
	"cu yd": float64(CubicYard), "yd3": float64(CubicYard), "yd³": float64(CubicYard),
	"cubic yard": float64(CubicYard), "cubic yards": float64(CubicYard),

	"gal": float64(Gallon), "gallon": float64(Gallon), "gallons": float64(Gallon), "us gal": float64(Gallon),
	"us gallon": float64(Gallon), "us gallons": float64(Gallon), "u s gal": float64(Gallon), "liq gal": float64(Gallon),
	"dry gal": float64(DryGallon), "dry gallon": float64(DryGallon), "dry gallons": float64(DryGallon),
	"trade gal": float64(TradeGallon), "trade gallon": float64(TradeGallon), "trade gallons": float64(TradeGallon),
	"imp gal": float64(ImperialGallon), "imperial gallon": float64(ImperialGallon), "imperial gallons": float64(ImperialGallon),

	"dry qt": float64(DryQuart), "dry quart": float64(DryQuart), "dry quarts": float64(DryQuart),
	"liq qt": float64(LiquidQuart), "liquid qt": float64(LiquidQuart), "liquid quart": float64(LiquidQuart), "liquid quarts": float64(LiquidQuart),
	"dry pt": float64(DryPint), "dry pint": float64(DryPint), "dry pints": float64(DryPint),
	"liq pt": float64(Pint), "liquid pt": float64(Pint), "liquid pint": float64(Pint), "liquid pints": float64(Pint),
	"bu": float64(Bushel), "bushel": float64(Bushel), "bushels": float64(Bushel),

	"fl oz": float64(FluidOunce), "fluid ounce": float64(FluidOunce), "fluid ounces": float64(FluidOunce),
	"cup": float64(Cup), "cups": float64(Cup),
	"tbsp": float64(Tablespoon), "tablespoon": float64(Tablespoon), "tablespoons": float64(Tablespoon),
	"tsp": float64(Teaspoon), "teaspoon": float64(Teaspoon), "teaspoons": float64(Teaspoon),
}

// dryOrLiquid are the names that mean two units.
var dryOrLiquid = map[string]bool{
	"qt": true, "qts": true, "quart": true, "quarts": true,
	"pt": true, "pts": true, "pint": true, "pints": true,
}
