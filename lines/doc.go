// Package lines moves beer from the keg to the glass: how fast it flows, what
// pressure or how much tubing balances it, and why it foams on the way.
//
// # The pressure budget
//
// The gas presses on the beer with an applied pressure, read on a gauge. On the
// way to the tap that pressure is spent: part lifts the beer, the rest is lost
// to friction in the tubes, in fittings, and in coupler, shank and tap. The
// losses grow with the flow, nearly with its square, so the flow settles where
// nothing is left over:
//
//	p = ρ g h + Σ c f (L/d) ρV²/2 + Σ K ρV²/2 + Δp_hw (Q/Q_hw)²
//
// A line is balanced when that flow is one at which a glass fills without
// foaming, about 2 oz/s (3.5 L/min), at the pressure that keeps the beer's gas
// in it. [Run.Flow], [Run.Gauge] and [Run.Length] solve the same equation for
// its three unknowns. The friction of a turbulent tube grows as d^(−4.75): a
// bore 5 % smaller costs a fifth more pressure, which is why an outside diameter
// is not taken for a bore, and why one timed glass ([Run.Calibrate]) beats any
// table.
//
// # Two ways to balance
//
// The trade balances by a table of restriction, in psi per foot for each tube,
// and 0.5 psi per foot of rise. [Run.TradeGauge] and [Run.TradeLength] do that
// sum, by themselves: no number of the one way enters the other. They disagree,
// the table giving 1.5 to 2.5 times the friction of a smooth vinyl tube and 0.5
// to 0.8 times that of barrier or steel tubing. Two older tables agree with
// friction within 8 %.
//
// # Why it foams
//
// Beer foams where it holds more gas than the pressure around it can keep, and
// where bubbles find a place to begin. In the keg the two are in balance. On the
// way to the tap the pressure falls to nothing, so in every healthy line the
// beer is supersaturated near the tap; it passes in a fraction of a second, and
// nothing comes of it. Four things make it foam:
//
//   - The keg is too warm, or holds too much gas, for its pressure. The gas
//     leaves from the keg on ([Observation.Diagnose]).
//   - Beer stands in a warm line between glasses. Bare vinyl in 30 °C shade warms
//     by 2 K in half a minute. Gas trapped in a crevice of radius r lets go of
//     bubbles once the supersaturation exceeds 2γ/r; the temperature at which
//     that happens, and when the line gets there, is the number behind a first
//     glass of foam ([Run.Stand]).
//   - The flowing beer is exposed too much: too warm, or too long. The exposure is
//     supersaturation times time, set against that of the same run cold and
//     balanced ([Run.Profile]).
//   - The pour itself is too fast, throttled by a half-open tap, or falls into a
//     warm or dirty glass ([Observation.Diagnose]).
//
// A warm keg served through a coil in ice needs the pressure that its own
// temperature asks for, 30 psi at 20 °C and 44 psi at 30 °C for 2.5 volumes, and
// restriction to spend it; [Run.Warm] solves flow and temperature together.
//
// # Conventions
//
// A pressure applied is a gauge pressure; a loss is a difference. Rise counts
// from the surface of the beer in a full keg to the tap, up positive; as the keg
// empties the surface sinks, so full and empty kegs pour differently. Bores are
// inside diameters. Zero means none, and [DefaultRun] and [DefaultServing] give
// usual values. Fittings and hardware count at the tap, where most of them are.
// What a line does to beer at rest or in motion is the thermal package's, what
// gas the beer holds is carbonation's; this one adds the pressure.
//
// # Nomenclature
//
//	p      applied pressure, gauge          Pa
//	Q      flow of liquid                   m³/s
//	d      bore                             m
//	D      mean diameter of a winding       m
//	L      length of a tube                 m
//	e      height of the roughness          m
//	V      mean speed in a tube             m/s
//	h      rise                             m
//	ρ, μ   density, viscosity of the beer   kg/m³, Pa s
//	Re     Reynolds number, ρVd/μ
//	f      Darcy friction factor
//	K      loss coefficient of a fitting
//	c      calibration factor on friction
//	Δp_hw  hardware's loss at the flow Q_hw Pa
//	p_eq   pressure that holds the gas      Pa absolute
//	E      exposure                         Pa s
//	γ, r   surface tension, crevice radius  N/m, m
//
// # Validity
//
// A value outside these bounds, NaN or infinite, gives a [*RangeError] and a
// result of NaN. [Limits] returns the same table, with reasons. The air pressure
// has the range of carbonation; bath, insulation, surroundings and glass have
// those of thermal.
//
//	number of tubes            0 to 8
//	bore                       1 to 50 mm
//	outside diameter           1 to 90 mm
//	length                     0 to 300 m
//	wall                       0 to 20 mm
//	roughness over bore        0 to 0.05
//	coil diameter over bore    5 to 200
//	rise                       -30 to 30 m
//	keg height                 0 to 2 m
//	fullness                   0 to 1
//	loss coefficient           0 to 1000
//	hardware loss              0 to 500 kPa
//	flow of the hardware loss  0.01 to 60 L/min
//	rating                     0 to 10000 kPa
//	calibration factor         0.2 to 5
//	temperature                -1.2 to 40 °C
//	gauge pressure             -101 to 700 kPa
//	flow                       0 to 60 L/min
//	content                    0 to 6 volumes
//	crevice radius             0.5 to 100 µm
//	number of stations         2 to 2000
//	glass                      0.02 to 20 L
//	time for a glass           0.5 to 3600 s
//	time before the pour       0 to 1000 days
//
// # Sources
//
//	[1] S. W. Churchill, Chem. Eng. 84 (1977) no. 24, 91: straight tubes.
//	[2] C. M. White, Proc. R. Soc. London A 123 (1929) 645: laminar coils.
//	[3] H. Ito, J. Basic Eng. 81 (1959) 123: turbulent coils.
//	[4] Brewers Association, Draught Beer Quality Manual (2009): table of
//	    restriction, 0.5 psi per foot.
//	[5] B. J. McKeon et al., J. Fluid Mech. 511 (2004) 41: measured friction.
//	[6] S. F. Jones, G. M. Evans, K. P. Galvin, Adv. Colloid Interface Sci. 80
//	    (1999) 27: bubbles from crevices; from memory.
package lines
