package carbonation

import (
	"cmp"

	"example.com/pourwell/internal/solve"
	"example.com/pourwell/thermal"
)

// hotCar is the temperature of a car in the sun, from memory; dark cars and
// closed boots are hotter.
const hotCar = 65.0 // °C

// discBursts is the gauge pressure at which the relief disc of a CO2 cylinder
// lets its gas go: 2800 to 3000 psi, from memory.
const discBursts = 2800 * PSI

// liquidFull returns the temperature in kelvin at which the liquid of a
// cylinder filled to a density in kg/m³ has grown to fill it.
func liquidFull(density float64) float64 {
	kelvin, _ := solve.Root(func(k float64) float64 { return liquidDensity(k) - density }, 220, criticalT, 1e-6)
	return kelvin
}

// cylinderPressure returns the absolute pressure, Pa, in a full cylinder: that
// of the vapour while there is liquid and vapour, and from the liquid-full
// temperature on as much more as the equation of Peng & Robinson rises at
// constant density. It is within 5 % of the test pressures for which the filling
// ratios of the UN Model Regulations are chosen.
func cylinderPressure(kelvin, density, full float64) float64 {
	if kelvin <= full {
		return saturationPressure(kelvin)
	}
	return saturationPressure(full) + densePressure(kelvin, density) - densePressure(full, density)
}

// fallBack returns the gas that stays in a cylinder, kg, when its pressure has
// fallen to that of the regulator and it is empty for its purpose.
func (s Supply) fallBack() float64 {
	volume := float64(s.Charge) / (1e3 * s.Filling)
	return volume * gasDensity(s.CylinderTemperature.Kelvin(), s.Gauge.above+s.Air.pascal)
}

// usable returns the gas of one full cylinder that can be used, kg.
func (s Supply) usable() float64 { return float64(s.Charge) - s.fallBack() }

// CylinderAt returns what the gauge of a full cylinder reads at a temperature.
// While there is liquid in it that is the vapour pressure, whether the
// cylinder is full or nearly empty: weigh it. From the liquid-full temperature
// on there is no vapour left to give way and the pressure climbs by some 3 bar
// a kelvin.
//
// Valid from -30 °C to 70 °C and filling ratios from 0.5 to 0.8 kg/L. Outside
// it, or for an invalid argument, CylinderAt returns a [*RangeError] and an
// invalid gauge.
//
// Source: [6] auxiliary equations; beyond liquid-full the rise of Peng &
// Robinson's equation at constant density, within 5 %.
func (s Supply) CylinderAt(t thermal.Temperature) (Gauge, error) {
	const fn = "carbonation.Supply.CylinderAt"
	err := cmp.Or(limitCylinderT.Check(fn, t.Celsius()), limitFilling.Check(fn, s.Filling), limitAir.Check(fn, s.Air.KPa()))
	if err != nil {
		return Gauge{}, err
	}
	density := 1e3 * s.Filling
	p := cylinderPressure(t.Kelvin(), density, liquidFull(density))
	return PaG(p - s.Air.pascal), nil
}
