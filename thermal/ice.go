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

// conducted is the share of the ice's film that passes heat by conduction into
// water that does not move; judged.
const conducted = 0.02

// A melt is how ice melts in the bath at one moment.
type melt struct {
	reach float64 // share of the depth that ice reaches
	drawn float64 // coldest that it can make the water, °C
	rate  float64 // kg/s
}

// melting returns how the ice melts in a bath of tw °C. Ice that reaches to the
// floor cools the water to its melting point; floating ice only to its greatest
// density, below which cold water stays on top. A fiftieth of the film passes
// heat by conduction all the same.
func (m *bathModel) melting(tw, ice, liquid float64) melt {
	freezes, densest := m.bathPoints(liquid)
	reach := math.Min(1, ice/(ice+liquid)/packed)
	if m.Stirred {
		reach = 1
	}
	drawn := freezes + (1-reach)*math.Max(0, densest-freezes)
	film := m.scale * iceFilm * math.Cbrt(m.heap*ice*ice)
	q := film * (math.Max(0, tw-drawn) + conducted*math.Max(0, tw-freezes))
	return melt{reach, drawn, q / (m.cold + waterHeat*freezes)}
}

// waterHeat is the heat capacity of water near 0 °C, J/(kg K); IAPWS SR6-08.
const waterHeat = 4215.0

// waterIce is the density of water at 0 °C, kg/m³; IAPWS SR6-08.
const waterIce = 999.84

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
