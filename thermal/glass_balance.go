package thermal

// Constants of a glass of beer in air.
const (
	glassHeat  = 750.0        // of soda-lime glass, J/(kg K), EN 12524
	glassEmits = 0.9          // emissivity of glass and of beer, as of most that is no metal
	glassInner = 0.003 + 0.01 // 3 mm of glass and the film of beer inside, m² K/W; assumed
	glassOuter = 0.006        // added to the bore, m; assumed
	glassBand  = 0.30         // of the conductance: still air is rarely still, and hands are warm
	glassFoot  = 0.30         // share of the glass that may not have cooled when the beer is drunk
)

// meet returns the common temperature in °C when the share of the glass takes
// part.
func (r *GlassRun) meet(share float64) float64 {
	return (r.beer*r.poured + share*r.glass*r.from) / (r.beer + share*r.glass)
}

// at returns the temperature in °C after the wait with f times the conductance.
func (r *GlassRun) at(f float64) float64 {
	return r.settles - (r.settles-r.common)*r.scale.After(f*r.wait)
}
