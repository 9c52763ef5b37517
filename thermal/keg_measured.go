package thermal

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
		sum += p.area * (p.SolAir() - p.T)
		area += p.area
	}
	m.solAir = m.air + sum/area
}
