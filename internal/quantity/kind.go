package quantity

// A Kind is a dimension together with what the number means: a gauge pressure
// and an absolute pressure are two kinds.
type Kind uint8

// The kinds, each with the SI unit in which Parse returns it.
const (
	Number      Kind = iota // a pure number such as a gravity or a loss coefficient
	Count                   // a whole number of things
	Share                   // 0 to 1; typed as 40% or 0.4
	Temperature             // K
	Difference              // K, a difference of temperatures
	Gauge                   // Pa above the air around
	Pressure                // Pa absolute
	Content                 // g/L of dissolved CO2
	Length                  // m
	Volume                  // m³
	Mass                    // kg
	Flow                    // m³/s
	Time                    // s
	Speed                   // m/s
	Irradiance              // W/m²
	Conductance             // W/K
	Switch                  // on or off; typed by its name alone
	Text                    // not a number: a word, a name, a file
)

// A spelling is how people type a unit: SI = (value + shift) × factor.
type spelling struct {
	name   string // as people type it; the first of a kind is the SI or the most usual one
	factor float64
	shift  float64
}

// Exact factors by definition. Source: NIST SP 811 (2008) appendix B, NIST
// Handbook 44 appendix C; one volume of CO2 is 1.9768 g/L as the carbonation
// package states.
const (
	inch       = 0.0254
	foot       = 12 * inch
	pound      = 0.45359237
	ounceMass  = pound / 16
	psi        = pound * 9.80665 / (inch * inch)
	usGallon   = 231 * inch * inch * inch
	usOunce    = usGallon / 128
	impGallon  = 4.54609e-3
	impOunce   = impGallon / 160
	litre      = 1e-3
	minute     = 60
	hour       = 3600
	volumeCO2  = 1.9768
	fahrenheit = 5.0 / 9.0

	inHg = 13595.1 * 9.80665 * inch // conventional inch of mercury, SP 811

	absoluteFahrenheit = 459.67 // absolute zero is −459.67 °F
)

// kinds describes every kind: the noun of its messages, an example, and the
// units it takes. A kind without units is typed bare.
var kinds = [...]struct {
	noun    string
	example string
	units   []spelling
}{
	Number: {"a number", "1.010", nil},
	Count:  {"a whole number", "60", nil},
	Share:  {"a share", "40% or 0.4", []spelling{{"%", 0.01, 0}}},
	Temperature: {"a temperature", "38F or 3.3C", []spelling{
		{"C", 1, 273.15}, {"°C", 1, 273.15}, {"degC", 1, 273.15},
		{"F", fahrenheit, absoluteFahrenheit}, {"°F", fahrenheit, absoluteFahrenheit}, {"degF", fahrenheit, absoluteFahrenheit},
		{"K", 1, 0},
	}},
	Difference: {"a temperature difference", "1F or 0.5C", []spelling{
		{"C", 1, 0}, {"°C", 1, 0}, {"F", fahrenheit, 0}, {"°F", fahrenheit, 0}, {"K", 1, 0},
	}},
	Gauge: {"a gauge pressure", "12psi or 0.8bar", []spelling{
		{"psi", psi, 0}, {"bar", 1e5, 0}, {"kPa", 1e3, 0}, {"Pa", 1, 0}, {"hPa", 100, 0},
		{"mbar", 100, 0}, {"MPa", 1e6, 0}, {"atm", 101325, 0}, {"inHg", inHg, 0}, {"psig", psi, 0}, {"barg", 1e5, 0},
	}},
	Pressure: {"an absolute pressure", "845hPa or 12.3psia", []spelling{
		{"Pa", 1, 0}, {"hPa", 100, 0}, {"mbar", 100, 0}, {"kPa", 1e3, 0}, {"MPa", 1e6, 0}, {"atm", 101325, 0}, {"inHg", inHg, 0},
		{"psia", psi, 0}, {"bara", 1e5, 0},
	}},
	Content: {"a CO2 content", "2.5vol or 5g/L", []spelling{
		{"vol", volumeCO2, 0}, {"vols", volumeCO2, 0}, {"volumes", volumeCO2, 0}, {"g/L", 1, 0},
	}},
	Length: {"a length", "5ft, 3/16in or 7mm", []spelling{
		{"m", 1, 0}, {"cm", 0.01, 0}, {"mm", 1e-3, 0}, {"um", 1e-6, 0}, {"µm", 1e-6, 0}, {"km", 1000, 0},
		{"in", inch, 0}, {"ft", foot, 0}, {"yd", 3 * foot, 0},
	}},
	Volume: {"a volume", "5gal, 19L or 16oz", []spelling{
		{"L", litre, 0}, {"mL", 1e-6, 0}, {"cL", 1e-5, 0}, {"hL", 0.1, 0}, {"m3", 1, 0}, {"m³", 1, 0}, {"ft3", foot * foot * foot, 0},
		{"gal", usGallon, 0}, {"qt", usGallon / 4, 0}, {"pt", usGallon / 8, 0}, {"oz", usOunce, 0},
		{"bbl-us", 31 * usGallon, 0},
		{"impgal", impGallon, 0}, {"imppt", impGallon / 8, 0}, {"impoz", impOunce, 0},
		{"bbl-uk", 36 * impGallon, 0},
	}},
	Mass: {"a mass", "20lb or 9kg", []spelling{
		{"kg", 1, 0}, {"g", 1e-3, 0}, {"t", 1000, 0}, {"lb", pound, 0}, {"lbs", pound, 0}, {"oz", ounceMass, 0},
	}},
	Flow: {"a flow", "2oz/s or 3L/min", []spelling{
		{"L/min", litre / minute, 0}, {"m3/s", 1, 0}, {"m³/s", 1, 0}, {"L/s", litre, 0}, {"mL/s", 1e-6, 0}, {"L/h", litre / hour, 0},
		{"oz/s", usOunce, 0}, {"gal/min", usGallon / minute, 0}, {"gal/h", usGallon / hour, 0}, {"impoz/s", impOunce, 0},
	}},
	Time: {"a time", "90min or 5h", []spelling{
		{"s", 1, 0}, {"sec", 1, 0}, {"min", minute, 0}, {"h", hour, 0}, {"hr", hour, 0}, {"hours", hour, 0},
		{"d", 24 * hour, 0}, {"days", 24 * hour, 0},
	}},
	Speed: {"a speed", "2m/s or 5mph", []spelling{
		{"m/s", 1, 0}, {"km/h", 1 / 3.6, 0}, {"mph", 5280 * foot / hour, 0}, {"kn", 1852.0 / hour, 0},
	}},
	Irradiance:  {"an irradiance", "800W/m2", []spelling{{"W/m2", 1, 0}, {"W/m²", 1, 0}}},
	Conductance: {"a conductance", "2.5W/K", []spelling{{"W/K", 1, 0}}},
	Switch:      {"a switch", "", nil},
	Text:        {"text", "", nil},
}

// ambiguous names units that mean different things in different countries,
// with what to type instead.
var ambiguous = map[string]string{
	"pint":    "a US pint is pt, an imperial pint is imppt",
	"pints":   "a US pint is pt, an imperial pint is imppt",
	"bbl":     "a US beer barrel is bbl-us, a UK barrel is bbl-uk",
	"barrel":  "a US beer barrel is bbl-us, a UK barrel is bbl-uk",
	"gallon":  "a US gallon is gal, an imperial gallon is impgal",
	"gallons": "a US gallon is gal, an imperial gallon is impgal",
	"ton":     "a tonne is t; otherwise use lb or kg",
}

// String returns the kind's noun with its article, such as "a temperature".
func (k Kind) String() string { return kinds[k].noun }

// Example returns text that Parse accepts for the kind.
func (k Kind) Example() string { return kinds[k].example }

// Bare reports whether the kind is typed without a unit.
func (k Kind) Bare() bool { return len(kinds[k].units) == 0 || k == Share }

// Units returns the unit names that Parse accepts for the kind.
func (k Kind) Units() []string {
	names := make([]string, len(kinds[k].units))
	for i, u := range kinds[k].units {
		names[i] = u.name
	}
	return names
}
