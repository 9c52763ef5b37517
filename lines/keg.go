package lines

import "example.com/pourwell/volume"

// InKeg returns the run with its beer in v: the depth of a full keg, and a dip
// tube that reaches to its bottom.
//
//	h_keg = 0.85 × outside height
//
// Rims and domed ends take the rest (estimate); the dip tube is steel of 7 mm
// bore, as common practice has it for soda kegs. Set DipTube afterwards where
// yours differs.
func (r Run) InKeg(v volume.Vessel) Run {
	const beerShare = 0.85
	r.KegHeight = beerShare * v.Height
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
