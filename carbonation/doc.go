// Package carbonation answers questions about gas in beer: how much carbon
// dioxide beer holds at a temperature and pressure, what a closed growler does
// in the sun, how a blend with nitrogen is set, what a hand pump does to a keg,
// how much gas to bring, how fast a leak empties it and what it does to the air
// of a room, and how slowly a keg at rest carbonates.
//
// # Conventions
//
// A [Pressure] is absolute, above vacuum; a [Gauge] is what a gauge reads
// against the air around it. They are different types, and the air pressure is
// the only way from one to the other: a keg that needs 11 psi by the sea needs
// 13 psi at 4000 ft for the same content. [AirAt] gives the air by elevation,
// [Pressure.StationAt] by a weather report.
//
// A [Content] is dissolved gas. One volume is 1.9768 g of CO2 per litre: a litre
// of the real gas at 0 °C and 101.325 kPa. The ideal gas would be 1.9635 g, the
// trade's round figure is 2 g; texts that mix them are 0.7 % to 1.2 % apart.
//
// Everything is the state at rest. Content follows a regulator in a week or
// more, not in an afternoon; [Equilibrium.After] says how far it gets. Losses
// are slower still. Motion makes either a matter of minutes.
//
// Parameter structs hold what stays the same, and zero means zero; usual values
// come from [DefaultDraught] and its methods Sealed, AirPump and Supply. Results
// hold the answer in their fields, the working in Steps, the uncertainty of the
// leading answer in Band, what can hurt someone in Cautions and what the answer
// rests on in Notes.
//
// # Nomenclature
//
//	T      temperature, K                 β   solubility in beer over that in water
//	p      pressure, Pa                   A   alcohol, % by mass
//	p_CO2  partial pressure of CO2        RE  real extract, °P
//	x      share of CO2 in the gas        V_L volume of liquid
//	c      content, g/L                   V_G volume of gas (headspace)
//	v      content, volumes               m   mass of CO2
//	K0     Henry coefficient, mol/(L atm) D   diffusivity, m²/s
//	B      second virial coefficient      h   depth of the beer, m
//	φ      fugacity coefficient           k   mass-transfer coefficient, m/s
//	kH     Henry's constant, Pa           ρ   density of CO2 gas, g/L
//
// # The law
//
//	c = β K0(T) φ M p_CO2 / 1 atm,   φ = exp(B p_CO2 / R T),   M = 44.0095 g/mol
//	β = 1 − (1 − β_chart)(0.0095 RE + 0.003 A)/(the same for 5 % ABV, FG 1.010)
//	β_chart = min(0.9368 + 0.00246 t/°C, 0.965)
//
// K0 and B are those of water [1]; β is exactly 1 for water and exactly that of
// the trade's chart [2] for ordinary beer, to which it is fitted.
//
// # Validity
//
// Bounds are inclusive; beyond them functions return a [*RangeError].
//
//	temperature                  -1.2 to 45 °C
//	CO2 pressure                 0 to 1000 kPa abs
//	content                      0 to 20 volumes
//	absolute pressure            0 to 1000 kPa abs
//	gauge pressure               -101.325 to 898.675 kPa
//	gauge pressure on a keg      0 to 898.675 kPa
//	air pressure                 45 to 110 kPa abs
//	sea-level pressure           87 to 110 kPa abs
//	elevation                    -500 to 6000 m
//	CO2 share                    0 to 1
//	later temperature            -1.2 to 80 °C
//	CO2 pressure in the vessel   0 to 2000 kPa abs
//	headspace                    0.001 to 0.99
//	air share                    0 to 1
//	loss at filling              0 to 0.9
//	openings                     0 to 50
//	rating                       0 to 2000 kPa
//	regulator                    0 to 898.675 kPa
//	temperature under air        0 to 40 °C
//	full                         0.02 to 0.98
//	glass                        0.01 to 5 L
//	pump stroke                  0.01 to 5 L
//	keg                          0.1 to 1000 L
//	keg diameter                 0.03 to 2 m
//	time                         0 to 1000 days
//	kegs                         1 to 10000
//	purges                       0 to 100
//	cylinder charge              0.005 to 100 kg
//	filling ratio                0.5 to 0.8
//	cylinder temperature         -30 to 70 °C
//	gas volume                   0.01 to 1000 L
//	fall of the gauge            0 to 898.675 kPa
//	time of the test             1 to 8.64e+07 s
//	room                         0.5 to 1e+06 m³
//	temperature at rest          -1.2 to 40 °C
//	depth                        0.02 to 2 m
//	reach                        0 to 0.999
//	wine temperature             0 to 30 °C
//	wine alcohol                 0 to 0.2
//	wine sugar                   0 to 150 g/L
//
// # Where physics and charts differ
//
// Pure water holds 5.7 % more than the chart of [2] on average, which is 1.2 to
// 1.7 psi at serving pressure. The law above agrees with the chart's 148 cells
// in testdata within 0.013 volumes (root mean square) and 0.035 at worst. The
// chart itself is uneven by 0.02 volumes, and the composition of its beer is
// not known.
//
// The metric tables of the European trade rest on an equation of MEBAK [14] and
// ask for 0.02 to 0.04 bar less than the law at 5 g/L.
//
// The guideline for gases in water up to the critical point [13] is 4.9 % low
// for CO2 at 0 °C and serves here for nitrogen and oxygen alone. Bunsen's
// figures of 1855, still met in old tables, are 5 % high near 0 °C.
//
// A solution of 10 % sucrose holds 0.913 of what water does at 20 °C. The law
// gives 0.909 at 5 °C but 0.94 at 20 °C, since the charts of beer close up on
// water as it warms: 5 % is stated for sweet and strong liquids.
//
// The EU's formula for wine [4] holds a tenth less than the charts do for a
// liquid of the same alcohol and extract. [Wine] is therefore a liquid of its
// own and shares no factor with beer.
//
// Blends follow absolute pressure. The trade's table at 38 °F leaves fugacity
// out and is up to 2.5 % high at 40 psi.
//
// Practice counts half a pound of CO2 for a half barrel at 12 to 14 psi; the sum
// is a tenth less, the rest is leaks and blow-off.
//
// # Sources
//
//	[1]  R. F. Weiss, Marine Chemistry 2 (1974) 203: CO2 in water, −1 to 40 °C.
//	[2]  D. Miller, BrewingTechniques 2(1), 1994, table I: the trade's chart,
//	     which goes back to ASBC Methods of Analysis, Beer-13.
//	[3]  Brewers Association, Draught Beer Quality Manual, appendix C: blends.
//	[4]  Commission Regulation (EEC) No 2676/90: CO2 in wine.
//	[5]  Carroll, Slupsky & Mather, J. Phys. Chem. Ref. Data 20 (1991) 1201.
//	[6]  Span & Wagner, J. Phys. Chem. Ref. Data 25 (1996) 1509: CO2 itself.
//	[7]  Liger-Belair et al., Scientific Reports 7 (2017) 10938: bottle pressures.
//	[8]  J. Crank, The Mathematics of Diffusion, 2nd ed. (1975).
//	[9]  APHA, Standard Methods for the Examination of Water and Wastewater
//	     (1985), after Benson & Krause: oxygen in water; table of EN 25814.
//	[10] Lloyd & Moran, J. Heat Transfer 96 (1974) 443: free convection.
//	[11] 49 CFR 173.304a; UN Model Regulations, packing instruction P200: the
//	     filling of CO2 cylinders.
//	[12] ICAO Doc 7488, Manual of the ICAO Standard Atmosphere.
//	[13] IAPWS G7-04: Henry's constants of gases in water.
//	[14] MEBAK, Brautechnische Analysenmethoden: CO2, oxygen in packaging.
//	[15] OSHA 29 CFR 1910.1000 table Z-1, ACGIH threshold limit values, NIOSH
//	     (1996): CO2 in the air that people breathe.
//
// Equation numbers of [1], [6] and [8] are from memory; each equation itself is
// checked by the values in testdata.
package carbonation
