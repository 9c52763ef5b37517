package thermal

import (
	"slices"

	"example.com/pourwell/volume"
)

// Errors of the leaf package, so that a caller of thermal need not import it.
type RangeError = volume.RangeError

var (
	ErrNoSolution = volume.ErrNoSolution
	ErrNever      = volume.ErrNever
)

// Limits returns the validity table of the package: one row for each quantity
// that is checked, as its [*RangeError] names it.
func Limits() []volume.Range {
	return slices.Concat(
		[]volume.Range{limitABV, limitFG, limitExtract, limitLiquid},
		[]volume.Range{limitAir, limitHumidity, limitAltitude, limitSun, limitWind},
	)
}
