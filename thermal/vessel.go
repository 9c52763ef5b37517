package thermal

import (
	"cmp"
	"math"

	"example.com/pourwell/internal/heat"
	"example.com/pourwell/volume"
)

// Judged figures of the keg's build; no source.
const (
	gasFilm  = 15.0 // through the gas space to the surface of the beer, W/(m² K)
	footArea = 0.5  // share of the bottom that air reaches, inside the foot ring
	dished   = 1.2  // area of a dished end over that of a flat one
)

// Heat capacity of stainless steel AISI 304, J/(kg K). Source: Bergman et al.,
// table A.1 (from memory).
const steelHeat = 477.0

// Conductivity of flexible elastomeric or polyethylene foam, design value,
// W/(m K). Source: DIN EN 12524:2000.
const foamConductivity = 0.050

// finishes are emissivity dry and wet, and absorptance for sunlight. Sources:
// Bergman et al., tables A.11 and A.12, clean and polished stainless steel
// (from memory); white paint and black lacquer in Mechanical Engineers'
// Handbook, vol. 4, table 19, for whose mean the painted absorptance stands; a
// surface with beads of dew is judged to lie between steel and a water film
// (0.96).
var finishes = [...]struct{ dry, wet, solar float64 }{
	Bare:    {0.20, 0.70, 0.40},
	Painted: {0.90, 0.95, 0.55},
}

// jacketFinish is that of a dark cloth or foam jacket.
var jacketFinish = struct{ dry, wet, solar float64 }{0.90, 0.95, 0.90}

// A body is the cylinder of a vessel's beer, as wide as the vessel: what lies
// above and below is open rings. Heat passes its side and ends.
type body struct{ diameter, height, side, end float64 } // m, m, m², m²

func bodyOf(v volume.Vessel) body {
	d := float64(v.Diameter)
	end := math.Pi / 4 * d * d
	h := float64(v.Capacity) / end
	return body{d, h, math.Pi * d * h, dished * end}
}

// A part is a face of the keg with its inside.
type part struct {
	heat.Face
	area   float64 // outside, m²
	inside float64 // area of the beer's side of it, m²; 0 for none
	height float64 // of the beer's film, m; 0 for a fixed film through gas
	jacket float64 // resistance, m² K/W of outside area
}

// heat returns the heat through the part into beer of c °C, and the dew's part.
func (p *part) heat(b Beer, densest, c float64) (q, dew float64) {
	if p.area == 0 || p.inside == 0 {
		return 0, 0
	}
	tb := c + zeroCelsius
	h := gasFilm
	if p.height > 0 {
		h = 100 // first guess, W/(m² K)
	}
	for range 3 {
		q, dew = p.Through(tb, p.jacket+p.area/(p.inside*h))
		if p.height == 0 {
			break
		}
		h = b.film(c, c+q*p.area/(p.inside*h), p.height, densest)
	}
	return q * p.area, dew * p.area
}

// checkVessel refuses a vessel without the dimensions that heat needs.
func checkVessel(fn string, v volume.Vessel) error {
	return cmp.Or(
		limitKegLitres.Check(fn, float64(v.Capacity/volume.Litre)),
		limitKegWide.Check(fn, float64(v.Diameter)),
		limitKegHigh.Check(fn, float64(v.Height)),
		limitTare.Check(fn, float64(v.Tare)),
	)
}
