package thermal

import (
	"testing"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// FuzzIceBath puts any bath within the ranges to the test of [holdsUp].
func FuzzIceBath(f *testing.F) {
	f.Add(uint8(3), uint8(1), 15.0, 18.0, 0.0, 15.0, 15.0, 0.0, 80.0, 0.45, 30.0, 0.5, 0.0, 0.0, 1.0, 2.0, 8.0, uint8(0))
	f.Add(uint8(0), uint8(2), 5.0, 0.0, -25.0, 10.0, 1.0, 0.2, 500.0, 1.0, 0.0, 1.0, 1200.0, 20.0, 0.01, 30.0, 12.0, uint8(1))
	f.Add(uint8(5), uint8(3), 30.0, 40.0, -15.0, 0.0, 0.0, 0.0, 200.0, 0.3, 60.0, 0.0, 800.0, 0.1, 0.4, 700.0, 3.0, uint8(0xff))
	f.Fuzz(func(t *testing.T, v, kegs uint8, from, ice, iceFrom, litres, waterFrom, salt, tub, high, air, rh, sun, wind, fill, h, to float64, how uint8) {
		all := volume.Vessels()
		b := DefaultIceBath(all[int(v)%len(all)], Celsius(from), Shade(Celsius(air)))
		b.Kegs, b.Fill = int(kegs%8), fill
		b.Ice, b.IceFrom = unit.Mass(ice), Celsius(iceFrom)
		b.Water, b.WaterFrom, b.Salt = unit.Volume(litres)*volume.Litre, Celsius(waterFrom), salt
		b.Tub = volume.Tub{Capacity: unit.Volume(tub) * volume.Litre, Height: unit.Length(high)}
		b.Around.Humidity, b.Around.Sun, b.Around.Wind = rh, Irradiance(sun), unit.Velocity(wind)
		b.Lid, b.Stirred = how&1 != 0, how&2 != 0
		if how&4 != 0 {
			b = b.Dry()
		}
		if how&8 != 0 {
			b.Pours = []Pour{{hours(h / 4), hours(h / 2), unit.Volume(fill/2*float64(b.Kegs)) * b.Vessel.Capacity}}
		}
		if how&16 != 0 {
			b.TopUps = []TopUp{{hours(h / 3), unit.Mass(ice / 2)}}
		}
		if how&32 != 0 {
			b.UA = Conductance(wind)
		}
		if !(0 <= h && h <= 720) {
			h = 2
		}
		c, err := b.After(time.Duration(h * float64(time.Hour)))
		holdsUp(t, "fuzz", tried("IceBath.After", c, err))
		c, err = b.Reach(Celsius(to))
		holdsUp(t, "fuzz", tried("IceBath.Reach", c, err))
	})
}

// The same over the ranges of Limits, bounds and small values often among them.
func TestBathHoldsUp(t *testing.T) {
	within := func(t *rapid.T, r volume.Range) float64 {
		v := rapid.Float64Range(r.Min, r.Max).Draw(t, r.Name)
		switch rapid.IntRange(0, 5).Draw(t, "where") {
		case 0:
			return r.Min
		case 1:
			return r.Max
		case 2:
			return r.Min + (v-r.Min)/300
		}
		return v
	}
	rapid.Check(t, func(t *rapid.T) {
		b := DefaultIceBath(rapid.SampledFrom(volume.Vessels()).Draw(t, "vessel"), Celsius(within(t, limitLiquid)), Shade(Celsius(within(t, limitBathAir))))
		b.Around.Humidity, b.Around.Sun = within(t, limitHumidity), Irradiance(within(t, limitSun))
		b.Around.Wind, b.Around.Altitude = unit.Velocity(within(t, limitWind)), unit.Length(within(t, limitAltitude))
		b.Kegs, b.Fill = rapid.IntRange(1, 4).Draw(t, "kegs"), within(t, limitFill)
		b.Tub = volume.Tub{Capacity: unit.Volume(rapid.Float64Range(0.02, 1).Draw(t, "tub")), Height: unit.Length(rapid.Float64Range(0.1, 1).Draw(t, "height"))}
		floor := b.Tub.Floor() * 1000 // kg for a metre
		b.Ice, b.IceFrom = unit.Mass(within(t, volume.Range{Name: "ice", Max: 0.4 * floor})), Celsius(within(t, limitIceFrom))
		b.Water = unit.Volume(within(t, volume.Range{Name: "water", Max: 0.4 * floor})) * volume.Litre
		b.WaterFrom, b.Salt = Celsius(within(t, limitWaterFrom)), within(t, limitSalt)
		b.Wall, b.Conductivity = unit.Length(within(t, limitWall)), Conductivity(within(t, limitConductivity))
		b.Lid, b.Stirred = rapid.Bool().Draw(t, "lid"), rapid.Bool().Draw(t, "stirred")
		if rapid.Bool().Draw(t, "dry") {
			b = b.Dry()
		}
		if rapid.Bool().Draw(t, "measured") {
			b.UA = Conductance(within(t, limitUA))
		}
		for range rapid.IntRange(0, 2).Draw(t, "pours") {
			start := within(t, volume.Range{Name: "start", Max: 20})
			half := unit.Volume(b.Fill*float64(b.Kegs)/2) * b.Vessel.Capacity
			b.Pours = append(b.Pours, Pour{hours(start), hours(start + rapid.Float64Range(1e-3, 9).Draw(t, "long")), half})
		}
		for range rapid.IntRange(0, 2).Draw(t, "top-ups") {
			b.TopUps = append(b.TopUps, TopUp{hours(within(t, volume.Range{Name: "at", Max: 20})), unit.Mass(within(t, volume.Range{Name: "put in", Max: 50}))})
		}
		c, err := b.After(hours(within(t, limitDuration)))
		holdsUp(t, "any bath", tried("IceBath.After", c, err))
		c, err = b.Reach(Celsius(within(t, limitLiquid)))
		holdsUp(t, "any bath", tried("IceBath.Reach", c, err))
		if err != nil {
			return
		}
		if band := c.Band(); !(band.Low <= c.Time.Hours() && c.Time.Hours() <= band.High) {
			t.Errorf("%v is outside its band %+v", c.Time, band)
		}
	})
}
