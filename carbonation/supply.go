package carbonation

import (
	"cmp"
	"math"

	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// Supply is the CO2 of an event: kegs to push and cylinders to push them with.
type Supply struct {
	Beer        thermal.Beer
	Air         Pressure            // around kegs and cylinder
	Keg         unit.Volume         // capacity of each
	Kegs        int                 // emptied with this gas
	Gauge       Gauge               // kept on the kegs
	Temperature thermal.Temperature // of the kegs and their gas
	Headspace   float64             // share of a fresh keg that is gas
	Purges      int                 // times that headspace is filled to the gauge and let out
	From        Content             // of beer still to be carbonated or topped up; invalid for beer that comes carbonated

	Charge              unit.Mass           // CO2 in one full cylinder
	Filling             float64             // that charge over the water capacity of the cylinder, kg/L
	CylinderTemperature thermal.Temperature // of the cylinder
}

// Supply returns one keg emptied at temperature t under gauge pressure g with
// usual values: 4 % of headspace purged once, beer that comes carbonated, a 5
// lb cylinder filled to 0.68 kg/L, standing at 20 °C.
//
// Source of the filling ratio: [11] 49 CFR 173.304a for cylinders of 1800 psi.
func (d Draught) Supply(keg unit.Volume, t thermal.Temperature, g Gauge) Supply {
	return Supply{
		Beer: d.Beer, Air: d.Air, Keg: keg, Kegs: 1, Gauge: g, Temperature: t, Headspace: 0.04, Purges: 1,
		Charge: 5 * volume.Pound, Filling: 0.68, CylinderTemperature: thermal.Celsius(20),
	}
}

// GasNeed is the CO2 that an event takes: the answer of [Supply.Plan].
type GasNeed struct {
	Total     unit.Mass // for all kegs
	PerKeg    unit.Mass
	Push      unit.Mass // of it, for each keg: what fills the emptied keg
	Purge     unit.Mass // of it, for each keg: what is let out
	Carbonate unit.Mass // of it, for each keg: what dissolves; 0 for beer that comes carbonated

	KegsPerCylinder float64 // not rounded
	Cylinders       int     // full ones to bring, no reserve

	Cylinder   Gauge               // what the cylinder's gauge reads while there is liquid
	LiquidFull thermal.Temperature // where the liquid fills the cylinder and its pressure climbs
	NoVapour   bool                // the cylinder is above that temperature
	HotCar     Gauge               // in a car at 65 °C
	DiscBursts bool                // the relief disc may let the whole charge go there

	supply      Supply
	usable      float64 // kg of one cylinder
	density     float64 // kg/m³ of the gas in the emptied keg
	equilibrium Equilibrium
}

// Plan returns the CO2 that the kegs take and what the cylinder does.
//
//	push       = V ρ(p_g + p_air, T)                   ρ = p M / (Z R T)
//	purge      = n V headspace (ρ(p) − ρ(p_air))
//	carbonate  = V (c at T and p_g − c from)           0 if the beer holds as much
//
// The cylinder is empty for its purpose when its pressure has fallen to that of
// the kegs. Leaks are not in it: bring a spare.
//
// Outside the ranges of [Limits] or for an invalid argument Plan returns a
// [*RangeError] and a GasNeed of NaN.
//
// Source: the virial equation with B of [1]; [6] for the cylinder. Common
// practice, no source: about 0.5 lb for a half barrel, which is this sum with
// a tenth more for leaks.
func (s Supply) Plan() (GasNeed, error) {
	const fn = "carbonation.Supply.Plan"
	if err := s.check(fn); err != nil {
		return noGasNeed(), err
	}
	kelvin, absolute := s.Temperature.Kelvin(), s.Gauge.above+s.Air.pascal
	n := GasNeed{supply: s, density: gasDensity(kelvin, absolute)}
	n.Push = unit.Mass(float64(s.Keg) * n.density)
	n.Purge = unit.Mass(float64(s.Purges) * s.Headspace * float64(s.Keg) * (n.density - gasDensity(kelvin, s.Air.pascal)))
	if s.From.valid {
		d := Draught{Beer: s.Beer, Air: s.Air, CO2Share: 1}
		e, err := d.SolveContent(s.Temperature, s.Gauge)
		if err != nil {
			return noGasNeed(), err
		}
		n.equilibrium = e
		n.Carbonate = unit.Mass(float64(s.Keg) * max(0, e.Content.gramsPerLitre-s.From.gramsPerLitre)) // g/L is kg/m³
	}
	n.PerKeg = n.Push + n.Purge + n.Carbonate
	n.Total = unit.Mass(s.Kegs) * n.PerKeg

	n.usable = s.usable()
	n.KegsPerCylinder = n.usable / float64(n.PerKeg)
	n.Cylinders = int(math.Ceil(float64(n.Total) / n.usable * (1 - 1e-12)))

	filled := 1e3 * s.Filling
	full := liquidFull(filled)
	at := func(kelvin float64) Gauge {
		return Gauge{cylinderPressure(kelvin, filled, full) - s.Air.pascal, true}
	}
	n.LiquidFull = thermal.Kelvin(full)
	n.Cylinder, n.HotCar = at(s.CylinderTemperature.Kelvin()), at(hotCar+iceKelvin)
	n.NoVapour = s.CylinderTemperature.Kelvin() > full
	const sure = 0.9 // our pressure and the disc's are each good to 5 %
	n.DiscBursts = n.HotCar.above > sure*float64(discBursts)
	return n, nil
}

func (s Supply) check(fn string) error {
	err := cmp.Or(
		limitAir.Check(fn, s.Air.KPa()),
		limitKeg.Check(fn, float64(s.Keg/volume.Litre)),
		limitKegs.Check(fn, float64(s.Kegs)),
		limitHeadspace.Check(fn, s.Headspace),
		limitPurges.Check(fn, float64(s.Purges)),
	)
	if err == nil && s.From.valid {
		err = limitContent.Check(fn, s.From.Volumes())
	}
	return cmp.Or(err, s.checkGas(fn))
}

// checkGas reports what is wrong with pressure, temperature and cylinder.
func (s Supply) checkGas(fn string) error {
	return cmp.Or(
		limitAir.Check(fn, s.Air.KPa()),
		limitTemperature.Check(fn, s.Temperature.Celsius()),
		checkGauge(fn, &limitPush, s.Gauge, s.Air),
		limitCharge.Check(fn, float64(s.Charge)),
		limitFilling.Check(fn, s.Filling),
		limitCylinderT.Check(fn, s.CylinderTemperature.Celsius()),
	)
}

// Steps returns the working: enough to redo the sum by hand.
func (n GasNeed) Steps() []volume.Step {
	s := n.supply
	kelvin := s.Temperature.Kelvin()
	steps := []volume.Step{
		{Name: "temperature of the kegs", Symbol: "T", Value: kelvin, Suffix: "k", Source: "given"},
		{Name: "absolute pressure", Symbol: "p", Value: s.Gauge.KPa() + s.Air.KPa(), Suffix: "kpa_abs", Source: "gauge + air"},
		{Name: "second virial coefficient", Symbol: "B", Value: 1e6 * virial(kelvin), Suffix: "cm3_per_mol", Source: "Weiss 1974 eq. 6"},
		{Name: "CO2 gas density", Symbol: "ρ", Value: n.density, Suffix: "g_per_l", Source: "ρ = p M/(Z R T), Z = 1 + B p/R T"},
		{Name: "push", Symbol: "m_push", Value: float64(n.Push), Suffix: "kg_per_keg", Source: "V ρ"},
		{Name: "purge", Symbol: "m_purge", Value: float64(n.Purge), Suffix: "kg_per_keg", Source: "n × headspace × V (ρ(p) − ρ(p_air))"},
	}
	if s.From.valid {
		steps = append(steps, n.equilibrium.Steps()...)
		steps = append(steps, volume.Step{Name: "carbonate", Symbol: "m_carb", Value: float64(n.Carbonate), Suffix: "kg_per_keg", Source: "V (c − c_from), at least 0"})
	}
	return append(steps,
		volume.Step{Name: "all kegs", Symbol: "m", Value: float64(n.Total), Suffix: "kg", Source: "kegs × (push + purge + carbonate)"},
		volume.Step{Name: "usable in a cylinder", Symbol: "m_cyl", Value: n.usable, Suffix: "kg", Source: "charge less the gas left at the pressure of the kegs"},
		volume.Step{Name: "vapour pressure", Symbol: "p_s", Value: (n.Cylinder.above + s.Air.pascal) / 1e3, Suffix: "kpa_abs", Source: "Span & Wagner 1996 eq. 3.13; beyond liquid-full the rise of Peng & Robinson"},
		volume.Step{Name: "liquid-full temperature", Symbol: "T_full", Value: n.LiquidFull.Kelvin(), Suffix: "k", Source: "liquid density = filling ratio, Span & Wagner 1996 eq. 3.14"},
	)
}

// Band returns the interval of the total: 1 % below, and 25 % above for leaks,
// blown-off gas and pressure raised for a while, our estimate.
func (n GasNeed) Band() volume.Band {
	return volume.Band{
		Name: "CO2", Suffix: "kg", Low: 0.99 * float64(n.Total), High: 1.25 * float64(n.Total),
		Source: "the sum is good to 1 %; a quarter more for leaks and blow-off, our estimate",
	}
}

func noGasNeed() GasNeed {
	nan := math.NaN()
	m := unit.Mass(nan)
	return GasNeed{Total: m, PerKeg: m, Push: m, Purge: m, Carbonate: m, KegsPerCylinder: nan}
}
