package thermal

import (
	"cmp"
	"math"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A Plate is a block of aluminium with a passage for beer cast into it, that
// lies on the floor of an ice box under the ice. [DefaultPlate] has usual
// values; [Plate.Pressed], [Plate.Loose] and [Plate.Flooded] say how the ice
// lies on it, which decides more than anything else.
type Plate struct {
	Width, Depth unit.Length     // of the face that the ice lies on
	Mass         unit.Mass       // of the aluminium
	Passage      unit.Length     // length of the tube inside
	Bore         unit.Length     // inside diameter of the tube
	Contact      float64         // share of the face that ice touches
	Film         FilmCoefficient // between the rest of the face and the air or water on it
	Beer         Beer
}

// DefaultPlate returns a plate of 25 by 38 cm and 8 kg with 5.5 m of passage,
// 6.5 mm wide, its ice pressed on. The dimensions are assumed.
func DefaultPlate() Plate {
	return Plate{Width: 0.25, Depth: 0.38, Mass: 8, Passage: 5.5, Bore: 6.5e-3}.Pressed()
}

// Pressed returns the plate with crushed ice pressed on it and the melt water
// drained: ice touches 13 % of the face. Assumed; know it within a factor of 2.
func (p Plate) Pressed() Plate { return p.with(0.13, 20) }

// Loose returns the plate under loose cubes, drained: ice touches 4 % of the
// face. Assumed; know it within a factor of 2.
func (p Plate) Loose() Plate { return p.with(0.04, 20) }

// Flooded returns the plate under its own melt water, the drain shut: no ice
// touches it. Water that is heated from below stays where it is until it is
// above 4 °C, where water is densest, while the ice floats off; the film falls
// to 100 W/(m² K). Assumed; know it within a factor of 2.
func (p Plate) Flooded() Plate { return p.with(0, 100) }

func (p Plate) with(contact float64, film FilmCoefficient) Plate {
	p.Contact, p.Film = contact, film
	return p
}

// A PlateChill is what a plate does to a steady flow.
type PlateChill struct {
	Outlet        Temperature // of the beer that leaves while the tap stays open
	Block         Temperature // of the aluminium
	Effectiveness float64     // share of the way from inlet to melting ice that the beer goes
	NTU           float64     // number of transfer units, UA over the capacity rate of the flow
	Reynolds      float64     // of the beer at the mean of inlet and outlet
	UA            Conductance // from beer to ice
	Heat          unit.Power  // taken from the beer
	IcePerLitre   unit.Mass   // melted for each litre of beer, apart from what the box itself melts
	IcePerHour    unit.Mass   // melted in an hour of steady flow
	HoldUp        unit.Volume // beer in the passage

	plate        Plate
	inlet        float64 // °C
	capacityRate float64 // ṁc, W/K
	nusselt      float64
	film         float64 // W/(m² K), inside
	share        float64 // ε of the passage
	ice          float64 // conductance from block to ice, W/K
	capacity     float64 // of block and content, J/K
}

// Chill returns how a steady flow of beer that enters at inlet leaves the
// plate: the passage is a tube in a block of one temperature, the block gives
// its heat to melting ice.
//
//	ε = 1 − e^(−h π d L/ṁc)
//	ṁ c ε (T_in − T_block) = G T_block,  ice at 0 °C
//
// with h by [pipe.NusseltStraight]; the bends of the passage are not counted.
//
// Valid for beer to 40 °C. The contact of the ice is known within a factor of
// 2, and so is G, see [PlateChill.Band]. Outside the range Chill returns a
// [*RangeError] and NaN.
func (p Plate) Chill(inlet Temperature, flow Flow) (PlateChill, error) {
	if err := p.check("thermal.Plate.Chill", inlet, flow); err != nil {
		return noPlateChill(), err
	}
	return p.chill(inlet.Celsius(), float64(flow)), nil
}

// Serve returns the temperatures of glasses drawn one after another through
// the plate, whose block begins at the ice's temperature. The block takes up
// the heat of a pour and gives it to the ice before and during the next:
//
//	C dT/dt = ṁ c ε (T_in − T) − G T   while a glass fills
//	C dT/dt = −G T                      between glasses
//
// solved exactly. The beer in the passage counts with the block.
//
// Valid as [Plate.Chill], for glasses from 20 mL to 20 L; outside it, or if a
// glass is not full before the next begins, Serve returns a [*RangeError].
func (p Plate) Serve(inlet Temperature, pours Pours) (Service, error) {
	const fn = "thermal.Plate.Serve"
	if err := pours.check(fn); err != nil {
		return noService(), err
	}
	r, err := p.Chill(inlet, pours.Flow)
	if err != nil {
		return noService(), err
	}
	s := r.serve(pours, r.ice)
	low, high := r.serve(pours, 2*r.ice), r.serve(pours, r.ice/2)
	s.low, s.high, s.because = low.Last.Celsius(), high.Last.Celsius(), plateBand
	return s, nil
}

// voids is the share of a bed of ice cubes that is not ice: random packings of
// cubes hold 35 to 45 %. Assumed.
const voids = 0.40

// DrainDue returns how long glasses may be drawn until the melt water they
// leave, with the drain shut, carries half of the ice's weight and so takes
// half the contact away: when a bed with the share v of voids has lost the
// fraction
//
//	M/m = 1/[2 (1 − v)/v + 1]
//
// of its mass, a quarter with v = 0.40. What the box itself melts shortens it.
//
// Valid as [Plate.Serve], for 0.5 to 500 kg of ice. Where no beer is chilled,
// DrainDue returns an error that wraps [volume.ErrNever].
func (p Plate) DrainDue(inlet Temperature, pours Pours, ice unit.Mass) (time.Duration, error) {
	const fn = "thermal.Plate.DrainDue"
	if err := limitPlateIce.Check(fn, float64(ice)); err != nil {
		return 0, err
	}
	s, err := p.Serve(inlet, pours)
	if err != nil {
		return 0, err
	}
	rate := float64(s.IcePerHour) / 3600 // kg/s
	if !(rate > 0) {
		return 0, &volume.NeverError{Func: fn, Why: say("beer that enters at {%.6g c} melts no ice", inlet.Celsius())}
	}
	return seconds(float64(ice) / (2*(1-voids)/voids + 1) / rate), nil
}

// check returns a [*volume.RangeError] in the name of fn if the plate, the
// inlet temperature or the flow lies outside its range.
func (p *Plate) check(fn string, inlet Temperature, flow Flow) error {
	return cmp.Or(
		limitPlateSize.Check(fn, float64(p.Width)),
		limitPlateSize.Check(fn, float64(p.Depth)),
		limitPlateMass.Check(fn, float64(p.Mass)),
		limitTubeLength.Check(fn, float64(p.Passage)),
		limitBore.Check(fn, float64(p.Bore)*1e3),
		limitContact.Check(fn, p.Contact),
		limitFilm.Check(fn, float64(p.Film)),
		limitPlateBeer.Check(fn, inlet.Celsius()),
		limitFlow.Check(fn, flow.LitresPerMinute()),
	)
}

// noPlateChill is what Chill returns beside an error.
func noPlateChill() PlateChill {
	n := math.NaN()
	return PlateChill{
		Effectiveness: n, NTU: n, Reynolds: n, UA: Conductance(n), Heat: unit.Power(n),
		IcePerLitre: unit.Mass(n), IcePerHour: unit.Mass(n), HoldUp: unit.Volume(n),
	}
}

// plateBand says where the width of a plate's answers comes from.
const plateBand = "contact between ice and plate within a factor of 2"

// Band returns the interval of the outlet temperature, in °C, with twice and
// with half the conductance between block and ice.
func (r PlateChill) Band() volume.Band {
	return volume.Band{Name: "outlet", Low: r.outletWith(2 * r.ice), High: r.outletWith(r.ice / 2), Suffix: "c", Source: plateBand}
}

// Steps returns the working of the chill, from flow to ice.
func (r PlateChill) Steps() []volume.Step {
	return []volume.Step{
		{Name: "inlet", Symbol: "T_in", Value: r.inlet, Suffix: "c", Source: "given"},
		{Name: "bore of the passage", Symbol: "d", Value: float64(r.plate.Bore), Suffix: "m", Source: "given"},
		{Name: "length of the passage", Symbol: "L", Value: float64(r.plate.Passage), Suffix: "m", Source: "given"},
		{Name: "face", Symbol: "A", Value: float64(r.plate.Width) * float64(r.plate.Depth), Suffix: "m2", Source: "given"},
		{Name: "capacity rate of the flow", Symbol: "ṁc", Value: r.capacityRate, Suffix: "w_per_k", Source: "density × flow × specific heat of the beer"},
		{Name: "Reynolds number at mean temperature", Symbol: "Re", Value: r.Reynolds, Source: "4 ṁ/(π d μ)"},
		{Name: "Nusselt number", Symbol: "Nu", Value: r.nusselt, Source: "Gnielinski and Hausen, straight tube"},
		{Name: "film in the passage", Symbol: "h", Value: r.film, Suffix: "w_per_m2_k", Source: "Nu k/d"},
		{Name: "effectiveness of the passage", Symbol: "ε", Value: r.share, Source: "1 − e^(−h π d L/ṁc)"},
		{Name: "share of the face that ice touches", Symbol: "φ", Value: r.plate.Contact, Source: "assumed"},
		{Name: "film on the rest of the face", Symbol: "h_film", Value: float64(r.plate.Film), Suffix: "w_per_m2_k", Source: "assumed"},
		{Name: "conductivity of that water", Symbol: "k", Value: filmWaterConductivity, Suffix: "w_per_m_k", Source: "water at 2.5 °C, IAPWS"},
		{Name: "block from passage to face", Symbol: "R_body", Value: bodyResist, Suffix: "k_per_w", Source: "assumed"},
		{Name: "film of melt water under a foot of ice", Symbol: "δ", Value: squeezedFilm(iceExcess, iceFoot, icePressure), Suffix: "m", Source: "close-contact melting: [1.5 μ k ΔT R²/(ρ L p)]^¼"},
		{Name: "conductance from block to ice", Symbol: "G", Value: r.ice, Suffix: "w_per_k", Source: "1/{1/(A [φ k/δ + (1 − φ) h_film]) + R_body}"},
		{Name: "block", Symbol: "T_b", Value: r.Block.Celsius(), Suffix: "c", Source: "ṁc ε T_in/(G + ṁc ε)"},
		{Name: "outlet", Symbol: "T_out", Value: r.Outlet.Celsius(), Suffix: "c", Source: "T_in − ε (T_in − T_b)"},
		{Name: "heat", Symbol: "q", Value: float64(r.Heat), Suffix: "w", Source: "ṁc (T_in − T_out)"},
		{Name: "capacity of block and content", Symbol: "C", Value: r.capacity, Suffix: "j_per_k", Source: "m c of aluminium + ρ c V of beer"},
	}
}
