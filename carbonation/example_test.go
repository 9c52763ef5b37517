package carbonation_test

import (
	"errors"
	"fmt"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// The regulator reads 12 psi and the kegs lie in ice water at 38 °F, by the sea.
func ExampleContentAt() {
	air := carbonation.PaA(101325)
	gas := carbonation.PSIG(12).Absolute(air)
	c, err := carbonation.ContentAt(thermal.Fahrenheit(38), gas, thermal.Beer{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.4g volumes, %.4g g/L\n", c.Volumes(), c.GramsPerLitre())
	// Output: 2.576 volumes, 5.092 g/L
}

// The meadow lies at 1500 m: what to set there for the same beer.
func ExampleDraught_SolveGauge() {
	d := carbonation.DefaultDraught()
	sea, _ := d.SolveGauge(thermal.Fahrenheit(38), carbonation.Volumes(2.5))
	d.Air, _ = carbonation.AirAt(1500)
	meadow, _ := d.SolveGauge(thermal.Fahrenheit(38), carbonation.Volumes(2.5))
	fmt.Printf("%.4g psi by the sea, %.4g psi on the meadow\n", sea.Gauge.PSI(), meadow.Gauge.PSI())
	fmt.Printf("expect %.4g to %.4g kPa\n", meadow.Band().Low, meadow.Band().High)
	// Output:
	// 11.21 psi by the sea, 13.64 psi on the meadow
	// expect 91.36 to 96.71 kPa
}

// A stout on 30 % CO2 and 70 % nitrogen at 30 psi.
func ExampleDraught_SolveContent() {
	d := carbonation.DefaultDraught()
	d.CO2Share = 0.30
	e, _ := d.SolveContent(thermal.Fahrenheit(38), carbonation.PSIG(30))
	fmt.Printf("%.4g volumes of CO2, %.4g mg/L of nitrogen in the end\n", e.Content.Volumes(), e.Nitrogen)
	// Output: 1.301 volumes of CO2, 57.36 mg/L of nitrogen in the end
}

// A growler filled at 38 °F with 2.5 volumes, forgotten in the sun.
func ExampleSealed_At() {
	growler := carbonation.DefaultDraught().Sealed(carbonation.Volumes(2.5), thermal.Fahrenheit(38))
	sun, err := growler.At(thermal.Fahrenheit(100))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.4g psi in unrated glass\n", sun.Gauge.PSI())
	// Output: 71.8 psi in unrated glass
}

// Filled to the brim, the beer's own expansion bursts the bottle.
func ExampleSealed_At_brim() {
	bottle := carbonation.DefaultDraught().Sealed(carbonation.Volumes(2.5), thermal.Celsius(4))
	bottle.Headspace = 0.005
	_, err := bottle.At(thermal.Celsius(40))
	fmt.Println(errors.Is(err, volume.ErrNoSolution))
	// Output: true
}

// A keg that was set at 12 psi and has warmed to 68 °F pushes back.
func ExampleSealed_At_connected() {
	d := carbonation.DefaultDraught()
	cold, _ := d.SolveContent(thermal.Fahrenheit(38), carbonation.PSIG(12))
	keg := d.Sealed(cold.Content, cold.Temperature)
	keg.Vessel, keg.AtBalance, keg.Regulator = carbonation.Keg, true, cold.Gauge
	warm, _ := keg.At(thermal.Fahrenheit(68))
	fmt.Printf("%.4g psi too much, beer rises %.4g ft in the gas line\n", float64(warm.PushBack/carbonation.PSI), float64(warm.Lift)/0.3048)
	// Output: 18.55 psi too much, beer rises 42.43 ft in the gas line
}

// A keg under a hand pump, half empty, six hours after it was tapped.
func ExampleAirPump_After() {
	keg, _ := volume.VesselNamed("us-half")
	pump := carbonation.DefaultDraught().AirPump(keg, thermal.Celsius(4), carbonation.Volumes(2.5))
	p, _ := pump.After(6 * time.Hour)
	fmt.Printf("a glass costs %.4g psi, %.4g strokes bring it back\n", float64(p.Sag/carbonation.PSI), p.Strokes)
	fmt.Printf("past the oxygen of packaged beer after %.4g h\n", p.Stale.Hours())
	// Output:
	// a glass costs 0.392 psi, 2.651 strokes bring it back
	// past the oxygen of packaged beer after 1.357 h
}

// Two half barrels for the meadow and one 5 lb cylinder.
func ExampleSupply_Plan() {
	s := carbonation.DefaultDraught().Supply(volume.USBarrel/2, thermal.Fahrenheit(38), carbonation.PSIG(12))
	s.Kegs = 2
	n, _ := s.Plan()
	fmt.Printf("%.4g lb of CO2, %d cylinder\n", float64(n.Total/volume.Pound), n.Cylinders)
	fmt.Printf("the gauge reads %.4g psi, in a hot car %.4g psi\n", n.Cylinder.PSI(), n.HotCar.PSI())
	// Output:
	// 0.9391 lb of CO2, 1 cylinder
	// the gauge reads 816.3 psi, in a hot car 2875 psi
}

// The gauge fell by 1 psi in an hour with the cylinder closed.
func ExampleSupply_LeakTest() {
	s := carbonation.DefaultDraught().Supply(50*volume.Litre, thermal.Celsius(15), carbonation.PSIG(12))
	l, _ := s.LeakTest(20*volume.Litre, 1*carbonation.PSI, time.Hour)
	fmt.Printf("%.4g g an hour: 5 lb are gone in %.4g days\n", l.Rate, l.Empty.Hours()/24)
	// Output: 2.585 g an hour: 5 lb are gone in 36.38 days
}

// A 20 lb cylinder that empties into a shed of 20 m³.
func ExampleSupply_IntoRoom() {
	s := carbonation.DefaultDraught().Supply(50*volume.Litre, thermal.Celsius(4), carbonation.PSIG(12))
	s.Charge = 20 * volume.Pound
	r, _ := s.IntoRoom(20)
	fmt.Printf("%.4g %% CO2, deadly: %v\n", 100*r.CO2Share, r.Dangerous)
	// Output: 21.89 % CO2, deadly: true
}

// How far a flat keg gets in an afternoon, and when it is nearly there.
func ExampleEquilibrium_Reach() {
	d := carbonation.DefaultDraught()
	e, _ := d.SolveContent(thermal.Fahrenheit(38), carbonation.PSIG(12))
	afternoon, _ := e.After(carbonation.Volumes(0), 0.5, 5*time.Hour)
	u, _ := e.Reach(carbonation.Volumes(0), 0.5, 0.9)
	fmt.Printf("%.4g volumes after 5 h, nine tenths after %.4g days\n", afternoon.Content.Volumes(), u.Time.Hours()/24)
	// Output: 0.2232 volumes after 5 h, nine tenths after 7.839 days
}

// A sparkling wine of 12.5 % at the refrigerator's temperature.
func ExampleWine_PressureFor() {
	wine := carbonation.Wine{ABV: 0.125, Sugar: 10}
	p, _ := wine.PressureFor(carbonation.GramsPerLitre(11.5), thermal.Celsius(6))
	fmt.Printf("%.4g bar of CO2, absolute\n", p.Bar())
	// Output: 5.15 bar of CO2, absolute
}

// The village lies at 1500 m and the forecast gives 1018 hPa, which is reduced
// to sea level. The air around the gauge there:
func ExamplePressure_StationAt() {
	forecast := carbonation.PaA(101800)
	air, _ := forecast.StationAt(1500)
	standard, _ := carbonation.AirAt(1500)
	fmt.Printf("%.4g kPa, %.4g kPa on a standard day\n", air.KPa(), standard.KPa())
	// Output: 84.97 kPa, 84.56 kPa on a standard day
}

// The regulator is stuck at 14 psi: how cold for 2.5 volumes?
func ExampleDraught_SolveTemperature() {
	e, _ := carbonation.DefaultDraught().SolveTemperature(carbonation.PSIG(14), carbonation.Volumes(2.5))
	fmt.Printf("%.4g °F\n", e.Temperature.Fahrenheit())
	// Output: 43.33 °F
}

// A long line needs 22 psi: which blend keeps 2.5 volumes at 38 °F?
func ExampleDraught_SolveShare() {
	e, _ := carbonation.DefaultDraught().SolveShare(thermal.Fahrenheit(38), carbonation.Volumes(2.5), carbonation.PSIG(22))
	fmt.Printf("%.4g %% CO2\n", 100*e.CO2Share)
	// Output: 70.59 % CO2
}
