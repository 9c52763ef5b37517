package thermal

import (
	"math"

	"example.com/pourwell/internal/pipe"
	"example.com/pourwell/internal/water"
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

// Constants of a plate.
const (
	aluminiumHeat = 880.0  // J/(kg K), aluminium alloys, EN 12524
	bodyResist    = 1.5e-4 // from passage to face through the block, K/W; assumed
	plateRounds   = 6      // of the mean temperature that the film depends on

	// Foot of a cube on a warm face: half its width, and what presses on it.
	// Assumed: a bed of ice some 40 cm deep on the feet of its lowest layer.
	iceFoot     = 0.012 // m
	icePressure = 3600  // Pa
	iceExcess   = 5     // K, of the block above melting ice
)

// squeezedFilm returns the thickness in m of the film of water under a disc of
// melting ice of radius r m that a pressure p Pa presses on a face dt K above
// 0 °C.
//
//	δ = [1.5 μ k ΔT R² / (ρ L p)]^(1/4)
//
// Source: close-contact melting, M. K. Moallemi, B. W. Webb and R. Viskanta,
// J. Heat Transfer 108 (1986) 894; the form for a disc derived here from
// lubrication theory. Water at 2.5 °C.
func squeezedFilm(dt, r, p float64) float64 {
	const mu, k, rho = 1.64e-3, filmWaterConductivity, 1000
	return math.Sqrt(math.Sqrt(1.5 * mu * k * dt * r * r / (rho * water.LatentHeat * p)))
}

const filmWaterConductivity = 0.563 // W/(m K), water at 2.5 °C, IAPWS

// toIce returns the conductance in W/K between the block and the ice on it:
//
//	1/G = 1/{A [φ h_ice + (1 − φ) h_film]} + R_body
//
// with φ the share of the face that ice touches.
func (p *Plate) toIce() float64 {
	feet := filmWaterConductivity / squeezedFilm(iceExcess, iceFoot, icePressure)
	h := p.Contact*feet + (1-p.Contact)*float64(p.Film)
	return 1 / (1/(float64(p.Width)*float64(p.Depth)*h) + bodyResist)
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

// chill solves the plate; all arguments are within their ranges.
func (p *Plate) chill(inlet, flow float64) PlateChill {
	bore, length := float64(p.Bore), float64(p.Passage)
	density, specific := p.Beer.density(inlet), p.Beer.heatCapacity(inlet/2)
	r := PlateChill{
		plate: *p, inlet: inlet, capacityRate: density * flow * specific,
		HoldUp: unit.Volume(math.Pi / 4 * bore * bore * length), ice: p.toIce(),
	}
	r.capacity = float64(p.Mass)*aluminiumHeat + density*specific*float64(r.HoldUp)
	outlet := inlet / 2
	for range plateRounds {
		mean := (inlet + outlet) / 2
		mu, k := p.Beer.viscosity(mean), p.Beer.conductivity(mean)
		r.Reynolds = 4 * density * flow / (math.Pi * bore * mu)
		r.nusselt = pipe.NusseltStraight(r.Reynolds, mu*specific/k, bore/length)
		r.film = r.nusselt * k / bore
		r.share = -math.Expm1(-r.film * math.Pi * bore * length / r.capacityRate)
		outlet = r.outletWith(r.ice)
	}
	passed := r.capacityRate * r.share
	r.Outlet, r.Block = Celsius(outlet), Celsius(passed*inlet/(r.ice+passed))
	r.Effectiveness = r.share * r.ice / (r.ice + passed)
	r.NTU = -math.Log1p(-r.Effectiveness)
	r.UA = Conductance(r.NTU * r.capacityRate)
	r.Heat = unit.Power(r.capacityRate * (inlet - outlet))
	r.IcePerLitre = unit.Mass(density * specific * 1e-3 * (inlet - outlet) / water.LatentHeat)
	r.IcePerHour = unit.Mass(float64(r.Heat) * 3600 / water.LatentHeat)
	return r
}

// outletWith returns the outlet temperature in °C with the conductance ice,
// W/K, between block and ice.
func (r *PlateChill) outletWith(ice float64) float64 {
	passed := r.capacityRate * r.share
	return r.inlet * (1 - r.share*ice/(ice+passed))
}

var (
	limitPlateSize = volume.Range{Name: "size of the plate", Min: 0.05, Max: 1.5, Suffix: "m", Source: "plates of ice boxes"}
	limitPlateMass = volume.Range{Name: "mass of the plate", Min: 0.5, Max: 100, Suffix: "kg", Source: "plates of ice boxes"}
	limitContact   = volume.Range{Name: "contact share", Min: 0, Max: 1, Source: "a share: 0.13 is 13 %"}
	limitPlateBeer = volume.Range{Name: "beer temperature at a plate", Min: 0, Max: 40, Suffix: "c", Source: "melting ice at 0 °C can warm nothing"}
)

// check returns a [*volume.RangeError] in the name of fn if the plate, the
// inlet temperature or the flow lies outside its range.
func (p *Plate) check(fn string, inlet Temperature, flow Flow) error {
	for _, x := range [...]struct {
		limit *volume.Range
		value float64
	}{
		{&limitPlateSize, float64(p.Width)},
		{&limitPlateSize, float64(p.Depth)},
		{&limitPlateMass, float64(p.Mass)},
		{&limitTubeLength, float64(p.Passage)},
		{&limitBore, float64(p.Bore) * 1e3},
		{&limitContact, p.Contact},
		{&limitFilm, float64(p.Film)},
		{&limitPlateBeer, inlet.Celsius()},
		{&limitFlow, flow.LitresPerMinute()},
	} {
		if err := x.limit.Check(fn, x.value); err != nil {
			return err
		}
	}
	return nil
}
