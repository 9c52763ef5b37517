package thermal

import (
	"fmt"
	"math"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

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

// plateBand says where the width of a plate's answers comes from.
const plateBand = "contact between ice and plate within a factor of 2"

// serve runs the pours with the conductance ice, W/K, between block and ice.
func (r *PlateChill) serve(p Pours, ice float64) Service {
	passed := r.capacityRate * r.share
	fill := float64(p.Glass) / float64(p.Flow)              // s
	steady := passed * r.inlet / (ice + passed)             // block in a long pour, °C
	x := fill * (ice + passed) / r.capacity                 // pour in time constants
	weight := -math.Expm1(-x) / x                           // of the block's start in its mean over the pour
	rest := math.Exp(-p.pause() * ice / r.capacity)         // of the pause
	factor := math.Exp(-x) * rest                           // of pour and pause
	start := steady * -math.Expm1(-x) * rest / (1 - factor) // of the block in a long row, °C
	s := Service{
		Sustained: Celsius(r.outletWith(ice)), Recovery: recovery(steady, r.capacity/ice),
		row: row{
			cold: r.inlet*(1-r.share) + r.share*steady*(1-weight), warm: r.share * weight * start,
			rested: factor, plate: true,
		},
		pause: p.pause(), tau: r.capacity / ice,
	}
	s.settle(p.Number)
	s.melt(p, r.capacityRate*(r.inlet-s.Settled.Celsius()))
	return s
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
		return 0, fmt.Errorf("%s: %w: beer that enters at %s melts no ice", fn, volume.ErrNever, onBothScales(inlet))
	}
	return seconds(float64(ice) / (2*(1-voids)/voids + 1) / rate), nil
}

var limitPlateIce = volume.Range{Name: "ice on the plate", Min: 0.5, Max: 500, Suffix: "kg", Source: "from a handful of cubes to a bin"}

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

// noPlateChill is what Chill returns beside an error.
func noPlateChill() PlateChill {
	n := math.NaN()
	return PlateChill{
		Effectiveness: n, NTU: n, Reynolds: n, UA: Conductance(n), Heat: unit.Power(n),
		IcePerLitre: unit.Mass(n), IcePerHour: unit.Mass(n), HoldUp: unit.Volume(n),
	}
}
