package lines

import (
	"time"

	"gonum.org/v1/gonum/unit"
)

// A Cleaning is how much liquid the cleaning of a run takes.
type Cleaning struct {
	Fill     unit.Volume   // what the tubes hold
	Solution unit.Volume   // of cleaner to mix
	Rinse    unit.Volume   // of water, before and after together
	Contact  time.Duration // of the solution with the tubes at rest (practice)
	Moving   time.Duration // of the solution pumped in a circle (practice)
}

// Amounts of the cleaning over what the tubes hold. Common practice, no source:
// the solution pushes the rinse water out and stands undiluted, the rinse goes
// on until nothing of the cleaner is left on test paper.
const (
	solutionFills = 1.5
	rinseFills    = 2 + 4 // to push the beer out, and the cleaner
)

// Clean returns the amounts for cleaning the run's tubes, the dip tube left out,
// which is cleaned with the keg.
//
// Contact times are those of the trade: 20 minutes at rest, 15 minutes in
// motion, every two weeks (Brewers Association, Draught Beer Quality Manual,
// from memory). The maker's label of the cleaner goes before them.
//
// It returns a [*RangeError] outside the validity table.
func (r Run) Clean() (Cleaning, error) {
	const fn = "lines.Run.Clean"
	c := Cleaning{Contact: 20 * time.Minute, Moving: 15 * time.Minute}
	if err := limitTubes.Check(fn, float64(len(r.Tubes))); err != nil {
		return invalidCleaning, err
	}
	for _, t := range r.Tubes {
		if err := t.check(fn); err != nil {
			return invalidCleaning, err
		}
		c.Fill += t.Volume()
	}
	c.Solution, c.Rinse = solutionFills*c.Fill, rinseFills*c.Fill
	return c, nil
}

var invalidCleaning = Cleaning{Fill: unit.Volume(nan), Solution: unit.Volume(nan), Rinse: unit.Volume(nan)}

// Steps returns the working.
func (c Cleaning) Steps() []Step {
	return []Step{
		step("volume of the tubes", "V", float64(c.Fill), "m3", "Σ π d² L/4"),
		step("solution over that volume", "n_s", solutionFills, "", "common practice, no source"),
		step("solution", "V_s", float64(c.Solution), "m3", "n_s V"),
		step("rinse over that volume", "n_r", rinseFills, "", "common practice, no source"),
		step("rinse", "V_r", float64(c.Rinse), "m3", "n_r V"),
	}
}

// Band returns the uncertainty of the fill: 2 % of the bore counts twice.
func (c Cleaning) Band() Band {
	const share = 0.04
	return Band{Name: "fill volume", Low: float64(c.Fill) * (1 - share), High: float64(c.Fill) * (1 + share), Suffix: "m3", Source: "bores within 2 %"}
}
