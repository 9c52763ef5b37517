package plan

import (
	"cmp"
	"fmt"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"gonum.org/v1/gonum/unit"
)

// bounds holds every number of the file against the row of a package's table
// that bounds it, before anything is computed and whether the plan comes to use
// it or not.
func (p *planner) bounds() error {
	d := &p.day
	g := &d.Guests
	if err := cmp.Or(
		within("volume.Crowd.Guests", g.Count.si),
		within("volume.Crowd.Duration", d.Hours.si),
		within("carbonation.AirAt.elevation", d.Elevation.si),
		within("thermal.Surroundings.Air", d.Air.Kelvin()),
		within("thermal.Surroundings.Humidity", d.Humidity.si),
		within("thermal.Surroundings.Sun", d.Sun.si),
		within("thermal.Surroundings.Wind", d.Wind.si),
		within("volume.Crowd.Share", g.Share.si),
		within("volume.Crowd.FirstHour", g.FirstHour.si),
		within("volume.Crowd.Later", g.Later.si),
		within("volume.Crowd.Weather", g.Weather.si),
		within("volume.Crowd.Spread", g.Spread.si),
		within("volume.Crowd.Confidence", g.Confidence.si),
		within("volume.Glass.Volume", float64(d.Glass.Size.volume(d.Glass.Size.glass().Volume))),
		within("volume.Pour.Head", d.Glass.Head.si),
		within("thermal.IceBath.Ice", d.Ice.Available.si),
		within("thermal.Upkeep.Bag", d.Ice.Bag.si),
		within("carbonation.Supply.Charge", d.Gas.Cylinder.si),
		within("volume.Bar.Taps", d.Taps.Count.si),
		within("volume.Bar.Change", d.Taps.Change.si),
		within("volume.Bar.Wait", d.Taps.Wait.si),
	); err != nil {
		return err
	}
	if d.Gas.Cylinders.si < 0 {
		return &FileError{p.file, 0, fmt.Sprintf("gas.cylinders is %.0f", d.Gas.Cylinders.si), "count those that are full"}
	}
	for i := range d.Beers {
		if err := d.Beers[i].bounds(); err != nil {
			return p.about(&d.Beers[i], err)
		}
	}
	return nil
}

func (b *Beer) bounds() error {
	for _, q := range []struct {
		given bool
		field string
		si    float64
	}{
		{b.Regulator.IsValid(), "carbonation.Supply.Gauge", b.Regulator.Pascals()},
		{b.FG.set, "thermal.BeerOf.fg", b.FG.si},
		{b.OG.set, "thermal.BeerFromOriginal.og", b.OG.si},
		{b.Tub.Size.set, "volume.Tub.Capacity", b.Tub.Size.si},
		{b.Tub.Height.set, "volume.Tub.Height", b.Tub.Height.si},
	} {
		if q.given {
			if err := within(q.field, q.si); err != nil {
				return err
			}
		}
	}
	return cmp.Or(
		within("thermal.BeerOf.abv", b.ABV.si),
		within("volume.Choice.Share", b.Share.si),
		within("thermal.Keg.Vessel.Capacity", float64(b.Keg.volume(b.Keg.vessel().Capacity))),
		within("volume.Choice.Kegs", b.Kegs.si),
		within("carbonation.PressureFor.c", b.CO2.GramsPerLitre()),
		within("thermal.IceBath.From", b.Arrives.Kelvin()),
		within("thermal.IceBath.Reach.to", b.ServeAt.Kelvin()),
		within("lines.Run.Rise", b.Line.Rise.si),
		within("thermal.IceBath.Wall", b.Tub.Wall.si),
		within("thermal.IceBath.Ice", b.Tub.Ice.si),
		within("thermal.IceBath.Water", b.Tub.Water.si),
		within("thermal.IceBath.Ice", b.Chiller.Ice.si),
		within("thermal.Conductance.Melts.u", b.Chiller.BoxUA.si),
	)
}

// within holds a value, in SI, against the row that bounds a field.
func within(field string, si float64) error {
	r := calc.Limit(field)
	return r.Check("plan.Compute", quantity.In(r.Suffix, si))
}

// volume returns the size that was typed, or that of the trade name.
func (n named) volume(named unit.Volume) unit.Volume {
	if n.size != 0 {
		return n.size
	}
	return named
}
