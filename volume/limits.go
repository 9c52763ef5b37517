package volume

// The validity table of the package. The doc comment of the package prints it
// and a test compares the two.
var (
	limitCapacity  = Range{"capacity of the vessel", 0.05, 1000, "L", "from a taster to a small tank"}
	limitHeight    = Range{"height of the vessel", 0.05, 2, "m", "portable vessels"}
	limitDiameter  = Range{"diameter of the vessel", 0.03, 2, "m", "portable vessels"}
	limitTare      = Range{"tare of the vessel", 0, 200, "kg", "portable vessels"}
	limitTub       = Range{"capacity of the tub", 1, 10000, "L", "from a bucket to a trough"}
	limitTubHeight = Range{"height of the tub", 0.05, 3, "m", "from a bucket to a trough"}
	limitTubKegs   = Range{"kegs in the tub", 0, 100, "", "upright in one layer"}
	limitBath      = Range{"water and ice", 0, 10000, "L", "the largest tub"}
)

// Limits returns the validity table of the package: one row for each quantity
// that a calculation checks, in the order of the package's documentation.
func Limits() []Range {
	return []Range{
		limitCapacity, limitHeight, limitDiameter, limitTare,
		limitTub, limitTubHeight, limitTubKegs, limitBath,
	}
}
