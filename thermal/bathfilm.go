package thermal

import (
	"math"

	"example.com/pourwell/internal/heat"
)

// iceAlone is the coefficient between a keg and the ice around it without
// water, W/(m² K); 40 to 150, judged from a demonstration that found cans twice
// as slow without water.
const iceAlone = 75.0

// stirring is the speed of the water past the kegs where somebody stirs, m/s;
// judged.
const stirring = 0.05

// coefficient returns that between beer of t °C and the bath, W/(m² K). Where
// there is too little water to fill the gaps between the ice, that share of the
// side touches ice alone.
func (m *bathModel) coefficient(t, tw, ice, liquid float64) float64 {
	wet, dry := m.keg.at(t, tw)
	gaps := ice * (1 - packed) / packed * waterIce / iceDensity
	flooded := 1.0
	if gaps > liquid {
		flooded = liquid / gaps
	}
	return m.scale * (flooded*wet + (1-flooded)*dry)
}

// kegFilms returns the coefficients between beer of t1 °C and a bath of tw °C,
// W/(m² K): with water around the keg and with ice alone.
func (m *bathModel) kegFilms(t1, tw float64) (wet, dry float64) {
	h := m.keg.height
	inside := m.Beer.fluidAt(0.75*t1 + 0.25*tw)
	outside := heat.Water(zeroCelsius + 0.25*t1 + 0.75*tw)
	in, out := heat.PlateFactor(inside.Pr), heat.PlateFactor(outside.Pr)
	beerSide := func(wall float64) float64 {
		return heat.NusseltPlateAt(inside.Rayleigh(heat.WaterBuoyancy(wall, t1, m.densest), h), in) * inside.K / h
	}
	wall := (t1 + tw) / 2
	var hi, ho float64
	for range 4 {
		hi = beerSide(wall)
		ho = heat.NusseltPlateAt(outside.Rayleigh(heat.WaterBuoyancy(wall, tw, heat.Densest), h), out) * outside.K / h
		if m.Stirred {
			d := m.body.diameter
			ho = heat.Mixed(heat.NusseltCross(stirring*d/outside.Nu, outside.Pr)*outside.K/d, ho)
		}
		wall = (hi*t1 + ho*tw) / (hi + ho)
	}
	alone := beerSide((hi*t1 + iceAlone*tw) / (hi + iceAlone))
	return 1 / (1/hi + 1/ho + m.wall), 1 / (1/alone + 1/iceAlone + m.wall)
}

// mix returns the heat that passes from the upper zone to the lower: by
// conduction in beer and steel, or through the gas where the beer ends below
// the bath, and by plumes where the upper beer is the heavier.
//
// Source of the plumes: McAdams' turbulent branch, with the two liquids for
// plate and bulk; judged.
func (m *bathModel) mix(beer, t1, t2 float64, layered bool) float64 {
	if !layered || t1 == t2 {
		return 0
	}
	area := m.body.end / dished
	g := 2 * m.creep / m.body.height
	if beer <= m.border*float64(m.Vessel.Capacity) {
		g = gasFilm * area
	}
	if a, b := math.Abs(t2-m.densest), math.Abs(t1-m.densest); a < b {
		g += m.mixing * area * math.Cbrt(math.Pow(b, heat.DensityPower)-math.Pow(a, heat.DensityPower))
	}
	return g * (t2 - t1)
}

// A filmTable keeps the coefficients of [bathModel.kegFilms], filled when first
// asked for, with straight lines between nodes.
type filmTable struct {
	node   func(t1, tw float64) (wet, dry float64)
	height float64
	nodes  [filmBeer * filmBath]struct{ wet, dry float64 } // 0 while not known
}

// The table runs from −5 to 45 °C for the beer and from −17 to 45 °C for the
// bath in steps of 0.5 K. Beyond it the coefficients of its edge stand in: a
// puddle in hot air gets there, and beer only where it is refused.
const (
	filmStep           = 0.5
	filmLow            = -5.0
	filmCold           = -17.0
	filmBeer, filmBath = 101, 125
)

func (f *filmTable) at(t1, tw float64) (wet, dry float64) {
	x, y := (t1-filmLow)/filmStep, (tw-filmCold)/filmStep
	x, y = math.Max(0, math.Min(x, filmBeer-1)), math.Max(0, math.Min(y, filmBath-1))
	if math.IsNaN(x + y) {
		return math.NaN(), math.NaN()
	}
	i, j := min(int(x), filmBeer-2), min(int(y), filmBath-2)
	x -= float64(i)
	y -= float64(j)
	for a := range 2 {
		for b := range 2 {
			n := &f.nodes[(i+a)*filmBath+j+b]
			if n.wet == 0 {
				n.wet, n.dry = f.node(filmLow+filmStep*float64(i+a), filmCold+filmStep*float64(j+b))
			}
			w := (1 - x + float64(a)*(2*x-1)) * (1 - y + float64(b)*(2*y-1))
			wet += w * n.wet
			dry += w * n.dry
		}
	}
	return wet, dry
}
