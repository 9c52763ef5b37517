package plan

import (
	"fmt"
	"math"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// gas asks how much CO2 pushes all the beer, and whether the cylinders hold
// that.
func (p *planner) gas() error {
	g := &p.plan.Gas
	kegs, cylinders := 0, 0.0
	for i := range p.day.Beers {
		b := &p.day.Beers[i]
		beer, err := b.liquid()
		if err != nil {
			return p.about(b, err)
		}
		need, err := p.supply(b, beer, i).Plan()
		if err != nil {
			return p.about(b, err)
		}
		p.heed("", need.Cautions())
		g.CO2 += float64(need.Total)
		kegs += b.Kegs.int()
		p.command(fmt.Sprintf("gas.beers.%d.co2_kg", i), "co2_kg",
			"carbonation supply --keg %s --kegs %d --gauge %vPa --temp %vC --cylinder %vkg --cylinder-temp %vC --purge 1 %s %s",
			b.Keg.text, b.Kegs.int(), p.set[i].Pascals(), p.keeps[i].Celsius(), p.day.Gas.Cylinder.si,
			p.day.Air.Celsius(), b.flags(), p.airFlags())
		g.Beers = append(g.Beers, BeerGas{b.Name, float64(need.Total)})
		cylinders += float64(b.Kegs.int()) / need.KegsPerCylinder
		g.HotCar = need.HotCar.KPa()
	}
	g.Cylinder, g.Cylinders = p.day.Gas.Cylinder.si, p.day.Gas.Cylinders.int()
	g.Needed = int(math.Ceil(cylinders - 1e-9))
	g.PerKeg = g.CO2 / float64(kegs)
	return nil
}

// supply describes the gas for one beer's kegs, from a cylinder that stands in
// the air of the day.
func (p *planner) supply(b *Beer, beer thermal.Beer, i int) carbonation.Supply {
	draught := carbonation.DefaultDraught()
	draught.Beer, draught.Air = beer, p.air
	s := draught.Supply(b.Keg.vessel().Capacity, p.keeps[i], p.set[i])
	s.Kegs, s.Charge, s.CylinderTemperature = b.Kegs.int(), unit.Mass(p.day.Gas.Cylinder.si), p.day.Air
	return s
}

func (p *planner) gasLasts() Point {
	g := p.plan.Gas
	return Point{
		Holds: g.Cylinders >= g.Needed,
		What:  fmt.Sprintf("gas: {%.6g kg} of CO2 pushes it all; %d of {%.6g kg} on hand", g.CO2, g.Cylinders, g.Cylinder),
		Mend:  fmt.Sprintf("bring %s of {%.6g kg}", counted(g.Needed, "cylinder"), g.Cylinder),
	}
}

func (p *Plan) gasSentence() string {
	g := p.Gas
	return fmt.Sprintf("CO2 in use {%.6g kg}, {%.6g kg} a keg; leaks come on top, so bring a spare. Weigh the cylinder:"+
		" its gauge tells nothing while liquid is left. In a hot car of {65 c} it would stand at {%.6g kpa}.", g.CO2, g.PerKeg, g.HotCar)
}
