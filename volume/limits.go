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

	limitGlass     = Range{"volume of the glass", 0.02, 20, "L", "from a taster to a carried keg"}
	limitBore      = Range{"bore of the glass", 20, 400, "mm", "from a taster to a pitcher"}
	limitHead      = Range{"height of the head", 0, 200, "mm", "a head, not a glass of foam"}
	limitHeadShare = Range{"head share", 0, 0.6, "", "more foam than beer is no serving"}
	limitFoam      = Range{"liquid share of the head", 0, 1, "", "a share"}
	limitLoss      = Range{"first glass", 0, 20, "L", "less than a keg"}
	limitLine      = Range{"contents of the line", 0, 20, "L", "less than a keg"}
	limitHeel      = Range{"heel", 0, 0.5, "", "half a keg left behind is a fault"}
	limitWaste     = Range{"waste", 0, 0.9, "", "a share of what is drawn"}
)

// Limits returns the validity table of the package: one row for each quantity
// that a calculation checks, in the order of the package's documentation.
func Limits() []Range {
	return []Range{
		limitCapacity, limitHeight, limitDiameter, limitTare,
		limitTub, limitTubHeight, limitTubKegs, limitBath,
		limitGlass, limitBore, limitHead, limitHeadShare, limitFoam, limitLoss, limitLine, limitHeel, limitWaste,
	}
}
