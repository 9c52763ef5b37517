package thermal

import (
	"math"

	"example.com/pourwell/internal/heat"
	"gonum.org/v1/gonum/unit"
)

// Heat that a volume of the line's materials takes up, J/(m³ K).
const (
	lineWallHeat = 1200 * 1000 // flexible PVC, EN 12524; polyethylene takes 2.0e6
	lineFoamHeat = 70 * 1500   // elastomeric foam, EN 12524
	lineEmits    = 0.9         // emissivity of plastics and rubber, Mechanical Engineers' Handbook
	lineWet      = 0.96        // of a film of water, from memory
)

// run works out everything that beer of t °C meets in the line. inner is the
// resistance of the film inside, K m/W; where the beer stands it is 0, and the
// scale of the result is a time in s instead of the product of length and
// resistance.
func (l *Line) run(t, inner float64) LineRun {
	bore := float64(l.Bore)
	tube := bore + 2*float64(l.Wall)
	outer := tube + 2*float64(l.Insulation)
	wall := heat.RadialResistance(bore, tube, float64(l.Conductivity))
	foam := heat.RadialResistance(tube, outer, float64(l.InsulationConductivity))
	inside := inner + wall + foam

	sun := heat.SunOn(float64(l.Around.Sun))
	skin := heat.Face{
		Kind: heat.Lying, Diameter: outer, Length: outer, Dry: lineEmits, Wet: lineWet,
		Sun: l.Solar * sun.OnLying(), Ambient: l.Around.ambient(),
	}
	settles := skin.Settles()

	r := LineRun{
		Settles: Kelvin(settles), line: *l, inlet: t, settles: settles - zeroCelsius, inside: inside,
		HoldUp: unit.Volume(math.Pi / 4 * bore * bore * float64(l.Length)),
	}
	beer := math.Pi / 4 * bore * bore * l.Beer.density(t) * l.Beer.heatCapacity(t) // J/(m K)
	still := heat.Relaxation{}
	difference := heat.Drive(r.settles - t)
	for i, node := range heat.Nodes {
		theta := difference * node
		q, dew := skin.Through(settles-theta, inside*math.Pi*outer)
		whole := theta / (q * math.Pi * outer) // K m/W
		capacity := beer + heat.LayerHeat(bore, tube, float64(l.Conductivity), lineWallHeat, whole-inner-wall, whole) +
			heat.LayerHeat(tube, outer, float64(l.InsulationConductivity), lineFoamHeat, whole-inside, whole)
		still[i] = whole * capacity
		r.scale[i] = whole
		if i == 0 {
			r.outside, r.capacity, r.dewShare = whole-inside, capacity, dew/q
			r.UA = Conductance(float64(l.Length) / whole)
		}
	}
	if inner == 0 {
		r.scale = still
	}
	r.TimeConstant = seconds(still.Until(math.Exp(-1)))
	k := float64(l.Conductivity)
	if l.Insulation > 0 {
		k = float64(l.InsulationConductivity)
	}
	r.CriticalRadius = unit.Length(heat.CriticalRadius(k, r.outside, outer))
	return r
}

// finish fills what follows from the share of the difference that is left, and
// the heat rate that a kelvin of warming stands for, W/K.
func (r *LineRun) finish(left, rate float64) {
	change := (r.settles - r.inlet) * (1 - left)
	r.Temperature = Celsius(r.inlet + change)
	r.Heat = unit.Power(rate * change)
}
