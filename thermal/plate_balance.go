package thermal

import (
	"math"

	"example.com/pourwell/internal/pipe"
	"example.com/pourwell/internal/water"
	"gonum.org/v1/gonum/unit"
)

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
