package thermal_test

import (
	"errors"
	"fmt"
	"time"

	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// A full 5 gallon keg comes out of the fridge at 38 °F and waits for the meadow
// party in the shade of a lime tree.
func ExampleKeg_Reach() {
	keg, _ := volume.VesselNamed("soda-5gal")
	shade := thermal.Shade(thermal.Celsius(30))
	for _, humidity := range []float64{0.2, 0.6} {
		shade.Humidity = humidity
		w, err := thermal.DefaultKeg(keg, thermal.Fahrenheit(38), shade).Reach(thermal.Fahrenheit(48))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("at %.0f %% humidity %v to 48 °F; dew brings %.0f %% of the heat\n",
			100*humidity, w.Time.Round(10*time.Minute), 100*w.DewHeatShare)
	}
	// Output:
	// at 20 % humidity 2h30m0s to 48 °F; dew brings 0 % of the heat
	// at 60 % humidity 1h10m0s to 48 °F; dew brings 38 % of the heat
}

// A fridge at 39 °F never brings beer to 38 °F, and the error says where it
// settles.
func ExampleKeg_Reach_never() {
	keg, _ := volume.VesselNamed("soda-5gal")
	fridge := thermal.Shade(thermal.Fahrenheit(39))
	_, err := thermal.DefaultKeg(keg, thermal.Fahrenheit(48), fridge).Reach(thermal.Fahrenheit(38))
	fmt.Println(errors.Is(err, thermal.ErrNever))
	fmt.Println(err)
	// Output:
	// true
	// thermal.Keg.Reach: never reached: the beer settles at 39.0 °F (3.9 °C), so it does not get to 38.0 °F (3.3 °C)
}

// An hour in the shade, in the sun, and in the boot of a car parked there.
func ExampleKeg_After() {
	keg, _ := volume.VesselNamed("us-sixth")
	sun, _ := thermal.ClearSky(52, 200, 13) // 52° north, the 19th of July
	out := thermal.Shade(thermal.Celsius(29))
	out.Sun = sun
	for _, c := range []struct {
		where  string
		around thermal.Surroundings
	}{{"in the shade", thermal.Shade(out.Air)}, {"in the sun", out}, {"in the car", out.InClosedCar()}} {
		w, err := thermal.DefaultKeg(keg, thermal.Celsius(4), c.around).After(time.Hour)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s %.1f °C\n", c.where, w.Temperature.Celsius())
	}
	// Output:
	// in the shade 8.0 °C
	// in the sun 9.9 °C
	// in the car 11.5 °C
}

// Two kegs go into a tub at 68 °F in the morning, on 40 kg of ice and 40 L of
// water.
func ExampleIceBath_Reach() {
	keg, _ := volume.VesselNamed("soda-5gal")
	b := thermal.DefaultIceBath(keg, thermal.Fahrenheit(68), thermal.Shade(thermal.Celsius(28)))
	b.Tub = volume.Tub{Capacity: 160 * volume.Litre, Height: 0.60}
	b.Kegs, b.Ice, b.Water, b.Lid = 2, 40, 40*volume.Litre, true
	wet, err := b.Reach(thermal.Fahrenheit(42))
	if err != nil {
		fmt.Println(err)
		return
	}
	dry, _ := b.Dry().Reach(thermal.Fahrenheit(42))
	fmt.Printf("with water %.1f h, ice alone %.1f h\n", wet.Time.Hours(), dry.Time.Hours())
	fmt.Printf("%.0f %% of each keg stands in the bath, at %.1f °C\n", 100*wet.Covered, wet.Bath.Celsius())
	// Output:
	// with water 1.3 h, ice alone 1.7 h
	// 61 % of each keg stands in the bath, at 2.0 °C
}

// Pouring from two to seven, hour by hour, and the bags that keep a fifth of the first ice.
func ExampleIceBath_After() {
	keg, _ := volume.VesselNamed("soda-5gal")
	b := thermal.DefaultIceBath(keg, thermal.Celsius(4), thermal.Shade(thermal.Celsius(31)))
	b.Pours = []thermal.Pour{{Start: 2 * time.Hour, End: 7 * time.Hour, Volume: 16 * volume.Litre}}
	b, err := b.KeptCold(10*time.Hour, thermal.Upkeep{Bag: 5, Reserve: thermal.UsualReserve})
	if err != nil {
		fmt.Println(err)
		return
	}
	day, err := b.After(8 * time.Hour)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range day.Course(5) {
		fmt.Printf("%v: %.1f °C, %.1f kg of ice, %.1f L of beer\n", s.At, s.Beer.Celsius(), float64(s.Ice), float64(s.Left/volume.Litre))
	}
	fmt.Printf("bags of 5 kg to add: %d\n", len(b.TopUps))
	// Output:
	// 0s: 4.0 °C, 18.0 kg of ice, 18.9 L of beer
	// 2h0m0s: 2.4 °C, 11.6 kg of ice, 18.9 L of beer
	// 4h0m0s: 6.8 °C, 7.7 kg of ice, 12.5 L of beer
	// 6h0m0s: 7.5 °C, 3.9 kg of ice, 6.1 L of beer
	// 8h0m0s: 4.4 °C, 9.5 kg of ice, 2.9 L of beer
	// bags of 5 kg to add: 1
}

// Ordinary beer is as heavy as its gravity says, thicker than water by two
// thirds, and freezes two degrees lower.
func ExampleBeer() {
	beer, err := thermal.BeerOf(0.05, 1.010)
	if err != nil {
		fmt.Println(err)
		return
	}
	cold := thermal.Fahrenheit(38)
	rho, _ := beer.Density(cold)
	mu, _ := beer.Viscosity(cold)
	water, _ := thermal.Water().Viscosity(cold)
	fmt.Printf("%.0f kg/m³, %.2f times as thick as water, freezes at %.1f °C\n",
		rho, mu/water, beer.FreezingPoint().Celsius())
	// Output:
	// 1010 kg/m³, 1.69 times as thick as water, freezes at -2.3 °C
}

// The sun of a clear afternoon on level ground, 40° north at the end of June.
func ExampleClearSky() {
	for _, hour := range []float64{12, 15, 18} {
		g, _ := thermal.ClearSky(40, 175, hour)
		fmt.Printf("%2.0f h: %.0f W/m²\n", hour, float64(g))
	}
	// Output:
	// 12 h: 990 W/m²
	// 15 h: 764 W/m²
	// 18 h: 223 W/m²
}
