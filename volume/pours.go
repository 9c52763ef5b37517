package volume

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"example.com/pourwell/internal/quantity"
	"gonum.org/v1/gonum/unit"
)

// A Pour says how beer gets from a keg into glasses. The zero value of a loss
// or of the head means none; [Vessel.Into] gives the usual ones.
type Pour struct {
	Keg   Vessel
	Glass Glass // or a growler: GlassOf(its capacity)

	Head      unit.Length // height of the head in the glass, or
	HeadShare float64     // the head as a share of the glass's volume; give one
	Foam      float64     // share of a fresh head that is liquid

	FirstGlass unit.Volume // poured away at the start, warm and all foam
	Line       unit.Volume // contents of line and coil, left behind at the end
	Heel       float64     // share of the keg that the dip tube does not reach
	Waste      float64     // share of what is drawn that is spilt or foams over
}

// The liquid in a fresh head. Trade texts say about a quarter, another figure
// is an eighth after collapse; no measurement was found.
const usualFoam, leastFoam, mostFoam = 0.25, 0.125, 0.33

// Into returns the usual pour from the vessel into a glass: an inch of head, a
// quarter of it liquid, 1 % left as a heel, 5 % wasted, and nothing for line
// and first glass, which depend on the set-up. All of it is common practice, no
// source.
func (v Vessel) Into(g Glass) Pour {
	return Pour{Keg: v, Glass: g, Head: Inch, Foam: usualFoam, Heel: 0.01, Waste: 0.05}
}

// ReadHead sets the head from text as people type it: a height, such as "1in" or
// "2cm", or a share of the glass, such as "5%". A bare number is refused.
func (p *Pour) ReadHead(text string) error {
	if strings.HasSuffix(strings.TrimSpace(text), "%") {
		share, err := quantity.Parse(quantity.Share, text)
		if err == nil {
			p.Head, p.HeadShare = 0, share
		}
		return err
	}
	height, err := quantity.Parse(quantity.Length, text)
	if err == nil {
		p.Head, p.HeadShare = unit.Length(height), 0
	}
	return err
}

// A Yield is what a keg gives.
type Yield struct {
	Pour   Pour        // what was asked
	Pours  int         // whole ones
	Liquid unit.Volume // beer in each
	Lost   unit.Volume // to heel, line, first glass and waste
	Rest   unit.Volume // less than one pour, left at the end

	foam, drawn, least, most float64
}

// PerKeg returns how many whole pours the keg gives, and how much beer each
// holds under its head:
//
//	liquid = volume − (1 − foam) · π/4 bore² · head
//	pours = (capacity · (1 − heel) − line − first glass) · (1 − waste) / liquid
//
// For a head given as a share, head share · volume stands for π/4 bore² · head.
// capacity = pours · liquid + lost + rest.
//
// Agrees with a trade table of glasses per keg, 10 to 16 oz and ½ to 1 in of
// head, within 3 % with one bore for each glass. See the package's table for
// the ranges; outside them PerKeg returns a [*RangeError], and NaN in every
// field. If the losses leave not even one pour, Pours is 0.
//
// Sources: liquid share of foam and head, common practice, no source; the rest
// is conservation of volume.
func (p Pour) PerKeg() (Yield, error) {
	y := Yield{Pour: p}
	if err := p.check("volume.Pour.PerKeg"); err != nil {
		nan := unit.Volume(math.NaN())
		y.Liquid, y.Lost, y.Rest = nan, nan, nan
		return y, err
	}
	capacity := float64(p.Keg.Capacity)
	y.foam = p.foamVolume()
	y.Liquid = p.liquid(p.Foam)
	y.drawn = math.Max(0, capacity*(1-p.Heel)-float64(p.Line)-float64(p.FirstGlass))
	y.Pours = int(whole(y.drawn * (1 - p.Waste) / float64(y.Liquid)))
	poured := unit.Volume(y.Pours) * y.Liquid
	y.Rest = max(0, unit.Volume(y.drawn*(1-p.Waste))-poured)
	y.Lost = p.Keg.Capacity - poured - y.Rest
	// More foam that is liquid means fewer pours.
	y.least = whole(y.drawn * (1 - p.Waste) / float64(p.liquid(math.Max(p.Foam, mostFoam))))
	y.most = whole(y.drawn * (1 - p.Waste) / float64(p.liquid(math.Min(p.Foam, leastFoam))))
	return y, nil
}

// whole rounds down to a whole number of pours, forgiving the rounding of
// units: a half barrel holds 124 glasses of 16 oz, not 123.
func whole(pours float64) float64 { return math.Floor(pours * (1 + 1e-13)) }

// foamVolume is the volume of the head in m³.
func (p Pour) foamVolume() float64 {
	if p.HeadShare > 0 {
		return p.HeadShare * float64(p.Glass.Volume)
	}
	return math.Pi / 4 * float64(p.Glass.Bore) * float64(p.Glass.Bore) * float64(p.Head)
}

func (p Pour) liquid(foam float64) unit.Volume {
	return p.Glass.Volume - unit.Volume((1-foam)*p.foamVolume())
}

func (p Pour) check(fn string) error {
	if err := cmp.Or(
		limitCapacity.Check(fn, float64(p.Keg.Capacity/Litre)),
		p.Glass.check(fn),
		limitHead.Check(fn, float64(p.Head/Millimetre)),
		limitHeadShare.Check(fn, p.HeadShare),
		limitFoam.Check(fn, p.Foam),
		limitLoss.Check(fn, float64(p.FirstGlass/Litre)),
		limitLine.Check(fn, float64(p.Line/Litre)),
		limitHeel.Check(fn, p.Heel),
		limitWaste.Check(fn, p.Waste),
	); err != nil || p.Head == 0 {
		return err
	}
	if err := limitBore.Check(fn, float64(p.Glass.Bore/Millimetre)); err != nil {
		return err
	}
	share := limitHeadShare
	if p.HeadShare > 0 {
		share.Max, share.Source = 0, "the head is given by its height already"
		return share.Check(fn, p.HeadShare)
	}
	share.Name = "head as a share of the glass"
	return share.Check(fn, p.foamVolume()/float64(p.Glass.Volume))
}

// Steps returns the working.
func (y Yield) Steps() []Step {
	p := y.Pour
	steps := []Step{
		{"capacity of the keg", "V", float64(p.Keg.Capacity / Litre), "l", "given"},
		{"glass, brimful", "Vg", float64(p.Glass.Volume / Millilitre), "ml", "given"},
	}
	if p.HeadShare == 0 && p.Head > 0 {
		steps = append(steps,
			Step{"bore of the glass", "b", float64(p.Glass.Bore / Millimetre), "mm", p.Glass.Source},
			Step{"height of the head", "h", float64(p.Head / Millimetre), "mm", "given"})
	}
	return append(steps,
		Step{"volume of the head", "Vf", 1e6 * y.foam, "ml", "π/4 b² h, or its share of the glass"},
		Step{"liquid share of the head", "φ", p.Foam, "", "common practice, no source"},
		Step{"beer in a glass", "Vl", float64(y.Liquid / Millilitre), "ml", "Vg − (1 − φ) Vf"},
		Step{"left in the keg", "heel", p.Heel, "", "given"},
		Step{"left in line and coil", "VL", float64(p.Line / Millilitre), "ml", "given"},
		Step{"first glass, poured away", "V1", float64(p.FirstGlass / Millilitre), "ml", "given"},
		Step{"beer drawn", "Vd", 1e3 * y.drawn, "l", "V (1 − heel) − VL − V1"},
		Step{"wasted", "w", p.Waste, "", "given"},
		Step{"whole pours", "n", float64(y.Pours), "", "Vd (1 − w) / Vl, rounded down"},
	)
}

// Band returns the pours to expect with a head that is an eighth to a third
// liquid.
func (y Yield) Band() Band {
	return Band{"pours", y.least, y.most, "", fmt.Sprintf("a head that is %g to %g liquid (trade figures)", leastFoam, mostFoam)}
}
