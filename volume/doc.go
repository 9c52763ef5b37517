// Package volume counts beer: what vessels and glasses hold, how many pours a
// keg gives, how much a crowd drinks and how likely the kegs run out, how many
// taps keep the queue short, what fits in a tub of ice, and what is left.
//
// It is the leaf of the four packages. The errors, ranges, steps and bands that
// all of them share are defined here.
//
// # Conventions
//
// Volumes, lengths and masses are SI quantities of gonum's package unit; write 5
// * USGallon, 3.5 * Inch, 58 * Pound. US and imperial units have names of their
// own, since their gallons differ by 20 % and their fluid ounces by 4 %. A
// vessel's capacity is to the brim, its height and diameter are outside. Shares
// and probabilities are from 0 to 1.
//
// One calculation leads to the next:
//
//	keg.Into(glass).PerKeg()        Vessel, Glass → Pour → Yield
//	crowd.Demand(yield)             Crowd → Demand: servings, kegs, chance of running out
//	crowd.Menu, crowd.Mix           several beers; several sizes of keg
//	crowd.Bar().Queue()             Bar → Queue: taps and waits
//	tub.Fit(keg, kegs, packing)     Tub → Fit: ice, water, what floats
//	pour.Left, cylinder.Left        a weight → Remains
//
// Zero means zero; [Vessel.Into], [DefaultCrowd] and [DefaultBar] give usual
// values. Results hold the answer in their fields, the working in Steps, the
// uncertainty of the leading answer in Band, what can hurt someone in Cautions
// and what the answer rests on in Notes. With an error every number is NaN or 0.
//
// # How sure the tables are
//
// Capacities are exact: legal units, or fractions of the beer barrel of 31 US or
// 36 imperial gallons. Sizes and weights of kegs are those of trade charts whose
// authors are not named, and differ between makers; each figure has a [Status].
// No standard for US kegs was found; DIN 6647-1 allows 0.3 MPa. The stamp on a
// keg or cylinder binds.
//
// # Nomenclature
//
//	V   capacity or space           N   guests             a  offered load
//	Vg  glass, brimful              s   share; service     c  taps
//	Vf  head                        m   servings a head    C  chance of waiting
//	Vl  beer under the head         μ   servings expected  Wq mean wait
//	φ   liquid share of a head,     κ   excess of the      λ  arrivals
//	    packing of ice                  variance           h  height, depth
//
// # Where physics and practice disagree
//
// A head takes (1 − φ) of its height in beer from the glass. Practice says that a
// quarter of fresh foam is liquid; another figure is an eighth. The bores of US
// glasses are fitted to a trade table of glasses per keg at a quarter: within 3 %
// from 10 to 16 oz and ½ to 1 in of head.
//
// Practice plans 10 to 15 % more than the average. That is not enough for small
// parties: of sixty guests, half drinking beer, the average has to be passed by
// a quarter to be sure of nine parties in ten, because it is chance who comes
// thirsty. For a thousand guests 15 % is about right, and what is left is doubt
// about the average itself.
//
// Practice gives a bartender 60 to 90 drinks an hour. Eight seconds of pouring
// and twenty-two between glasses make 120, as long as somebody waits.
//
// # Validity
//
// Bounds are inclusive; beyond them functions return a [*RangeError].
//
//	capacity of the vessel       0.05 to 1000 L
//	height of the vessel         0.05 to 2 m
//	diameter of the vessel       0.03 to 2 m
//	tare of the vessel           0 to 200 kg
//	capacity of the tub          1 to 10000 L
//	height of the tub            0.05 to 3 m
//	kegs in the tub              0 to 100
//	depth of the bath            0 to 3 m
//	water and ice                0 to 10000 L
//	volume of the glass          0.02 to 20 L
//	bore of the glass            20 to 400 mm
//	height of the head           0 to 200 mm
//	head share                   0 to 0.6
//	liquid share of the head     0 to 1
//	first glass                  0 to 20 L
//	contents of the line         0 to 20 L
//	heel                         0 to 0.5
//	waste                        0 to 0.9
//	guests                       1 to 1e+06
//	duration                     0 to 24 h
//	servings in the first hour   0 to 10
//	servings in each later hour  0 to 5
//	share who drink beer         0 to 1
//	weather factor               0 to 3
//	spread between people        0 to 3
//	doubt in the rates           0 to 0.5
//	confidence                   0.5 to 0.999
//	beers                        1 to 100
//	sum of the shares            0.999 to 1.001
//	share of a beer              0 to 1
//	kegs on hand                 0 to 10000
//	pours in a keg               1 to 50000
//	price of a keg               0 to 1e+06
//	sizes of keg                 1 to 20
//	servings of a mix            0 to 100000
//	servings an hour             0 to 20
//	time for each serving        1 to 3600 s
//	pour time or change          0 to 3600 s
//	wait                         0 to 3600 s
//	share served within the wait 0 to 0.999
//	rush of the first half hour  0 to 2
//	taps                         0 to 10000
//	taps kept busy               0 to 9000
//	packing of the ice           0.3 to 0.9
//	weight on the scale          0 to 1500 kg
//	final gravity                0.98 to 1.2
//	charge of the cylinder       0.1 to 100 kg
//	tare of the cylinder         0.1 to 200 kg
//	gas for each keg             0 to 10 kg
//	alcohol by volume            0 to 0.2
//
// # Sources
//
//	[1]  NIST SP 811 (2008), appendix B; NIST Handbook 44, appendix C: units.
//	[2]  Weights and Measures (Intoxicating Liquor) Order 1988: UK glasses, as
//	     read in a secondary source.
//	[3]  DIN 6647-1: kegs to 0.3 MPa and 50 L (scope).
//	[4]  N. L. Johnson, A. W. Kemp, S. Kotz, Univariate Discrete Distributions,
//	     3rd ed. (2005), chapter 5: the negative binomial; from memory.
//	[5]  A. R. DiDonato, A. H. Morris, ACM Trans. Math. Software 18 (1992) 360:
//	     the incomplete beta function.
//	[6]  C. Loader, Fast and Accurate Computation of Binomial Probabilities (2000).
//	[7]  R. Bronson, Operations Research (Schaum, 1982), chapters 23 and 24.
//	[8]  J. F. C. Kingman, Math. Proc. Cambridge Phil. Soc. 57 (1961) 902: the wait
//	     for servings that vary less.
//	[9]  T. R. Waters, V. Putz-Anderson, A. Garg, Applications Manual for the
//	     Revised NIOSH Lifting Equation, DHHS (NIOSH) 94-110 (1994); from memory.
//	[10] OIML R 22 (1975): ethanol and water at 20 °C.
//	[11] The Practical Brewer (Master Brewers Association, 1946 and 1977): light,
//	     as quoted in secondary sources.
//	[12] F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer,
//	     table A.1: steel.
//
// Common practice, no source: keg sizes, head and foam, drinks an hour, share of
// beer drinkers, cylinder weights.
package volume
