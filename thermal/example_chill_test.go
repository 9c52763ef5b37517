package thermal_test

import (
	"fmt"
	"time"

	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// Kegs stand in a barn at 68 °F; the tap at the meadow party runs 2 fl oz a
// second through 50 ft of coil packed in ice.
func ExampleCoil_Chill() {
	c := thermal.DefaultCoil().Packed()
	r, err := c.Chill(thermal.Fahrenheit(68), thermal.Flow(2*volume.USFluidOunce))
	if err != nil {
		fmt.Println(err)
		return
	}
	b := r.Band()
	fmt.Printf("leaves at %.1f °F (%.1f °C, between %.1f and %.1f)\n", r.Outlet.Fahrenheit(), r.Outlet.Celsius(), b.Low, b.High)
	fmt.Printf("Re %.0f, critical %.0f: %s\n", r.Reynolds, r.CriticalReynolds, r.Regime())
	fmt.Printf("%.2f kg of ice for a litre, and %.2f L in the coil\n", float64(r.IcePerLitre), float64(r.HoldUp)*1e3)
	// Output:
	// leaves at 41.5 °F (5.3 °C, between 4.0 and 7.1)
	// Re 7953, critical 6037: transition
	// 0.18 kg of ice for a litre, and 0.29 L in the coil
}

// The same coil in a still bath serves a glass every two minutes and fails a
// queue.
func ExampleCoil_Serve() {
	c := thermal.DefaultCoil().Still()
	p := thermal.DefaultPours()
	spaced, _ := c.Serve(thermal.Celsius(20), p)
	p.Every = 8 * time.Second
	queue, _ := c.Serve(thermal.Celsius(20), p)
	fmt.Printf("first glass %.1f °C\n", spaced.First.Celsius())
	fmt.Printf("tenth, one every two minutes %.1f °C\n", spaced.Last.Celsius())
	fmt.Printf("tenth in a queue %.1f °C, then %.0f s of rest\n", queue.Last.Celsius(), queue.Recovery.Seconds())
	// Output:
	// first glass 6.2 °C
	// tenth, one every two minutes 6.4 °C
	// tenth in a queue 12.8 °C, then 93 s of rest
}

// How fast may the tap run without a rest and still pour at 41 °F?
func ExampleCoil_LargestFlow() {
	l, err := thermal.DefaultCoil().Packed().LargestFlow(thermal.Fahrenheit(68), thermal.Fahrenheit(41))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f fl oz/s\n", float64(l.Flow)/float64(volume.USFluidOunce))
	_, err = thermal.DefaultCoil().LargestFlow(thermal.Fahrenheit(68), thermal.Fahrenheit(35))
	fmt.Println(err)
	// Output:
	// 1.89 fl oz/s
	// thermal.Coil.LargestFlow: no solution: the bath at 35.6 °F (2.0 °C) cannot bring beer to 35.0 °F (1.7 °C) at any flow: pack it with ice or pump it
}

// A plate suits a keg that is cool already: from 50 °F with ice pressed on it,
// with loose cubes, and in its own melt water.
func ExamplePlate_Chill() {
	p := thermal.DefaultPlate()
	for _, p := range []thermal.Plate{p.Pressed(), p.Loose(), p.Flooded()} {
		r, err := p.Chill(thermal.Fahrenheit(50), thermal.Flow(2*volume.USFluidOunce))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.1f °F\n", r.Outlet.Fahrenheit())
	}
	// Output:
	// 42.0 °F
	// 46.1 °F
	// 49.3 °F
}

// Ten kilograms of ice lie on the plate and a pint is drawn every minute: when
// must the melt water be let off?
func ExamplePlate_DrainDue() {
	pours := thermal.DefaultPours()
	pours.Every = time.Minute
	due, err := thermal.DefaultPlate().DrainDue(thermal.Fahrenheit(50), pours, 10)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("after %.0f min\n", due.Minutes())
	// Output:
	// after 55 min
}

// While beer flows, three metres of bare line on a summer's day hardly matter.
func ExampleLine_Carry() {
	l := thermal.DefaultLine(thermal.Shade(thermal.Celsius(30)))
	r, err := l.Carry(thermal.Celsius(3), thermal.Flow(2*volume.USFluidOunce))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("3.00 °C in, %.2f °C out, %.0f W\n", r.Temperature.Celsius(), float64(r.Heat))
	// Output:
	// 3.00 °C in, 3.12 °C out, 31 W
}

// What stands in the line between two guests does: bare, and in half an inch
// of foam.
func ExampleLine_Stand() {
	l := thermal.DefaultLine(thermal.Shade(thermal.Celsius(30)))
	for _, foam := range []unit.Length{0, volume.Inch / 2} {
		l.Insulation = foam
		r, err := l.Stand(thermal.Celsius(3), 10*time.Minute)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("after 10 min %.1f °C, time constant %.0f min\n", r.Temperature.Celsius(), r.TimeConstant.Minutes())
	}
	// Output:
	// after 10 min 23.0 °C, time constant 7 min
	// after 10 min 14.1 °C, time constant 19 min
}

// A glass that stood in the sun undoes what the coil did; a cup of plastic does
// not.
func ExampleGlassful_Pour() {
	shade := thermal.Shade(thermal.Fahrenheit(86))
	for _, name := range []string{"us-pint", "us-cup-16oz"} {
		g, _ := volume.GlassNamed(name)
		r, err := thermal.DefaultGlassful(g, shade).Pour(thermal.Fahrenheit(38), 10*time.Minute)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: %.1f °F in the hand, %.1f °F after ten minutes\n", name, r.Temperature.Fahrenheit(), r.After.Fahrenheit())
	}
	// Output:
	// us-pint: 45.2 °F in the hand, 48.8 °F after ten minutes
	// us-cup-16oz: 38.2 °F in the hand, 43.4 °F after ten minutes
}

// Two looks at the thermometer of a 5 gal keg on the test evening.
func ExampleCalibration_Solve() {
	v, _ := volume.VesselNamed("soda-5gal")
	c := thermal.DefaultCalibration(v, thermal.Fahrenheit(77),
		thermal.Reading{Time: 0, Temperature: thermal.Fahrenheit(38)},
		thermal.Reading{Time: 3 * time.Hour, Temperature: thermal.Fahrenheit(48)})
	r, err := c.Solve()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f W/K, give or take %.2f; time constant %.1f h\n", float64(r.UA), float64(r.Uncertainty), r.TimeConstant.Hours())
	// Output:
	// 2.24 W/K, give or take 0.36; time constant 10.1 h
}

// A box at the test evening: 4 kg of ice melted in 24 hours at 25 °C.
func ExampleMeltedIce() {
	r, err := thermal.MeltedIce(4, thermal.Celsius(25), 24*time.Hour)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3f W/K\n", float64(r.UA))
	// Output:
	// 0.617 W/K
}
