package lines_test

import (
	"fmt"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/lines"
	"example.com/pourwell/thermal"
)

// A keg stands in a tub on a meadow, the tap half a metre above the beer. With
// five feet of 3/16 in tube and 12 psi, how long does a 16 oz glass take?
func ExampleRun_Flow() {
	run := lines.DefaultRun(lines.Tube{Bore: 3 * lines.Inch / 16, Length: 5 * lines.Foot})
	run.Rise = 0.5
	pour, err := run.Flow(carbonation.GaugeOf(12 * carbonation.PSI))
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
	applied := carbonation.GaugeOf(12 * carbonation.PSI)
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
