package lines

import (
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// InKeg returns the run with its beer in v: the depth of a full keg, a dip tube
// that reaches to its bottom, and the rating of v if it is the weakest known.
//
//	h_keg = 0.85 × outside height
//
// No calculation takes the run if v has no height. Rims and domed ends take the
// rest (estimate); the dip tube is steel of 7 mm
// bore, as common practice has it for soda kegs. Set DipTube afterwards where
// yours differs.
func (r Run) InKeg(v volume.Vessel) Run {
	const beerShare = 0.85
	r.KegHeight = beerShare * v.Height
	if !(v.Height > 0) {
		r.KegHeight = unit.Length(nan)
	}
	if v.Rated > 0 && (r.Rated == 0 || v.Rated < r.Rated) {
		r.Rated = v.Rated
	}
	r.DipTube = Tube{Bore: 7 * Millimetre, Length: r.KegHeight, Wall: 0.7 * Millimetre, Material: "stainless"}
	return r
}

// Open returns the index of the only tube of the run without a length, -1 if
// there is none and -2 if there are several: the one that [Run.Length] may
// solve for.
func (r Run) Open() int {
	open := -1
	for i, t := range r.Tubes {
		if t.Length == 0 {
			if open >= 0 {
				return -2
			}
			open = i
		}
	}
	return open
}
