package lines_test

import (
	"fmt"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/lines"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// A keg stands in a tub on a meadow, the tap half a metre above the beer. With
// five feet of 3/16 in tube and 12 psi, how long does a 16 oz glass take?
func ExampleRun_Flow() {
	run := lines.DefaultRun(lines.Tube{Bore: 3 * lines.Inch / 16, Length: 5 * lines.Foot})
	run.Rise = 0.5
	pour, err := run.Flow(carbonation.PSIG(12))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3g oz/s, a glass in %.3g s\n", pour.Flow.OuncesPerSecond(), 16/pour.Flow.OuncesPerSecond())
	run.Full = 0
	pour, _ = run.Flow(pour.Gauge)
	fmt.Printf("%.3g oz/s from the last of the keg\n", pour.Flow.OuncesPerSecond())
	// Output:
	// 1.82 oz/s, a glass in 8.78 s
	// 1.76 oz/s from the last of the keg
}

// The regulator stands at 12 psi for the gas in the beer. How long a line makes
// that pour 2 oz/s, by friction and by the trade's table?
func ExampleRun_Length() {
	run := lines.DefaultRun(lines.Tube{Bore: 3 * lines.Inch / 16, Material: "vinyl"})
	applied := carbonation.PSIG(12)
	pour, _ := run.Length(0, 2*lines.OuncePerSecond, applied)
	trade, _ := run.TradeLength(0, applied)
	fmt.Printf("friction: %.3g ft (%.3g to %.3g ft)\n", float64(pour.Length/lines.Foot),
		pour.Band().Low/0.3048, pour.Band().High/0.3048)
	fmt.Printf("trade table: %.3g ft\n", float64(trade.Length/lines.Foot))
	// Output:
	// friction: 4.29 ft (3.06 to 5.64 ft)
	// trade table: 3.86 ft
}

// Ten metres of 7 mm line at 3 L/min lose 0.5 bar by a German trade table.
func ExampleRun_Gauge() {
	run := lines.Run{
		Tubes:       []lines.Tube{{Bore: 7 * lines.Millimetre, Length: 10}},
		Calibration: 1,
		Temp:        thermal.Celsius(3),
	}
	pour, _ := run.Gauge(3 * lines.LitrePerMinute)
	tube := pour.Tubes()[0]
	fmt.Printf("%.3f bar, Re %.4g, %s\n", pour.Gauge.Bar(), tube.Reynolds, tube.Regime)
	// Output:
	// 0.520 bar, Re 3359, turbulent
}

func ExampleTube_UnmarshalText() {
	var coil lines.Tube
	if err := coil.UnmarshalText([]byte("7mm:10m:coil95mm:stainless")); err != nil {
		fmt.Println(err)
	}
	fmt.Printf("%.3g turns hold %.3g L\n", coil.Turns(), float64(coil.Volume())*1e3)
	err := coil.UnmarshalText([]byte("1/4in-od:20ft"))
	fmt.Println(err)
	// Output:
	// 33.5 turns hold 0.385 L
	// "1/4in-od:20ft" is an outside diameter without a wall, add the wall, for example 1/4in-od:20ft:wall0.7mm, or give the bore
}

// The trade's table says 3 psi a foot, friction says less: a friend with a watch
// decides. A 16 oz glass takes 9.5 s through five feet at 12 psi.
func ExampleRun_Calibrate() {
	run := lines.DefaultRun(lines.Tube{Bore: 3 * lines.Inch / 16, Length: 5 * lines.Foot})
	applied := carbonation.PSIG(12)
	k, err := run.Calibrate(applied, 16*volume.USFluidOunce, 9500*time.Millisecond)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3g times the computed friction, as if the bore were %.3g mm\n",
		k.Factor, float64(k.EquivalentBore/lines.Millimetre))
	run.Calibration = k.Factor
	pour, _ := run.Flow(carbonation.PSIG(14))
	fmt.Printf("at 14 psi a glass takes %.3g s\n", pour.TimeFor(16*volume.USFluidOunce).Seconds())
	// Output:
	// 1.32 times the computed friction, as if the bore were 4.49 mm
	// at 14 psi a glass takes 8.71 s
}

// How long may beer wait in the line at a meadow party, bare and in foam?
func ExampleRun_Stand() {
	run := lines.DefaultRun(lines.Tube{Bore: 3 * lines.Inch / 16, Length: 5 * lines.Foot, Material: "vinyl"})
	serving := lines.DefaultServing(carbonation.PSIG(12), carbonation.Volumes(2.57))
	serving.Around = thermal.Shade(thermal.Fahrenheit(86))
	bare, _ := run.Stand(serving)
	serving.Insulation = lines.Inch / 2
	foam, _ := run.Stand(serving)
	fmt.Printf("foams above %.2f °F: bare after %.2g s, in half an inch of foam after %.3g s\n",
		bare.Breakout.Fahrenheit(), bare.Limit.Seconds(), foam.Limit.Seconds())
	// Output:
	// foams above 42.96 °F: bare after 38 s, in half an inch of foam after 124 s
}

// Beer in balance with its keg is supersaturated at the tap, and nothing comes
// of it; a line left in the sun is another matter.
func ExampleRun_Profile() {
	run := lines.DefaultRun(lines.Tube{Bore: 3 * lines.Inch / 16, Length: 5 * lines.Foot})
	serving := lines.DefaultServing(carbonation.PSIG(12), carbonation.Volumes(2.57))
	cold, _ := run.Profile(serving, 50)
	serving.LineTemp = thermal.Fahrenheit(60)
	warm, _ := run.Profile(serving, 50)
	for _, p := range []lines.Profile{cold, warm} {
		last := p.Stations[len(p.Stations)-2]
		fmt.Printf("%.3g °F before the tap, margin %.2g psi, gas comes out: %v\n",
			last.Temperature.Fahrenheit(), float64(last.Margin/carbonation.PSI), p.GasComesOut)
	}
	// Output:
	// 38 °F before the tap, margin -8.4 psi, gas comes out: false
	// 60 °F before the tap, margin -22 psi, gas comes out: true
}

// A keg has stood in the shade at 20 °C and is served through 50 ft of coil
// packed in ice.
func ExampleRun_Warm() {
	run := lines.DefaultRun(
		lines.Tube{Bore: 6.5 * lines.Millimetre, Length: 50 * lines.Foot, Coil: 0.2, Material: "stainless"},
		lines.Tube{Bore: 3 * lines.Inch / 16, Length: 4 * lines.Foot})
	run.Temp = thermal.Celsius(20)
	serving := lines.DefaultServing(carbonation.Gauge{}, carbonation.Volumes(2.5))
	serving.Around = thermal.Shade(thermal.Celsius(31))
	serving.Chiller = thermal.DefaultCoil().Packed()
	w, err := run.Warm(serving)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3g psi hold the gas; %.3g oz/s at %.2g °C\n", w.Needed.PSI(), w.Pour.Flow.OuncesPerSecond(), w.Outlet.Celsius())
	// Output:
	// 29.8 psi hold the gas; 1.82 oz/s at 4.1 °C
}

// It foams: the keg was carbonated at 38 °F and 12 psi and now reads 45 °F.
func ExampleObservation_Diagnose() {
	seen := lines.Observation{
		Run:             lines.DefaultRun(lines.Tube{Bore: 3 * lines.Inch / 16, Length: 5 * lines.Foot}),
		Serving:         lines.DefaultServing(carbonation.PSIG(12), carbonation.Content{}),
		CarbonatedTemp:  thermal.Fahrenheit(38),
		CarbonatedGauge: carbonation.PSIG(12),
		CarbonatedFor:   10 * 24 * time.Hour,
	}
	seen.Run.Temp = thermal.Fahrenheit(45)
	d, err := seen.Diagnose()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range d.Findings {
		fmt.Printf("%s: %s\n", f.Cause, f.Remedy)
	}
	// Output:
	// keg too warm for its pressure: cool the keg to 38.0 °F (3.3 °C); until then set 15.8 psi (1.09 bar): the line then pours 2.24 oz/s (3.97 L/min) as it is
}

func ExampleRun_Clean() {
	c, _ := lines.DefaultRun(lines.Tube{Bore: 3 * lines.Inch / 8, Length: 20 * lines.Foot}).Clean()
	fmt.Printf("holds %.3g oz; mix %.3g oz of cleaner\n", float64(c.Fill/volume.USFluidOunce), float64(c.Solution/volume.USFluidOunce))
	// Output:
	// holds 14.7 oz; mix 22 oz of cleaner
}
