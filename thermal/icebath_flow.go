package thermal

import (
	"math"

	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/water"
)

// Figures of the ice. Density without air: IAPWS R10-06(2009). Loose cubes or
// crushed ice fill 55 % of their heap (judged, 50 to 60 %).
const (
	iceDensity = water.IceDensity // kg/m³
	packed     = 0.55
)

// iceFilm is the heat that 1 kg of fresh ice takes from the water around it for
// each kelvin, W/(K kg): film coefficient times surface. Fitted to two series
// of bottles in iced water (testdata/bottles_in_ice.csv) with 1 kg of ice to
// 1.5 kg of water, which were not recorded; other mixtures of a bowl give 15 to
// 40.
const iceFilm = 25.0

// iceAlone is the coefficient between a keg and the ice around it without
// water, W/(m² K); 40 to 150, judged from a demonstration that found cans twice
// as slow without water.
const iceAlone = 75.0

// derivative is the balance of [IceBath.Reach].
func (m *bathModel) derivative(_ float64, y, d []float64) {
	f := m.flows(y)
	// Beer drawn from the bottom lets the upper beer down into the lower zone.
	carried := 0.0
	if y[inBeer] > m.border*float64(m.Vessel.Capacity) {
		carried = m.rho * m.c * m.rate * f.t2
	}
	drawn := m.rho * m.c * m.rate * f.t1

	d[inLower] = carried - drawn - f.lower + f.mix + f.airLower
	d[inUpper] = -carried - f.upper - f.mix + f.airUpper
	d[inBeer] = -m.rate
	d[inWater] = f.tub + m.n*(f.lower+f.upper) - m.cold*f.melt
	if m.Drained {
		d[inWater] = 0 // melt water runs off at 0 °C
	}
	d[inIce] = -f.melt
	d[inGain] = f.tub + m.n*(f.airLower+f.airUpper)
	d[inDrawn] = m.n * drawn
}

// bathFlows are the heat flows of one moment, W, and what they rest on.
type bathFlows struct {
	t1, t2, tw float64 // °C: lower beer, upper beer, bath

	lower, upper       float64 // from one keg's beer to the bath
	mix                float64 // from one keg's upper beer to its lower
	airLower, airUpper float64 // from the air to one keg's beer
	tub                float64 // from air and sun to the bath
	melt               float64 // kg/s
}

func (m *bathModel) flows(y []float64) bathFlows {
	beer, ice := y[inBeer], math.Max(y[inIce], 0)
	lower, upper := m.capacities(beer)
	f := bathFlows{t1: y[inLower] / lower}
	layered := upper > 1e-6*lower
	f.t2 = f.t1
	if layered {
		f.t2 = y[inUpper] / upper
	}
	liquid := m.liquid(ice)
	if !m.Drained {
		// Ice that lies almost dry still carries a tenth of its mass as water.
		f.tw = y[inWater] / (math.Max(liquid, 0.1*ice) * m.brineHeat(liquid))
	}
	m.exchange(&f, beer, ice, liquid, layered)
	f.mix = m.mix(beer, f.t1, f.t2, layered)
	switch {
	case ice == 0:
	case m.Drained:
		f.melt = (m.n*(f.lower+f.upper) + f.tub) / m.cold
	default:
		f.melt = m.melting(f.tw, ice, liquid)
	}
	return f
}

// exchange adds the heat between beer, bath and air: through the wetted side
// below the bath's surface and above it, through the bottom, and through the
// top.
func (m *bathModel) exchange(f *bathFlows, beer, ice, liquid float64, layered bool) {
	s := m.covered(beer, ice)
	full := beer / float64(m.Vessel.Capacity)
	border := math.Min(m.border, full)
	if !m.Drained || ice > 0 {
		f.tub, _ = m.tub.At(f.tw)
		touched := m.body.side*math.Min(s, border) + footArea*m.body.end
		f.lower = touched * m.coefficient(f.t1, f.tw, ice, liquid) * (f.t1 - f.tw)
		if over := math.Min(s, full) - border; over > 0 {
			f.upper = m.body.side * over * m.coefficient(f.t2, f.tw, ice, liquid) * (f.t2 - f.tw)
		}
	}
	if bare := border - s; bare > 0 {
		q, _ := m.side.At(f.t1)
		f.airLower = m.body.side * bare * q
	}
	top, _ := m.top.At(f.t2)
	if bare := full - math.Max(s, border); bare > 0 {
		q, _ := m.side.At(f.t2)
		top += m.body.side * bare * q
	}
	if layered {
		f.airUpper = top
	} else {
		f.airLower += top
	}
}

// melting returns the ice that melts in a bath of tw °C, kg/s. Ice that reaches
// to the floor cools the water to its melting point; floating ice only to its
// greatest density, below which cold water stays on top. A fiftieth of the film
// passes heat by conduction all the same.
func (m *bathModel) melting(tw, ice, liquid float64) float64 {
	freezes, densest := m.bathPoints(liquid)
	reach := math.Min(1, ice/(ice+liquid)/packed)
	if m.Stirred {
		reach = 1
	}
	drawn := freezes + (1-reach)*math.Max(0, densest-freezes)
	film := m.scale * iceFilm * math.Cbrt(m.heap*ice*ice)
	q := film * (math.Max(0, tw-drawn) + 0.02*math.Max(0, tw-freezes))
	return q / (m.cold + waterHeat*freezes)
}

// waterHeat is the heat capacity of water near 0 °C, J/(kg K); IAPWS SR6-08.
const waterHeat = 4215.0

// liquid returns the water in the bath, kg, without its salt.
func (m *bathModel) liquid(ice float64) float64 {
	if m.Drained {
		return 0
	}
	return m.fresh + m.put - ice - m.bailed
}

// brineHeat returns the heat capacity of the bath's water with its salt, per kg
// of water, J/(kg K). Salt displaces 1.1 times its mass of heat capacity; from
// memory, within 2 %.
func (m *bathModel) brineHeat(liquid float64) float64 {
	if m.salt == 0 {
		return waterHeat
	}
	share := m.salt / (m.salt + liquid)
	return waterHeat * (1 - 1.1*share) * (1 + m.salt/liquid)
}

// bathPoints returns the freezing point of the bath and the temperature at
// which its water is densest, °C.
func (m *bathModel) bathPoints(liquid float64) (freezes, densest float64) {
	if m.salt == 0 {
		return 0, heat.Densest
	}
	s := 100 * m.salt / (m.salt + liquid)
	freezes = brineFreezes(s)
	// In a straight line to the strength, 2.47 %, at which water is densest
	// where it freezes (oceanography, from memory).
	return freezes, math.Max(freezes, heat.Densest+(brineFreezes(2.47)-heat.Densest)*s/2.47)
}

// brineFreezes returns the freezing point, °C, of brine with s % by mass of
// sodium chloride, to 23 %, within 0.03 K to 20 %. Source: our fit to Lange's
// Handbook of Chemistry, 15th ed., table 5.13.
func brineFreezes(s float64) float64 { return -s * (0.56390 + s*(0.004472+s*0.00042087)) }

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

// stirring is the speed of the water past the kegs where somebody stirs, m/s;
// judged.
const stirring = 0.05

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
