package thermal

import (
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

var (
	limitBathAir      = volume.Range{Name: "air temperature around a bath", Min: 0, Max: 60, Suffix: "c", Source: "in frost the bath itself freezes"}
	limitBathKegs     = volume.Range{Name: "kegs in a tub", Min: 1, Max: 50, Source: "a large trough"}
	limitIce          = volume.Range{Name: "ice", Min: 0, Max: 5000, Suffix: "kg", Source: "a large trough"}
	limitWater        = volume.Range{Name: "water", Min: 0, Max: 5000, Suffix: "l", Source: "a large trough"}
	limitIceFrom      = volume.Range{Name: "ice temperature", Min: -25, Max: 0, Suffix: "c", Source: "freezers; ice melts at 0 °C"}
	limitWaterFrom    = volume.Range{Name: "water temperature", Min: 0, Max: 40, Suffix: "c", Source: "tap water"}
	limitSalt         = volume.Range{Name: "salt in the water", Min: 0, Max: 0.20, Source: "a share by mass; brine's freezing point is fitted to 20 %"}
	limitWall         = volume.Range{Name: "tub wall", Min: 0, Max: 0.3, Suffix: "m", Source: "tubs and ice chests"}
	limitConductivity = volume.Range{Name: "wall conductivity", Min: 0.01, Max: 400, Suffix: "w_per_m_k", Source: "from foam to copper"}
	limitBathMass     = volume.Range{Name: "ice and water together", Min: 0.1, Max: 10000, Suffix: "kg", Source: "less is no bath"}
	limitPour         = volume.Range{Name: "volume of a pour", Min: 0, Max: 10000, Suffix: "l", Source: "a pour takes beer out"}
)

// check returns a [*RangeError] in the name of fn if a field lies outside its
// range. Whether tub, kegs and bath fit each other is checked as they are put
// together.
func (b IceBath) check(fn string) error {
	if err := b.Around.check(fn); err != nil {
		return err
	}
	if err := checkVessel(fn, b.Vessel); err != nil {
		return err
	}
	for _, c := range [...]struct {
		limit volume.Range
		value float64
	}{
		{limitBathAir, b.Around.Air.Celsius()},
		{limitBathKegs, float64(b.Kegs)},
		{limitFill, b.Fill},
		{limitIce, float64(b.Ice)},
		{limitWater, float64(b.Water / volume.Litre)},
		{limitIceFrom, b.IceFrom.Celsius()},
		{limitWaterFrom, b.WaterFrom.Celsius()},
		{limitSalt, b.Salt},
		{limitWall, float64(b.Wall)},
		{limitConductivity, float64(b.Conductivity)},
		{limitUA, float64(b.UA)},
	} {
		if err := c.limit.Check(fn, c.value); err != nil {
			return err
		}
	}
	if err := limitBathMass.Check(fn, float64(b.Ice)+float64(b.Water/volume.Litre)); err != nil {
		return err
	}
	if b.Drained && b.Water > 0 {
		return &RangeError{
			Func: fn, Name: "water in a drained tub", Value: float64(b.Water / volume.Litre), Suffix: "l",
			Source: "melt water runs off, so there can be none",
		}
	}
	if err := b.checkSchedule(fn); err != nil {
		return err
	}
	return b.Beer.checkLiquid(fn, "beer temperature", b.From)
}

// checkSchedule checks pours and top-ups.
func (b IceBath) checkSchedule(fn string) error {
	total := b.Ice
	for _, p := range b.Pours {
		if err := limitDuration.Check(fn, p.Start.Hours()); err != nil {
			return err
		}
		end := volume.Range{
			Name: "end of a pour", Min: p.Start.Hours(), Max: limitDuration.Max, Suffix: "h",
			Source: "a pour ends after it starts",
		}
		if err := end.Check(fn, p.End.Hours()); err != nil {
			return err
		}
		if err := limitPour.Check(fn, float64(p.Volume/volume.Litre)); err != nil {
			return err
		}
		if p.Volume > 0 && p.End == p.Start {
			return &RangeError{Func: fn, Name: "volume of a pour that takes no time", Value: float64(p.Volume / volume.Litre), Suffix: "l"}
		}
	}
	for _, t := range b.TopUps {
		if err := limitDuration.Check(fn, t.At.Hours()); err != nil {
			return err
		}
		if err := limitIce.Check(fn, float64(t.Ice)); err != nil {
			return err
		}
		total += t.Ice
	}
	return limitIce.Check(fn, float64(unit.Mass(total)))
}
