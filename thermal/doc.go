// Package thermal says how beer warms and how it is kept cold away from a fridge:
// a keg in the shade, in the sun, in a refrigerator or in a car; kegs in a tub of
// ice and water; a coil or a plate in an ice box; the line to the tap; the glass
// it is poured into; and what two readings of a thermometer tell about one's own
// keg or box.
//
// # How to use it
//
// A parameter struct holds what stays the same, its zero fields mean zero, and a
// constructor gives usual values to change: [DefaultKeg], [DefaultIceBath],
// [DefaultCoil], [DefaultPlate], [DefaultLine], [DefaultGlassful],
// [DefaultCalibration]. Its methods ask the question and return a result by
// value:
//
//	k := thermal.DefaultKeg(vessel, thermal.Fahrenheit(38), thermal.Shade(thermal.Celsius(30)))
//	w, err := k.Reach(thermal.Fahrenheit(48)) // how long
//	w, err = k.After(2 * time.Hour)           // how warm
//
// A result has its answers in its fields, the working in Steps, the uncertainty
// of the leading answer in Band and, where time passes, the whole of it in
// Course. Cautions say what can hurt someone, Notes what the answer rests on.
// [Surroundings] are the air around everything; [Shade], [ClearSky] and
// [Surroundings.InClosedCar] make them. [Beer] is the liquid: its zero value is ordinary beer,
// [Water] is water, [BeerOf] makes others.
//
// A [Temperature] is a point on the scale and has no default scale, so that 38
// cannot be mistaken; a [Difference] is in kelvin. Lengths, volumes, masses and
// powers are those of gonum.org/v1/gonum/unit in SI units.
//
// # What decides
//
// Outside a keg in still air convection passes 4 W/(m² K), radiation 1 from clean
// steel and 5 from paint, and dew as much again: the humidity of the day counts
// for as much as its heat, and a wet or painted keg warms almost twice as fast as
// a dry, clean one. In ice water the same keg passes ten times as much, as long
// as the water reaches it. Beer above the water stays where it was, on top of the
// cold, and is poured last.
//
// Water is densest at 4 °C. A still bath under floating ice therefore stops
// cooling near 4 °C at the bottom, and beer between 2 and 8 °C hardly convects:
// the last degrees take as long as all before them. Ice that reaches to the floor
// of the tub, or a hand that stirs, brings the bath towards 0 °C. Twice the mean
// density difference over a film stands here for its buoyancy, so that it does
// not vanish where wall and bulk straddle 4 °C.
//
// Ice counts its latent heat, 333.43 kJ/kg: a litre of beer cooled by 17 K melts
// 0.21 kg. Heat and ice are carried as sums that close to rounding, whatever the
// step.
//
// # Nomenclature
//
//	T    temperature, °C or K        U    heat per area and kelvin, W/(m² K)
//	C    heat capacity, J/K          UA   heat per kelvin, W/K
//	c    specific heat, J/(kg K)     q    heat flow, W or W/m²
//	ρ    density, kg/m³              h    film coefficient, W/(m² K)
//	μ    dynamic viscosity, Pa s     λ    conductivity, W/(m K)
//	ν    kinematic viscosity, m²/s   ε    emissivity; effectiveness of a coil
//	α    absorbed share of sunshine  L    latent heat, J/kg; length, m
//	B    relative density difference w    water in air, kg/kg; alcohol, kg/kg
//	Ra   g B L³ Pr/ν²                E    real extract, kg/kg
//	Nu   h L/λ                       Pr   μ c/λ
//	Re   u d/ν                       NTU  UA over flow times specific heat
//
// # Validity
//
// Bounds are inclusive; beyond them functions return a [*RangeError]. Heights are
// those of package carbonation.
//
//	alcohol by volume                      0 to 0.2
//	final gravity                          0.98 to 1.179
//	original gravity                       1 to 1.289
//	real extract                           -0.05 to 40 % w/w
//	beer temperature                       -5 to 40 °C
//	air temperature                        -20 to 60 °C
//	relative humidity                      0 to 1
//	pressure altitude                      -500 to 6000 m
//	sun                                    0 to 1200 W/m²
//	wind                                   0 to 20 m/s
//	latitude                               -90 to 90 °
//	day of the year                        1 to 366
//	hour by the sun                        0 to 24 h
//	keg                                    0.1 to 200 L
//	keg diameter                           0.04 to 0.8 m
//	keg height                             0.05 to 1.5 m
//	tare                                   0 to 100 kg
//	fill                                   0.01 to 1
//	jacket                                 0 to 0.1 m
//	measured UA                            0 to 1000 W/K
//	surface                                0 to 1
//	time                                   0 to 720 h
//	air temperature around a bath          0 to 60 °C
//	kegs in a tub                          1 to 50
//	ice                                    0 to 5000 kg
//	water                                  0 to 5000 L
//	ice temperature                        -25 to 0 °C
//	water temperature                      0 to 40 °C
//	salt in the water                      0 to 0.2
//	tub wall                               0 to 0.3 m
//	wall conductivity                      0.01 to 400 W/(m K)
//	ice and water together                 0.1 to 10000 kg
//	volume of a pour                       0 to 10000 L
//	bag of ice                             0.1 to 1000 kg
//	reserve of ice                         0 to 0.9
//	tube length                            0.1 to 200 m
//	bore                                   2 to 25 mm
//	tube wall                              0.1 to 10 mm
//	conductivity of the tube               0.02 to 500 W/(m K)
//	winding                                0.014 to 12.5 m
//	bore over winding                      0.002 to 0.14
//	bath temperature                       -5 to 40 °C
//	film coefficient                       20 to 20000 W/(m² K)
//	band of the film coefficient           0 to 0.9
//	flow                                   0.01 to 40 L/min
//	Reynolds number                        0 to 100000
//	beer in the glass                      0.02 to 20 L
//	time from glass to glass               0 to 86400 s
//	number of glasses                      1 to 10000
//	size of the plate                      0.05 to 1.5 m
//	mass of the plate                      0.5 to 100 kg
//	contact share                          0 to 1
//	beer temperature at a plate            0 to 40 °C
//	ice on the plate                       0.5 to 500 kg
//	insulation                             0 to 200 mm
//	absorbed share of sunshine             0 to 1
//	standing time                          0 to 168 h
//	mass of the glass                      0 to 5 kg
//	bore of the glass                      20 to 300 mm
//	fill of the glass                      0 to 1
//	wait                                   0 to 24 h
//	number of readings                     2 to 100000
//	time between first and last            60 to 2.592e+06 s
//	distance of a reading from the air     0.5 to 60 K
//	content                                0.1 to 1000 L
//	mass of metal                          0 to 200 kg
//	error of the thermometer               0.001 to 5 K
//	melted ice                             0.1 to 500 kg
//	air around the ice                     5 to 60 °C
//	UA of a box                            0 to 1000 W/K
//
// # How sure it is
//
// Fluid properties add less than 3 %. The films scatter: ±20 % for a dry keg in
// still air, ±35 % where dew or a wind that nobody measured rule, ±25 % in a
// refrigerator, ±35 % in ice water and ±50 % near 4 °C, a factor of 2 for ice
// without water. One's own measured UA (see [Calibration]) narrows any of them.
//
// Where practice has a figure, it is: a 5 gallon keg gains 10 °F in about 2 h in
// dry shade at 30 °C and takes some 16 h back in still refrigerator air of 0 to
// 1 °C. The model says 2.5 h and 15 to 20 h. The figure is silent about humidity;
// on an ordinary day the 2 h are 1¼ h.
//
// What is judged and not measured is marked so beside its number: the gas space
// (15 W/(m² K)), half of the bottom inside the foot ring, the emissivity of
// sweating steel, ground and lid of a tub, and that ice alone passes 75 W/(m² K).
//
// # Sources
//
//	[1]  Churchill & Chu, Int. J. Heat Mass Transfer 18 (1975) 1323 and 1049:
//	     natural convection at plates and horizontal cylinders.
//	[2]  McAdams, Heat Transmission (1954): level faces.
//	[3]  Churchill & Bernstein, J. Heat Transfer 99 (1977) 300, and Pohlhausen's
//	     flat face: wind; joined to [1] and [2] by Churchill, AIChE J. 23 (1977) 10.
//	[4]  Bergman, Lavine, Incropera & DeWitt, Fundamentals of Heat and Mass
//	     Transfer: radiation, heat and mass by analogy, properties of solids.
//	[5]  Gebhart & Mollendorf, Deep-Sea Research 24 (1977) 831: density of water
//	     near its maximum.
//	[6]  IAPWS SR6-08(2011) and R10-06(2009): liquid water and ice.
//	[7]  OIML R 22 (1975): density of ethanol and water.
//	[8]  Bingham & Jackson, Bull. Bur. Standards 14 (1918) 59: their viscosity.
//	[9]  ASHRAE Handbook, Fundamentals, chapter 1: humid air.
//	[10] Haurwitz, J. Meteorology 2 (1945) 154; Meinel & Meinel, Applied Solar
//	     Energy (1976); Cooper, Solar Energy 12 (1969) 333: the sun.
//	[11] Lange's Handbook of Chemistry, 15th ed., table 5.13: freezing of brine.
//	[12] DIN EN 12524:2000: conductivity of plastics, foams and glass.
//	[13] VDI Heat Atlas, section Gc (Gnielinski), and Schmidt, Chem. Ing. Tech. 39
//	     (1967) 781: coils.
//	[14] McLaren, Null & Quinn, Pediatrics 116 (2005) e109: closed cars.
//	[15] Shawyer & Medina Pizzali, FAO Fisheries Technical Paper 436 (2003): melting
//	     of ice in boxes.
package thermal
