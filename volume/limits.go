package volume

// The validity table of the package. The doc comment of the package prints it
// and a test compares the two.
var (
	limitCapacity  = Range{"capacity of the vessel", 0.05, 1000, "l", "from a taster to a small tank", "Vessel.Capacity"}
	limitHeight    = Range{"height of the vessel", 0.05, 2, "m", "portable vessels", "Vessel.Height"}
	limitDiameter  = Range{"diameter of the vessel", 0.03, 2, "m", "portable vessels", "Vessel.Diameter"}
	limitTare      = Range{"tare of the vessel", 0, 200, "kg", "portable vessels", "Vessel.Tare"}
	limitTub       = Range{"capacity of the tub", 1, 10000, "l", "from a bucket to a trough", "Tub.Capacity"}
	limitTubHeight = Range{"height of the tub", 0.05, 3, "m", "from a bucket to a trough", "Tub.Height"}
	limitTubKegs   = Range{"kegs in the tub", 0, 100, "", "upright in one layer", "Tub.Holds.kegs Tub.Depth.kegs Tub.Fit.kegs"}
	limitDepth     = Range{"depth of the bath", 0, 3, "m", "the deepest tub", "Tub.Holds.depth"}
	limitBath      = Range{"water and ice", 0, 10000, "l", "the largest tub", "Tub.Depth.bath"}

	limitGlass     = Range{"volume of the glass", 0.02, 20, "l", "from a taster to a carried keg", "Glass.Volume"}
	limitBore      = Range{"bore of the glass", 20, 400, "mm", "from a taster to a pitcher", "Glass.Bore"}
	limitHead      = Range{"height of the head", 0, 200, "mm", "a head, not a glass of foam", "Pour.Head"}
	limitHeadShare = Range{"head share", 0, 0.6, "share", "more foam than beer is no serving", "Pour.HeadShare"}
	limitFoam      = Range{"liquid share of the head", 0, 1, "share", "a share", "Pour.Foam"}
	limitLoss      = Range{"first glass", 0, 20, "l", "less than a keg", "Pour.FirstGlass"}
	limitLine      = Range{"contents of the line", 0, 20, "l", "less than a keg", "Pour.Line"}
	limitHeel      = Range{"heel", 0, 0.5, "share", "half a keg left behind is a fault", "Pour.Heel"}
	limitWaste     = Range{"waste", 0, 0.9, "share", "a share of what is drawn", "Pour.Waste"}

	limitGuests     = Range{"guests", 1, 1e6, "", "beyond it, plan site by site", "Crowd.Guests Bar.Guests"}
	limitDuration   = Range{"duration", 0, 24, "h", "one event", "Crowd.Duration"}
	limitFirstHour  = Range{"servings in the first hour", 0, 10, "", "beyond what anyone should drink", "Crowd.FirstHour"}
	limitLater      = Range{"servings in each later hour", 0, 5, "", "beyond what anyone should drink", "Crowd.Later"}
	limitDrinkers   = Range{"share who drink beer", 0, 1, "share", "a share", "Crowd.Share"}
	limitWeather    = Range{"weather factor", 0, 3, "", "a factor on the rates, 1 for an ordinary day", "Crowd.Weather"}
	limitSpread     = Range{"spread between people", 0, 3, "share", "standard deviation over mean", "Crowd.Spread"}
	limitDoubt      = Range{"doubt in the rates", 0, 0.5, "share", "standard deviation over mean", "Crowd.Doubt"}
	limitConfidence = Range{"confidence", 0.5, 0.999, "share", "a chance to aim at; certainty has no finite number", "Crowd.Confidence"}
	limitBeers      = Range{"beers", 1, 100, "", "one menu", "Crowd.Menu.beers"}
	limitShares     = Range{"sum of the shares", 0.999, 1.001, "share", "the shares of a menu sum to 1", ""}
	limitChoice     = Range{"share of a beer", 0, 1, "share", "a share", "Choice.Share"}
	limitKegs       = Range{"kegs on hand", 0, 10000, "", "one event", "Choice.Kegs"}
	limitPours      = Range{"pours in a keg", 1, 50000, "", "the largest vessel and the smallest glass", "Yield.Pours"}
	limitPrice      = Range{"price of a keg", 0, 1e6, "", "any currency", "Choice.Price"}
	limitSizes      = Range{"sizes of keg", 1, 20, "", "one stock", "Crowd.Mix.stock"}
	limitMix        = Range{"servings of a mix", 0, 100000, "", "every sum of pours is compared", ""}

	limitPerHour  = Range{"servings an hour", 0, 20, "", "beyond what anyone should drink", "Bar.PerHour"}
	limitService  = Range{"time for each serving", 1, 3600, "s", "a serving takes time", ""}
	limitPourTime = Range{"pour time or change", 0, 3600, "s", "within an hour", "Bar.PourTime Bar.Change"}
	limitWait     = Range{"wait", 0, 3600, "s", "within an hour", "Bar.Wait"}
	limitWithin   = Range{"share served within the wait", 0, 0.999, "share", "certainty takes endless taps", "Bar.Within"}
	limitRush     = Range{"rush of the first half hour", 0, 2, "", "2 is the whole hour's in its first half", "Bar.Rush"}
	limitTaps     = Range{"taps", 0, 10000, "", "checked to that number", "Bar.Taps"}
	limitLoad     = Range{"taps kept busy", 0, 9000, "", "leaves room below 10 000 taps", ""}

	limitPacking  = Range{"packing of the ice", 0.3, 0.9, "share", "pieces of ice with gaps between them", "Tub.Fit.packing"}
	limitWeight   = Range{"weight on the scale", 0, 1500, "kg", "the largest vessel, full", "Pour.Left.weight Cylinder.Left.weight"}
	limitGravity  = Range{"final gravity", 0.98, 1.2, "", "gravities of finished beer and of wort", "Pour.Left.gravity"}
	limitCharge   = Range{"charge of the cylinder", 0.1, 100, "kg", "portable cylinders", "Cylinder.Charge"}
	limitCylinder = Range{"tare of the cylinder", 0.1, 200, "kg", "portable cylinders", "Cylinder.Tare"}
	limitPerKeg   = Range{"gas for each keg", 0, 10, "kg", "a keg, not a tank", "Cylinder.Left.perKeg"}
	limitABV      = Range{"alcohol by volume", 0, 0.2, "share", "a fraction: 0.05 is 5 %", "Yield.Drinks.abv Glass.Notes.abv"}
)

// Limits returns the validity table of the package: one row for each quantity
// that a calculation checks, in the order of the package's documentation.
func Limits() []Range {
	return []Range{
		limitCapacity, limitHeight, limitDiameter, limitTare,
		limitTub, limitTubHeight, limitTubKegs, limitDepth, limitBath,
		limitGlass, limitBore, limitHead, limitHeadShare, limitFoam, limitLoss, limitLine, limitHeel, limitWaste,
		limitGuests, limitDuration, limitFirstHour, limitLater, limitDrinkers, limitWeather, limitSpread, limitDoubt, limitConfidence,
		limitBeers, limitShares, limitChoice, limitKegs, limitPours, limitPrice,
		limitSizes, limitMix,
		limitPerHour, limitService, limitPourTime, limitWait, limitWithin, limitRush, limitTaps, limitLoad,
		limitPacking, limitWeight, limitGravity, limitCharge, limitCylinder, limitPerKeg, limitABV,
	}
}
