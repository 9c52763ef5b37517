package thermal

import (
	"math"

	"example.com/pourwell/internal/solve"
)

// measured prepares the balance of a keg whose UA was measured:
//
//	C dT/dt = UA (T_sa − T)
//
// T_sa is the sol-air temperature: that which air in the shade would need to
// heat the keg as this air and sun do, the mean over its faces by area. Most of
// the sunshine on a well insulated keg goes back into the air, so that it
// settles no warmer than a bare one of the same finish would; all of the sun
// over a small UA would have it boil.
//
// Source: sol-air temperature, ASHRAE Handbook, Fundamentals, chapter on
// cooling loads (from memory); films [1] to [4] of the package.
func (m *kegModel) measured() {
	sum, area := 0.0, 0.0
	for i := range m.parts {
		p := &m.parts[i]
		sum += p.area * (p.solAir() - p.t)
		area += p.area
	}
	m.solAir = m.air + sum/area
}

// solAir returns the temperature, K, of a surface through which no heat passes:
// what it takes from the sun it gives to the air.
func (f *face) solAir() float64 {
	if f.sun == 0 {
		return f.t
	}
	balance := func(ts float64) float64 { q, _ := f.flux(ts); return q }
	// Up to where the film's properties end, at a mean of 400 K with the air.
	ts, ok := solve.Root(balance, f.t, 799-f.t, 1e-4)
	if !ok {
		return math.NaN()
	}
	return ts
}
