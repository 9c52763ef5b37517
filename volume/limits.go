package volume

// The validity table of the package. The doc comment of the package prints it
// and a test compares the two.
var (
	limitCapacity  = Range{"capacity of the vessel", 0.05, 1000, "l", "from a taster to a small tank", ""}
	limitHeight    = Range{"height of the vessel", 0.05, 2, "m", "portable vessels", ""}
	limitDiameter  = Range{"diameter of the vessel", 0.03, 2, "m", "portable vessels", ""}
	limitTare      = Range{"tare of the vessel", 0, 200, "kg", "portable vessels", ""}
	limitTub       = Range{"capacity of the tub", 1, 10000, "l", "from a bucket to a trough", ""}
	limitTubHeight = Range{"height of the tub", 0.05, 3, "m", "from a bucket to a trough", ""}
	limitTubKegs   = Range{"kegs in the tub", 0, 100, "", "upright in one layer", ""}
	limitBath      = Range{"water and ice", 0, 10000, "l", "the largest tub", ""}

	limitGlass     = Range{"volume of the glass", 0.02, 20, "l", "from a taster to a carried keg", ""}
	limitBore      = Range{"bore of the glass", 20, 400, "mm", "from a taster to a pitcher", ""}
	limitHead      = Range{"height of the head", 0, 200, "mm", "a head, not a glass of foam", ""}
	limitHeadShare = Range{"head share", 0, 0.6, "", "more foam than beer is no serving", ""}
	limitFoam      = Range{"liquid share of the head", 0, 1, "", "a share", ""}
	limitLoss      = Range{"first glass", 0, 20, "l", "less than a keg", ""}
	limitLine      = Range{"contents of the line", 0, 20, "l", "less than a keg", ""}
	limitHeel      = Range{"heel", 0, 0.5, "", "half a keg left behind is a fault", ""}
	limitWaste     = Range{"waste", 0, 0.9, "", "a share of what is drawn", ""}

	limitGuests     = Range{"guests", 1, 1e6, "", "beyond it, plan site by site", ""}
	limitDuration   = Range{"duration", 0, 24, "h", "one event", ""}
	limitFirstHour  = Range{"servings in the first hour", 0, 10, "", "beyond what anyone should drink", ""}
	limitLater      = Range{"servings in each later hour", 0, 5, "", "beyond what anyone should drink", ""}
	limitDrinkers   = Range{"share who drink beer", 0, 1, "", "a share", ""}
	limitWeather    = Range{"weather factor", 0, 3, "", "a factor on the rates, 1 for an ordinary day", ""}
	limitSpread     = Range{"spread between people", 0, 3, "", "standard deviation over mean", ""}
	limitDoubt      = Range{"doubt in the rates", 0, 0.5, "", "standard deviation over mean", ""}
	limitConfidence = Range{"confidence", 0.5, 0.999, "", "a chance to aim at; certainty has no finite number", ""}
	limitBeers      = Range{"beers", 1, 100, "", "one menu", ""}
	limitShares     = Range{"sum of the shares", 0.999, 1.001, "", "the shares of a menu sum to 1", ""}
	limitChoice     = Range{"share of a beer", 0, 1, "", "a share", ""}
	limitKegs       = Range{"kegs on hand", 0, 10000, "", "one event", ""}
	limitPours      = Range{"pours in a keg", 1, 50000, "", "the largest vessel and the smallest glass", ""}
	limitPrice      = Range{"price of a keg", 0, 1e6, "", "any currency", ""}
	limitSizes      = Range{"sizes of keg", 1, 20, "", "one stock", ""}
	limitMix        = Range{"servings of a mix", 0, 100000, "", "every sum of pours is compared", ""}

	limitPerHour  = Range{"servings an hour", 0, 20, "", "beyond what anyone should drink", ""}
	limitService  = Range{"time for each serving", 1, 3600, "s", "a serving takes time", ""}
	limitPourTime = Range{"pour time or change", 0, 3600, "s", "within an hour", ""}
	limitWait     = Range{"wait", 0, 3600, "s", "within an hour", ""}
	limitWithin   = Range{"share served within the wait", 0, 0.999, "", "certainty takes endless taps", ""}
	limitRush     = Range{"rush of the first half hour", 0, 2, "", "2 is the whole hour's in its first half", ""}
	limitTaps     = Range{"taps", 0, 10000, "", "checked to that number", ""}
	limitLoad     = Range{"taps kept busy", 0, 9000, "", "leaves room below 10 000 taps", ""}

	limitPacking  = Range{"packing of the ice", 0.3, 0.9, "", "pieces of ice with gaps between them", ""}
	limitWeight   = Range{"weight on the scale", 0, 1500, "kg", "the largest vessel, full", ""}
	limitGravity  = Range{"gravity", 0.98, 1.2, "", "gravities of finished beer and of wort", ""}
	limitCharge   = Range{"charge of the cylinder", 0.1, 100, "kg", "portable cylinders", ""}
	limitCylinder = Range{"tare of the cylinder", 0.1, 200, "kg", "portable cylinders", ""}
	limitPerKeg   = Range{"gas for each keg", 0, 10, "kg", "a keg, not a tank", ""}
	limitABV      = Range{"alcohol by volume", 0, 0.2, "", "a fraction: 0.05 is 5 %", ""}
)

// Limits returns the validity table of the package: one row for each quantity
// that a calculation checks, in the order of the package's documentation.
func Limits() []Range {
	return []Range{
		limitCapacity, limitHeight, limitDiameter, limitTare,
		limitTub, limitTubHeight, limitTubKegs, limitBath,
		limitGlass, limitBore, limitHead, limitHeadShare, limitFoam, limitLoss, limitLine, limitHeel, limitWaste,
		limitGuests, limitDuration, limitFirstHour, limitLater, limitDrinkers, limitWeather, limitSpread, limitDoubt, limitConfidence,
		limitBeers, limitShares, limitChoice, limitKegs, limitPours, limitPrice,
		limitSizes, limitMix,
		limitPerHour, limitService, limitPourTime, limitWait, limitWithin, limitRush, limitTaps, limitLoad,
		limitPacking, limitWeight, limitGravity, limitCharge, limitCylinder, limitPerKeg, limitABV,
	}
}
