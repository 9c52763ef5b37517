package thermal

import (
	"cmp"
	"slices"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// An IceBath is a tub in which kegs of one kind stand in ice and water, or in
// ice alone. [DefaultIceBath] gives an ordinary one.
type IceBath struct {
	Tub          volume.Tub
	Wall         unit.Length  // thickness of the tub's wall
	Conductivity Conductivity // of the wall
	Lid          bool         // or a thick blanket over tub and kegs
	UA           Conductance  // of the box, measured; 0 leaves it to wall and lid

	Kegs   int
	Vessel volume.Vessel
	Beer   Beer
	Fill   float64     // share of each keg's capacity that holds beer, above 0 to 1
	From   Temperature // of the beer at the start

	Ice       unit.Mass
	IceFrom   Temperature // of the ice at the start, 0 °C or below
	Water     unit.Volume
	WaterFrom Temperature
	Salt      float64 // share by mass of the water at the start, 0 to 0.2
	Drained   bool    // melt water runs off, and Water must be 0
	Stirred   bool    // by hand every few minutes, or by a pump: 0.05 m/s past the kegs

	Around Surroundings
	Pours  []Pour
	TopUps []TopUp
}

// DefaultIceBath returns one full keg of ordinary beer in an open plastic tub
// of 80 L and 45 cm with a wall of 5 mm, on 18 kg (40 lb) of melting ice and
// 15 L of water at 15 °C.
func DefaultIceBath(v volume.Vessel, from Temperature, around Surroundings) IceBath {
	return IceBath{
		Tub:  volume.Tub{Capacity: 80 * volume.Litre, Height: 0.45},
		Wall: 5 * volume.Millimetre, Conductivity: SolidPlastic,
		Kegs: 1, Vessel: v, Fill: 1, From: from,
		Ice: 18, IceFrom: Celsius(0), Water: 15 * volume.Litre, WaterFrom: Celsius(15),
		Around: around,
	}
}

// Dry returns the same bath with its water let off: kegs in ice alone, whose
// melt water drains.
func (b IceBath) Dry() IceBath {
	b.Drained, b.Water, b.Salt = true, 0, 0
	return b
}

// Reach returns how long the beer at the bottom of the kegs takes to have the
// temperature to, and how tub and ice stand then. A to below From asks how long
// they take to cool; one above it, when they will have warmed to it: as a rule
// after the ice is gone. The first moment counts, also where a bath that is
// warmer than the beer passes to before the ice turns it.
//
// The beer is two bodies, below and above the surface of the bath; the bath is
// one, beside the kegs; the ice passes heat only as fast as water carries it:
//
//	C₁ dT₁/dt = U A (T_w − T₁) + G (T₂ − T₁)
//	C₂ dT₂/dt = q_air − G (T₂ − T₁)
//	dH_w/dt   = q_tub + n U A (T₁ − T_w) − L dm/dt
//	L dm/dt   = h_i a m₀^⅓ m^⅔ (T_w − T_d)
//
// U joins the convection of beer and of water at the keg's wall; G is small
// while the upper beer is lighter and large when it is heavier. T_d is the
// temperature down to which ice can draw the water beside the kegs: its melting
// point where ice reaches to the floor or the bath is stirred, up to the
// temperature of greatest density (4 °C) where ice only floats on top.
//
// Valid for the rows of [Limits]; outside them it returns a [*RangeError], and
// [ErrNoSolution] if the bath runs over the tub or the pours take more than the
// kegs hold. A to below the beer's freezing point is a RangeError. If the beer
// never gets there, Reach returns [ErrNever] with the temperature it gets to.
//
// Expect 35 % on the time, a factor of 2 on ice without water; see Band.
//
// Source: films [1] to [4] of the package; the coefficient of the ice is ours,
// fitted to two series of bottles in iced water (testdata/bottles_in_ice.csv).
func (b IceBath) Reach(to Temperature) (Chilling, error) {
	const fn = "thermal.IceBath.Reach"
	if err := cmp.Or(b.check(fn), b.Beer.checkLiquid(fn, "target temperature", to)); err != nil {
		return invalidChilling(), err
	}
	m, err := newBathModel(b.own(), fn)
	if err != nil {
		return invalidChilling(), err
	}
	if !m.runTo(to.Celsius()) {
		return invalidChilling(), never(fn, "comes no nearer than", to.Celsius(), m.extreme)
	}
	c := m.chilling()
	c.Temperature, c.timeAsks = to, true
	return m.finish(fn, c)
}

// After returns the temperature of the beer after d, from 0 to 30 days, and
// how tub and ice stand then. Model, ranges and errors are those of
// [IceBath.Reach]; beer that freezes on the way is a [*RangeError].
func (b IceBath) After(d time.Duration) (Chilling, error) {
	const fn = "thermal.IceBath.After"
	if err := cmp.Or(b.check(fn), limitDuration.Check(fn, d.Hours())); err != nil {
		return invalidChilling(), err
	}
	m, err := newBathModel(b.own(), fn)
	if err != nil {
		return invalidChilling(), err
	}
	m.runFor(d.Seconds())
	return m.finish(fn, m.chilling())
}

// own returns b with lists of its own, so that a result does not change with
// those of the caller.
func (b IceBath) own() IceBath {
	b.Pours, b.TopUps = slices.Clone(b.Pours), slices.Clone(b.TopUps)
	return b
}

// check returns a [*RangeError] in the name of fn if a field lies outside its
// range. Whether tub, kegs and bath fit each other is checked as they are put
// together.
func (b IceBath) check(fn string) error {
	return cmp.Or(
		b.Around.check(fn),
		checkVessel(fn, b.Vessel),
		limitBathAir.Check(fn, b.Around.Air.Celsius()),
		limitBathKegs.Check(fn, float64(b.Kegs)),
		limitFill.Check(fn, b.Fill),
		limitIce.Check(fn, float64(b.Ice)),
		limitWater.Check(fn, float64(b.Water/volume.Litre)),
		limitIceFrom.Check(fn, b.IceFrom.Celsius()),
		limitWaterFrom.Check(fn, b.WaterFrom.Celsius()),
		limitSalt.Check(fn, b.Salt),
		limitWall.Check(fn, float64(b.Wall)),
		limitConductivity.Check(fn, float64(b.Conductivity)),
		limitUA.Check(fn, float64(b.UA)),
		limitBathMass.Check(fn, float64(b.Ice)+float64(b.Water/volume.Litre)),
		b.checkDrain(fn),
		b.checkSchedule(fn),
		b.Beer.checkLiquid(fn, "temperature of this beer", b.From),
	)
}

// checkDrain refuses water in a tub whose water runs off.
func (b IceBath) checkDrain(fn string) error {
	if !b.Drained || !(b.Water > 0) {
		return nil
	}
	return &RangeError{
		Func: fn, Name: "water in a drained tub", Value: float64(b.Water / volume.Litre), Suffix: "l",
		Source: "melt water runs off, so there can be none",
	}
}
