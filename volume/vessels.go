package volume

import "gonum.org/v1/gonum/unit"

// A namedVessel is a row of the table with the other names it goes by.
type namedVessel struct {
	Vessel
	aliases string // separated by blanks, as tradeName writes them
}

// Where the rows come from. Keg sizes and weights stand in trade size charts
// whose authors are not named; capacities follow from the units of law.
const (
	chart     = "common practice, no source: trade size charts"
	chartTare = chart + "; tare in proportion"
	recalled  = "from memory"
	din6647   = chartTare + "; rated by DIN 6647-1, up to 0.3 MPa and 50 L"
	inScale   = "in proportion to ordinary kegs"
)

// bar3 is the gauge pressure up to which DIN 6647-1 kegs are made.
const bar3 unit.Pressure = 0.3e6

// vessels is the table, with the preferred one first where two have the same
// capacity. US kegs are fractions of the beer barrel of 31 gallons (NIST
// Handbook 44, appendix C), casks of the UK barrel of 36 imperial gallons.
//
// The printed full weight of the 50 L keg, 130 lb, would leave a tare of 8.6 kg
// and is not used.
var vessels = [...]namedVessel{
	{Vessel{"uk-barrel", UKBarrel, 0.848, 0.565, 26.9, 0, inScale, Law, Estimate, Estimate}, "36-imperial-gallons"},
	{Vessel{"kilderkin", UKBarrel / 2, 0.673, 0.448, 17.0, 0, inScale, Law, Estimate, Estimate}, "uk-kilderkin kil"},
	{Vessel{"us-half", USBarrel / 2, 23.375 * Inch, 16.125 * Inch, 29.7 * Pound, 0, chart, Law, Practice, Practice}, "half half-barrel us-half-barrel full-size full 15.5-gallon"},
	{Vessel{"din-50", 50 * Litre, 600 * Millimetre, 381 * Millimetre, 12.2, bar3, din6647, Law, Practice, Estimate}, "din50 din-50l"},
	{Vessel{"euro-50", 50 * Litre, 532 * Millimetre, 408 * Millimetre, 12.2, 0, chartTare, Law, Practice, Estimate}, "euro50 euro-50l"},
	{Vessel{"firkin", UKBarrel / 4, 510 * Millimetre, 410 * Millimetre, 10.5, 0, recalled, Law, Memory, Memory}, "uk-firkin 9-gallon-cask"},
	{Vessel{"din-30", 30 * Litre, 400 * Millimetre, 381 * Millimetre, 8.7, bar3, din6647, Law, Practice, Estimate}, "din30 din-30l"},
	{Vessel{"euro-30", 30 * Litre, 365 * Millimetre, 408 * Millimetre, 8.7, 0, chartTare, Law, Practice, Estimate}, "euro30 euro-30l"},
	{Vessel{"us-quarter", USBarrel / 4, 23.375 * Inch, 11.125 * Inch, 21.8 * Pound, 0, chart, Law, Practice, Practice}, "quarter quarter-barrel slim-quarter us-quarter-slim"},
	{Vessel{"us-quarter-short", USBarrel / 4, 13.875 * Inch, 16.125 * Inch, 21.8 * Pound, 0, chart, Law, Practice, Practice}, "short-quarter pony stubby-quarter"},
	{Vessel{"euro-25", 25 * Litre, 327 * Millimetre, 395 * Millimetre, 7.7, 0, chartTare, Law, Practice, Estimate}, "euro25 euro-25l"},
	{Vessel{"pin", UKBarrel / 8, 0.424, 0.283, 6.7, 0, inScale, Law, Estimate, Estimate}, "uk-pin 4.5-gallon-cask"},
	{Vessel{"slim-20", 20 * Litre, 580 * Millimetre, 237 * Millimetre, 6.6, 0, recalled, Law, Memory, Estimate}, "slim20 slim-20l euro-20 din-20"},
	{Vessel{"us-sixth", USBarrel / 6, 23.375 * Inch, 9.25 * Inch, 14.5 * Pound, 0, chart, Law, Practice, Practice}, "sixth sixth-barrel us-sixth-barrel sixtel us-sixtel"},
	{Vessel{"soda-5gal", 5 * USGallon, 25 * Inch, 8.75 * Inch, 10 * Pound, 0, chart, Law, Practice, Practice}, "ball-lock ball-lock-5gal soda homebrew 5-gallon five-gallon"},
	{Vessel{"soda-5gal-pin-lock", 5 * USGallon, 22 * Inch, 9.75 * Inch, 10 * Pound, 0, chartTare, Law, Practice, Estimate}, "pin-lock pin-lock-5gal"},
	{Vessel{"soda-2.5gal", 2.5 * USGallon, 16 * Inch, 8.75 * Inch, 3.0, 0, recalled, Law, Memory, Estimate}, "half-soda soda-2.5"},
	{Vessel{"mini-5l", 5 * Litre, 250 * Millimetre, 172 * Millimetre, 0.6, 0, recalled, Law, Memory, Memory}, "mini party-can 5-litre 5-liter"},
	{Vessel{"growler-2l", 2 * Litre, 280 * Millimetre, 135 * Millimetre, 1.2, 0, recalled, Law, Memory, Memory}, "two-litre-growler two-liter-growler 2l-growler"},
	{Vessel{"growler", USGallon / 2, 280 * Millimetre, 132 * Millimetre, 1.1, 0, recalled, Law, Memory, Memory}, "us-growler growler-64oz 64oz-growler"},
	{Vessel{"growler-1l", 1 * Litre, 240 * Millimetre, 105 * Millimetre, 0.8, 0, recalled, Law, Memory, Memory}, "litre-growler liter-growler 1l-growler"},
	{Vessel{"half-growler", USGallon / 4, 230 * Millimetre, 103 * Millimetre, 0.7, 0, recalled, Law, Memory, Memory}, "us-half-growler growler-32oz 32oz-growler howler"},
}
