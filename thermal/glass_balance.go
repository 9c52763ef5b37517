package thermal

import (
	"math"

	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/solve"
)

// Constants of a glass of beer in air.
const (
	glassHeat  = 750.0        // of soda-lime glass, J/(kg K), EN 12524
	glassEmits = 0.9          // emissivity of glass and of beer, as of most that is no metal
	glassInner = 0.003 + 0.01 // 3 mm of glass and the film of beer inside, m² K/W; assumed
	glassOuter = 0.006        // added to the bore, m; assumed
	glassBand  = 0.30         // of the conductance: still air is rarely still, and hands are warm
	glassFoot  = 0.30         // share of the glass that may not have cooled when the beer is drunk
)

// run works out beer of t °C that waits so many seconds; all arguments are
// within their ranges.
func (g *Glassful) run(t, wait float64) GlassRun {
	r := GlassRun{
		beer:  float64(g.Liquid) * g.Beer.density(t) * g.Beer.heatCapacity(t),
		glass: float64(g.Glass.Mass) * glassHeat, poured: t, from: g.From.Celsius(), wait: wait, glassful: *g,
	}
	r.common = r.meet(1)
	r.Temperature, r.GlassCost = Celsius(r.common), Difference(r.common-t)

	bore := float64(g.Glass.Bore)
	height := float64(g.Liquid) / (math.Pi / 4 * bore * bore)
	outside := bore + glassOuter
	r.side = math.Pi * outside * height
	sun := heat.SunOn(float64(g.Around.Sun))
	skin := heat.Face{
		Diameter: outside, Length: height, Dry: glassEmits, Wet: lineWet,
		Sun: g.Solar * sun.OnUpright(), Ambient: g.Around.ambient(),
	}
	top := skin
	top.Kind, top.Sun = heat.Up, g.Solar*sun.OnLevel()
	area := math.Pi / 4 * bore * bore
	taken := func(kelvin float64) float64 {
		side, _ := skin.Through(kelvin, glassInner)
		up, _ := top.Flux(kelvin)
		return side*r.side + up*area
	}
	settles := skin.T
	if g.Around.Sun > 0 {
		settles, _ = solve.Root(taken, skin.T, skin.T+60, 1e-9)
	}
	r.Settles, r.settles = Kelvin(settles), settles-zeroCelsius
	difference := heat.Drive(r.settles - r.common)
	for i, node := range heat.Nodes {
		theta := difference * node
		ua := taken(settles-theta) / theta
		r.scale[i] = (r.beer + r.glass) / ua
		if i == 0 {
			r.UA, r.heat = Conductance(ua), ua*(r.settles-r.common)
		}
	}
	r.After = Celsius(r.at(1))
	return r
}

// meet returns the common temperature in °C when the share of the glass takes
// part.
func (r *GlassRun) meet(share float64) float64 {
	return (r.beer*r.poured + share*r.glass*r.from) / (r.beer + share*r.glass)
}

// at returns the temperature in °C after the wait with f times the conductance.
func (r *GlassRun) at(f float64) float64 {
	return r.settles - (r.settles-r.common)*r.scale.After(f*r.wait)
}
