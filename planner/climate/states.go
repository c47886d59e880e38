package climate

// stateName returns the code and the full name of a station's state or province,
// so that either is found. Codes are those of the table: postal codes for the
// US and Australia, older abbreviations for Canada.
func stateName(s Station) string {
	names := map[string]map[string]string{
		"United States": usStates, "Canada": canadianProvinces, "Australia": australianStates,
	}
	return s.Admin + " " + names[s.Country][s.Admin]
}

var usStates = map[string]string{
	"AL": "Alabama", "AK": "Alaska", "AZ": "Arizona", "AR": "Arkansas", "CA": "California", "CO": "Colorado",
	"CT": "Connecticut", "DE": "Delaware", "FL": "Florida", "GA": "Georgia", "HI": "Hawaii", "ID": "Idaho",
	"IL": "Illinois", "IN": "Indiana", "IA": "Iowa", "KS": "Kansas", "KY": "Kentucky", "LA": "Louisiana",
	"ME": "Maine", "MD": "Maryland", "MA": "Massachusetts", "MI": "Michigan", "MN": "Minnesota",
	"MS": "Mississippi", "MO": "Missouri", "MT": "Montana", "NE": "Nebraska", "NV": "Nevada",
	"NH": "New Hampshire", "NJ": "New Jersey", "NM": "New Mexico", "NY": "New York", "NC": "North Carolina",
	"ND": "North Dakota", "OH": "Ohio", "OK": "Oklahoma", "OR": "Oregon", "PA": "Pennsylvania",
	"RI": "Rhode Island", "SC": "South Carolina", "SD": "South Dakota", "TN": "Tennessee", "TX": "Texas",
	"UT": "Utah", "VT": "Vermont", "VA": "Virginia", "WA": "Washington", "WV": "West Virginia",
	"WI": "Wisconsin", "WY": "Wyoming",
}

var canadianProvinces = map[string]string{
	"ALTA": "Alberta AB", "BC": "British Columbia", "MAN": "Manitoba MB", "NB": "New Brunswick",
	"NFDL": "Newfoundland and Labrador NL", "NFLD": "Newfoundland and Labrador NL", "NS": "Nova Scotia",
	"NU": "Nunavut", "NWT": "Northwest Territories NT", "ONT": "Ontario ON", "PEI": "Prince Edward Island PE",
	"QUE": "Quebec QC", "SASK": "Saskatchewan SK", "YT": "Yukon",
}

var australianStates = map[string]string{
	"ACT": "Australian Capital Territory", "NSW": "New South Wales", "NT": "Northern Territory",
	"QLD": "Queensland", "SA": "South Australia", "TAS": "Tasmania", "VIC": "Victoria", "WA": "Western Australia",
}
