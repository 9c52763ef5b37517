package thermal

import "example.com/pourwell/volume"

// Cautions returns what can hurt someone with a keg that warms, and with gas in
// a car.
func (w Warming) Cautions() []Remark {
	var all []Remark
	if w.keg.Around.InCar {
		all = append(all, caution(GasInCar, "Kegs and CO2 cylinders in a car: strap them down, keep cylinders upright and closed, air the car, and never leave a"+
			" cylinder in a car parked in the sun."))
	}
	switch t, settles := w.Temperature.Celsius(), w.Settles.Celsius(); {
	case t > warmKeg:
		all = append(all, caution(WarmKeg, "A keg that warms to {%.6g c} gains pressure, most of all when full. Vent it by its relief valve, never defeat the valve,"+
			" and keep to the pressure stamped on the keg.", t))
	case settles > hotKeg:
		all = append(all, caution(KegInSun, "Left where it stands the beer goes on to {%.6g c}: get the keg into the shade. A keg gains pressure as it warms, most of all"+
			" when full; never defeat its relief valve.", settles))
	}
	return all
}

// Cautions returns what can hurt someone at the tub: a frozen line, a keg that
// tips or is heavy, and what was not made for drinking.
func (c Chilling) Cautions() []Remark {
	b := &c.bath
	all := []Remark{{Code: NotForDrinks, Severity: volume.Caution, Text: "Ice and water that kegs have stood in are not for drinks or food."}}
	if c.FreezesBeer {
		all = append(all, caution(FrozenBeer, "The bath can get to {%.6g c}, and this beer freezes at {%.6g c}. Beer standing in a line or coil in it freezes and blocks it, and a"+
			" frozen keg can burst its fittings: use less salt.", c.BathFreezes.Celsius(), b.Beer.FreezingPoint().Celsius()))
	}
	if c.FloatsBelow > 0 {
		all = append(all, caution(volume.Floating, "A keg less than {%.6g share} full floats and tips in this depth: weigh it down or let water off.", c.FloatsBelow))
	}
	if fit, err := b.Tub.Fit(b.Vessel, b.Kegs, volume.BaggedIce); err == nil {
		for _, r := range fit.Cautions() {
			if r.Code == volume.Lifting || r.Code == volume.FullTub {
				all = append(all, r)
			}
		}
	}
	return all
}

// A coilRisk is what a coil's cautions depend on.
type coilRisk struct {
	bath, freezes float64 // of the bath, and freezing point of the beer, °C
	pumped        bool
}

// coolant is not to be eaten. Source: FDA Food Code 3-303.11, ice used as
// exterior coolant (from memory).
var coolant = Remark{
	Code: NotForDrinks, Severity: volume.Caution,
	Text: "Ice that has cooled a coil or a plate, and its water, are not for drinks or food.",
}

func (r coilRisk) cautions() []Remark {
	all := []Remark{coolant}
	switch {
	case r.bath < r.freezes:
		all = append(all, caution(FrozenBeer, "The bath at {%.6g c} is colder than this beer's freezing point of {%.6g c}. Beer that stands in the coil freezes in a minute or"+
			" two and blocks it: use less salt, and never force a blocked coil with more pressure.", r.bath, r.freezes))
	case r.bath-r.freezes < freezeDoubt:
		all = append(all, caution(NearFreezing, "The bath at {%.6g c} is hardly warmer than this beer's freezing point, {%.6g c} give or take {%g k}: standing beer may freeze in the coil.",
			r.bath, r.freezes, freezeDoubt))
	}
	if r.pumped {
		all = append(all, caution(Electricity, "A pump in ice water: low voltage or a ground-fault breaker, plugs dry and off the ground, as the local code asks."))
	}
	return all
}

// Cautions returns what can hurt someone at the ice box, and what blocks the
// coil.
func (r CoilChill) Cautions() []Remark { return r.risk.cautions() }

// Cautions returns those of the coil at the largest flow.
func (l CoilLimit) Cautions() []Remark { return l.Chill.Cautions() }

// Cautions returns those of the coil or the plate that the glasses came through.
func (s Service) Cautions() []Remark {
	if s.row.plate {
		return []Remark{coolant}
	}
	return s.risk.cautions()
}

// Cautions returns what can hurt someone at the ice box.
func (r PlateChill) Cautions() []Remark { return []Remark{coolant} }

// Cautions returns what a glass much warmer than the beer can do.
func (r GlassRun) Cautions() []Remark {
	if !(r.from-r.poured > glassShock) {
		return nil
	}
	return []Remark{caution(ThermalShock, "The glass is {%.6g k} warmer than the beer and can crack: let it cool, or rinse it with lukewarm water first.", r.from-r.poured)}
}
