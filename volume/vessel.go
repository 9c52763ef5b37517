package volume

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/unit"
)

// A Status says how far a figure of the tables can be trusted.
type Status string

// The statuses, from the firmest to the weakest.
const (
	Law       Status = "law"              // an exact legal definition
	Published Status = "published"        // a standard or a published text, named beside it
	Secondary Status = "secondary source" // read only where another text quotes it
	Practice  Status = "practice"         // common practice of the trade, no source
	Memory    Status = "memory"           // recalled, not checked
	Estimate  Status = "estimate"         // a fit or a proportion, stated beside it
)

// A Vessel is a keg, cask, bottle or growler. Height and Diameter are outside
// dimensions without coupler or valve. Sizes of kegs differ between makers by a
// centimetre or two: measure yours where it matters.
type Vessel struct {
	Name     string        // trade name, for example "us-sixth"
	Capacity unit.Volume   // brimful
	Height   unit.Length   // outside
	Diameter unit.Length   // outside, at its widest
	Tare     unit.Mass     // empty
	Rated    unit.Pressure // gauge pressure a standard allows, 0 where none was found; the stamp on the vessel binds
	Source   string        // where the dimensions come from

	Defined Status // of the capacity
	Sized   Status // of height and diameter
	Weighed Status // of the tare
}

// Vessels returns the vessels that [VesselNamed] and [VesselOf] know, as a new
// slice: kegs and casks from large to small, then growlers.
func Vessels() []Vessel {
	all := make([]Vessel, len(vessels))
	for i, v := range vessels {
		all[i] = v.Vessel
	}
	return all
}

// VesselNamed returns the vessel of that trade name, such as "us-sixth", "half
// barrel", "firkin" or "ball lock", and whether there is one. Case does not
// matter, nor do blanks and underscores in place of hyphens, nor the word keg at
// the end. A bare "quarter" is the slim one. A bare "barrel" is not known, since
// the US and the UK barrel differ by 40 %.
func VesselNamed(name string) (Vessel, bool) {
	name = strings.TrimSuffix(tradeName(name), "-keg")
	i := slices.IndexFunc(vessels[:], func(v namedVessel) bool {
		return v.Name == name || slices.Contains(strings.Fields(v.aliases), name)
	})
	if i < 0 || name == "" {
		return Vessel{}, false
	}
	return vessels[i].Vessel, true
}

// tradeName writes a name as the tables have it: lower case and hyphens.
func tradeName(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" _-\t", r) })
	return strings.Join(words, "-")
}

// sameSize is the difference in size, as a share, up to which a vessel or glass
// counts as the standard one: "19 L" means the 5 gallon soda keg of 18.93 L.
const sameSize = 0.01

// VesselOf returns a vessel of that capacity, with the dimensions that weighing
// and heat models need: those of the first standard vessel whose capacity is
// within 1 %, else those of an ordinary keg in proportion. Its Capacity is the
// one given.
//
// A vessel in proportion is half as high again as wide, fills 77 % of its
// outside cylinder, and weighs
//
//	tare = 0.9 kg (capacity/L)^(2/3)
//
// as the half and the sixth barrel do within 1 %; quarter barrels weigh 16 %
// more and soda kegs 29 % less. Its dimensions have the status [Estimate].
//
// A capacity that is not positive and finite gives the zero Vessel, which every
// calculation refuses.
func VesselOf(capacity unit.Volume) Vessel {
	if !(0 < capacity && capacity <= math.MaxFloat64) {
		return Vessel{}
	}
	for _, v := range vessels {
		if math.Abs(float64(capacity/v.Capacity)-1) <= sameSize {
			v.Capacity = capacity
			return v.Vessel
		}
	}
	const slender, filled = 1.5, 0.77 // height over diameter, capacity over outside cylinder
	diameter := math.Cbrt(float64(capacity) / filled / slender * 4 / math.Pi)
	return Vessel{
		Name: "keg", Capacity: capacity,
		Height: unit.Length(slender * diameter), Diameter: unit.Length(diameter),
		Tare:   unit.Mass(0.9 * math.Pow(float64(capacity/Litre), 2./3)),
		Source: "in proportion to ordinary kegs", Defined: Law, Sized: Estimate, Weighed: Estimate,
	}
}

// check refuses a vessel without the dimensions that a calculation needs.
func (v Vessel) check(fn string) error {
	return cmp.Or(
		limitCapacity.Check(fn, float64(v.Capacity/Litre)),
		limitHeight.Check(fn, float64(v.Height)),
		limitDiameter.Check(fn, float64(v.Diameter)),
		limitTare.Check(fn, float64(v.Tare)),
	)
}
