package carbonation

import "example.com/pourwell/volume"

// Cautions says what can hurt someone: the cylinder first, then its gas.
func (n GasNeed) Cautions() []volume.Remark {
	var all []volume.Remark
	if n.NoVapour {
		all = append(all, danger(LiquidFull, "At this temperature the liquid fills the cylinder: its pressure climbs by some {300 kpa} a degree Celsius."+
			" Cool it, out of the sun, and keep away from its disc."))
	}
	if n.DiscBursts {
		all = append(all, caution(HotCar, "In a car at {%v c} the cylinder comes to {%v kpa}, where its relief disc lets go.", hotCar, n.HotCar.KPa()))
	}
	all = append(all, HighPressure(n.supply.Gauge)...)
	return append(
		all,
		caution(CylinderCare, "Chain the cylinder upright, out of sun and heat, with the cap or regulator on. Never leave it in a car: the relief disc"+
			" lets the whole charge into the cabin. Have it filled and tested by licensed people only; the stamp on it and local code rule."),
		caution(Suffocation, "CO2 stifles without warning in tents, cellars, cars and coolers: air the place and use a detector."+
			" Solid CO2 does not belong in a keg, a box or a car."),
	)
}

// Notes says what the cylinder's gauge does not tell, and what practice counts.
func (n GasNeed) Notes() []volume.Remark {
	var all []volume.Remark
	if !n.NoVapour {
		all = append(all, note(GaugeTells, "The gauge reads {%v kpa} whether the cylinder is full or nearly empty; it falls only when the last liquid is gone. Weigh it.", n.Cylinder.KPa()))
	}
	const half = 0.5 * float64(volume.Pound)
	return append(all, note(Practice, "Common practice, no source, counts {%v kg} for a half barrel, a tenth more than this sum: leaks and blow-off.", half))
}
