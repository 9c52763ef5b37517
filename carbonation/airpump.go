package carbonation

import (
	"cmp"
	"math"
	"time"

	"example.com/pourwell/internal/solve"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// AirPump is a keg served by a hand pump that pushes with air.
type AirPump struct {
	Beer        thermal.Beer
	Air         Pressure // around the keg
	Keg         volume.Vessel
	Temperature thermal.Temperature
	Content     Content     // of the beer when tapped
	Gauge       Gauge       // to which it is pumped
	Full        float64     // share of the keg that is beer
	Glass       unit.Volume // beer drawn for each
	Stroke      unit.Volume // air that one stroke of the pump takes in
	Carried     bool        // the beer is stirred: carried about, tapped often; still otherwise
}

// AirPump returns a half-empty keg of content c at temperature t under a hand
// pump with usual values: 10 psi, a glass of 16 US fl oz, a stroke of 0.3 L
// (from memory), the beer still.
func (d Draught) AirPump(keg volume.Vessel, t thermal.Temperature, c Content) AirPump {
	return AirPump{
		Beer: d.Beer, Air: d.Air, Keg: keg, Temperature: t, Content: c,
		Gauge: PSIG(10), Full: 0.5, Glass: 16 * volume.USFluidOunce, Stroke: 0.3 * volume.Litre,
	}
}

// Levels of dissolved oxygen. Source: good plants stay below 0.1 mg/L at the
// filler and 0.3 mg/L in the package, MEBAK, method B-420.32.100.
const staleOxygen = 0.3 // mg/L

// stirred is the mass-transfer coefficient of gently moved beer, m/s: our
// estimate, no source; a keg at rest is ten times slower in its first hours.
const stirred = 2e-6

// oxygenInAir is the share of oxygen in dry air. From memory, as in most
// handbooks.
const oxygenInAir = 0.20946

// oxygenSaturation returns the oxygen that fresh water holds under moist air at
// 1 atm, mg/L. Valid from 0 to 40 °C. Source: [9] APHA, Standard Methods for
// the Examination of Water and Wastewater (1985), after Benson & Krause; it
// agrees with the table of EN 25814 within 0.06 mg/L.
func oxygenSaturation(kelvin float64) float64 {
	x := 1 / kelvin
	return math.Exp(-139.34410 + x*(1.575701e5+x*(-6.642308e7+x*(1.243800e10-x*8.621949e11))))
}

// After returns the state of the keg when air has stood above the beer for some
// time, kept at the pressure of the pump.
//
//	oxygen, still:    c = c_s F(D t/h²)                       (diffusion into a layer closed below)
//	oxygen, carried:  c = c_s (1 − exp(−k t/h)), k = 2e-6 m/s  (our estimate)
//	sag:              Δp = p v / (V_G + v)                    (isothermal)
//	CO2 left:         c0 V_L = c V_L + ρ V_G                  (at rest in the end, no CO2 in the pumped air)
//
// The oxygen saturation c_s is that under nothing but air at the pressure of
// the pump: the worst case, since CO2 from the beer takes part of the headspace.
// Beer that consumes its oxygen as it stales shows less on a meter.
//
// Valid from 0 °C to 40 °C and from 2 % to 98 % full; outside the ranges of
// [Limits] or for an invalid argument After returns a [*RangeError] and a
// Pumped of NaN.
//
// Source: [8] for diffusion, [9] for saturation; balance of matter. Common
// practice, no source: drink such a keg within 8 to 12 hours.
func (a AirPump) After(elapsed time.Duration) (Pumped, error) {
	const fn = "carbonation.AirPump.After"
	if err := cmp.Or(a.check(fn), limitTime.Check(fn, elapsed.Hours()/24)); err != nil {
		return noPumped(), err
	}
	kelvin := a.Temperature.Kelvin()
	p := Pumped{pump: a, elapsed: elapsed, law: lawAt(kelvin, strength(a.Beer)), diffusivity: oxygenDiffusivity(kelvin)}
	absolute := a.Gauge.above + a.Air.pascal
	p.capacity = float64(a.Keg.Capacity)
	p.depth = a.Full * p.capacity / (math.Pi / 4 * float64(a.Keg.Diameter*a.Keg.Diameter))
	p.gas = (1 - a.Full) * p.capacity

	p.OxygenSaturation = oxygenSaturation(kelvin) * absolute / atmosphere
	p.Oxygen = p.OxygenSaturation * p.way(elapsed.Seconds())
	p.Stale = time.Duration(math.Min(p.timeTo(staleOxygen/p.OxygenSaturation)*float64(time.Second), math.MaxInt64)) // 292 years stand for longer

	glass := float64(a.Glass)
	p.Sag = unit.Pressure(absolute * glass / (p.gas + glass))
	p.Strokes = absolute * glass / (a.Air.pascal * float64(a.Stroke))

	liquid := a.Full * p.capacity
	excess := func(pascal float64) float64 {
		return p.law.content(pascal)*liquid + gasDensity(kelvin, pascal)*p.gas - a.Content.gramsPerLitre*liquid
	}
	balance, err := p.law.hold(fn, a.Content)
	if err != nil {
		return noPumped(), err
	}
	left, _ := solve.Root(excess, 0, balance.pascal, 1e-6)
	p.Content = Content{p.law.content(left), true}
	p.Balance = balance.Gauge(a.Air)
	p.Foams = absolute-float64(p.Sag) < balance.pascal
	p.left = left
	return p, nil
}

// way returns the share of saturation reached after so many seconds.
func (p Pumped) way(seconds float64) float64 {
	if p.pump.Carried {
		return -math.Expm1(-stirred * seconds / p.depth)
	}
	return slabUptake(p.diffusivity * seconds / (p.depth * p.depth))
}

// timeTo returns the seconds until a share of saturation is reached.
func (p Pumped) timeTo(share float64) float64 {
	if p.pump.Carried {
		return -math.Log1p(-share) * p.depth / stirred
	}
	return slabTime(share) * p.depth * p.depth / p.diffusivity
}

func (a AirPump) check(fn string) error {
	return cmp.Or(
		limitAir.Check(fn, a.Air.KPa()),
		limitKeg.Check(fn, float64(a.Keg.Capacity/volume.Litre)),
		limitDiameter.Check(fn, float64(a.Keg.Diameter)),
		limitAired.Check(fn, a.Temperature.Celsius()),
		limitContent.Check(fn, a.Content.Volumes()),
		checkGauge(fn, &limitPush, a.Gauge, a.Air),
		limitFull.Check(fn, a.Full),
		limitGlass.Check(fn, float64(a.Glass/volume.Litre)),
		limitStroke.Check(fn, float64(a.Stroke/volume.Litre)),
	)
}

func noPumped() Pumped {
	nan := math.NaN()
	return Pumped{Oxygen: nan, OxygenSaturation: nan, Sag: unit.Pressure(nan), Strokes: nan}
}
