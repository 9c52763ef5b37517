package volume

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/unit"
)

// A Glass is what beer is served in: a glass, a plastic cup or a pitcher.
type Glass struct {
	Name   string      // trade name, for example "us-pint"
	Volume unit.Volume // brimful
	Bore   unit.Length // inside diameter where the head stands
	Mass   unit.Mass   // empty
	Opaque bool        // keeps out light
	Source string      // where bore and mass come from

	Defined Status // of the volume: Law for sizes a law prescribes, Practice for customary ones
	Sized   Status // of the bore
	Weighed Status // of the mass
}

type namedGlass struct {
	Glass
	aliases string
}

// Where the rows come from. The bores of the US glasses of 8 to 16 oz are
// fitted, one for each size, to a trade table of glasses per keg against height
// of head, whose author is not named, with a quarter of foam counted as liquid.
// UK sizes: Weights and Measures (Intoxicating Liquor) Order 1988 as amended,
// read in a secondary source. US sizes are custom.
const (
	fittedBore = "common practice, no source: bore fitted to a trade table of glasses per keg; mass from memory"
	neck       = "from memory: bore and head are those of the neck"
	ukOrder    = "volume by the Weights and Measures (Intoxicating Liquor) Order 1988; bore and mass from memory"
)

// glasses is the table, with the preferred one first where two have the same
// volume. No table starts work when a program starts: it is data alone.
var glasses = [...]namedGlass{
	{Glass{"us-pint", 16 * USFluidOunce, 3.5 * Inch, 0.420, false, fittedBore, Practice, Practice, Memory}, "us-16oz pint-us american-pint shaker shaker-pint"},
	{Glass{"us-cup-16oz", 16 * USFluidOunce, 3.5 * Inch, 0.012, true, recalled, Practice, Memory, Memory}, "cup us-cup party-cup plastic-cup"},
	{Glass{"us-14oz", 14 * USFluidOunce, 3.25 * Inch, 0.380, false, recalled, Practice, Memory, Memory}, ""},
	{Glass{"us-12oz", 12 * USFluidOunce, 3.05 * Inch, 0.330, false, fittedBore, Practice, Practice, Memory}, ""},
	{Glass{"us-10oz", 10 * USFluidOunce, 2.8 * Inch, 0.280, false, fittedBore, Practice, Practice, Memory}, ""},
	{Glass{"us-8oz", 8 * USFluidOunce, 2.7 * Inch, 0.230, false, fittedBore, Practice, Practice, Memory}, ""},
	{Glass{"us-taster-5oz", 5 * USFluidOunce, 2.2 * Inch, 0.150, false, recalled, Practice, Memory, Memory}, "taster us-taster sampler"},
	{Glass{"us-taster-4oz", 4 * USFluidOunce, 2.1 * Inch, 0.130, false, recalled, Practice, Memory, Memory}, ""},
	{Glass{"us-20oz", 20 * USFluidOunce, 3.5 * Inch, 0.450, false, recalled, Practice, Memory, Memory}, ""},
	{Glass{"us-pitcher", 60 * USFluidOunce, 5 * Inch, 0.600, false, recalled, Practice, Memory, Memory}, "pitcher us-60oz"},
	{Glass{"uk-pint", ImperialPint, 83 * Millimetre, 0.350, false, ukOrder, Law, Memory, Memory}, "imperial-pint pint-uk british-pint"},
	{Glass{"uk-two-thirds", ImperialPint * 2 / 3, 74 * Millimetre, 0.270, false, ukOrder, Law, Memory, Memory}, "two-thirds uk-two-thirds-pint schooner"},
	{Glass{"uk-half", ImperialPint / 2, 67 * Millimetre, 0.220, false, ukOrder, Law, Memory, Memory}, "half-pint uk-half-pint"},
	{Glass{"uk-third", ImperialPint / 3, 58 * Millimetre, 0.160, false, ukOrder, Law, Memory, Memory}, "third uk-third-pint"},
	{Glass{"stein-1l", 1.15 * Litre, 98 * Millimetre, 1.3, false, recalled, Practice, Memory, Memory}, "stein litre-stein liter-stein masskrug"},
	{Glass{"metric-0.5l", 0.58 * Litre, 80 * Millimetre, 0.420, false, recalled, Practice, Memory, Memory}, "half-litre half-liter"},
	{Glass{"metric-0.4l", 0.47 * Litre, 75 * Millimetre, 0.360, false, recalled, Practice, Memory, Memory}, ""},
	{Glass{"metric-0.3l", 0.36 * Litre, 69 * Millimetre, 0.300, false, recalled, Practice, Memory, Memory}, ""},
	{Glass{"metric-0.2l", 0.24 * Litre, 56 * Millimetre, 0.200, false, recalled, Practice, Memory, Memory}, ""},
	{Glass{"growler-2l", 2 * Litre, 34 * Millimetre, 1.2, false, neck, Practice, Memory, Memory}, "two-litre-growler two-liter-growler 2l-growler"},
	{Glass{"growler", USGallon / 2, 34 * Millimetre, 1.1, false, neck, Practice, Memory, Memory}, "us-growler growler-64oz 64oz-growler"},
	{Glass{"growler-1l", 1 * Litre, 34 * Millimetre, 0.8, false, neck, Practice, Memory, Memory}, "litre-growler liter-growler 1l-growler"},
	{Glass{"half-growler", USGallon / 4, 34 * Millimetre, 0.7, false, neck, Practice, Memory, Memory}, "us-half-growler growler-32oz 32oz-growler howler"},
}

// Glasses returns the glasses that [GlassNamed] and [GlassOf] know, as a new
// slice: US sizes, UK sizes, glasses with a metric line, whose head stands above
// it and whose Volume is to the brim, and growlers, whose bore is their neck's.
func Glasses() []Glass {
	all := make([]Glass, len(glasses))
	for i, g := range glasses {
		all[i] = g.Glass
	}
	return all
}

// GlassNamed returns the glass of that trade name, such as "us-pint", "uk
// half" or "pitcher", and whether there is one. Case does not matter, nor do
// blanks and underscores in place of hyphens, nor the word glass at the end. A
// bare "pint" is not known, since the US and the imperial pint differ by 20 %.
func GlassNamed(name string) (Glass, bool) {
	name = strings.TrimSuffix(tradeName(name), "-glass")
	i := slices.IndexFunc(glasses[:], func(g namedGlass) bool {
		return g.Name == name || slices.Contains(strings.Fields(g.aliases), name)
	})
	if i < 0 || name == "" {
		return Glass{}, false
	}
	return glasses[i].Glass, true
}

// GlassOf returns a glass of that brimful volume: the first of the table whose
// volume is within 1 %, with the Volume given, else one in proportion, whose
// bore and mass have the status [Estimate]:
//
//	bore = 1.1 · volume^(1/3)      mass = 60 kg/m² · volume^(2/3)
//
// which US beer glasses keep within 5 % and 16 %; tall metric ones are up to a
// sixth narrower. A volume that is not positive and finite gives the zero Glass,
// which every calculation refuses.
func GlassOf(volume unit.Volume) Glass {
	if !(0 < volume && volume <= math.MaxFloat64) {
		return Glass{}
	}
	for _, g := range glasses {
		if math.Abs(float64(volume/g.Volume)-1) <= sameSize {
			g.Volume = volume
			return g.Glass
		}
	}
	side := math.Cbrt(float64(volume))
	return Glass{
		Name: "glass", Volume: volume, Bore: unit.Length(1.1 * side), Mass: unit.Mass(60 * side * side),
		Source: "in proportion to the glasses of the table", Defined: Practice, Sized: Estimate, Weighed: Estimate,
	}
}

// check refuses a glass without the dimensions that a calculation needs.
func (g Glass) check(fn string) error {
	return limitGlass.Check(fn, 1e3*float64(g.Volume))
}
