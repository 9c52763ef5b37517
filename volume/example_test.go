package volume_test

import (
	"fmt"
	"time"

	"example.com/pourwell/volume"
)

// The counting for an invented meadow party: sixty guests for five hours, beer in
// sixth barrels, twelve-ounce glasses.
func Example() {
	keg, _ := volume.VesselNamed("sixth barrel")
	glass, _ := volume.GlassNamed("us-12oz")
	yield, err := keg.Into(glass).PerKeg()
	if err != nil {
		fmt.Println(err)
		return
	}
	crowd := volume.DefaultCrowd(60, 5*time.Hour)
	demand, err := crowd.Demand(yield)
	if err != nil {
		fmt.Println(err)
		return
	}
	queue, err := crowd.Bar().Queue()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d kegs of %d glasses, %d taps\n", demand.Kegs, yield.Pours, queue.Taps)
	// Output: 4 kegs of 69 glasses, 2 taps
}

// Two beers, of which one keg each is on hand: the lager is the one to worry
// about.
func ExampleCrowd_Menu() {
	keg, _ := volume.VesselNamed("half barrel")
	glass, _ := volume.GlassNamed("us-pint")
	yield, err := keg.Into(glass).PerKeg()
	if err != nil {
		fmt.Println(err)
		return
	}
	beers, err := volume.DefaultCrowd(80, 4*time.Hour).Menu([]volume.Choice{
		{Name: "Haymaker Lager", Share: 0.7, Keg: yield, Kegs: 1},
		{Name: "Barn Porter", Share: 0.3, Keg: yield, Kegs: 1},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, b := range beers {
		fmt.Printf("%s runs out with a chance of %.2f, lasts %v with 0.90\n", b.Choice.Name, b.RunOut, b.LastsFor.Round(time.Minute))
	}
	// Output:
	// Haymaker Lager runs out with a chance of 0.29, lasts 3h17m0s with 0.90
	// Barn Porter runs out with a chance of 0.00, lasts 4h0m0s with 0.90
}

// How much beer sixty guests ask for until a time, and how surely it lasts.
func ExampleDemand_At() {
	keg, _ := volume.VesselNamed("sixth barrel")
	glass, _ := volume.GlassNamed("us-pint")
	yield, err := keg.Into(glass).PerKeg()
	if err != nil {
		fmt.Println(err)
		return
	}
	beers, err := volume.DefaultCrowd(60, 5*time.Hour).Menu([]volume.Choice{{Name: "Haymaker Lager", Share: 1, Keg: yield, Kegs: 3}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, t := range []time.Duration{time.Hour, 3 * time.Hour, 5 * time.Hour} {
		expected, runOut := beers[0].At(t)
		fmt.Printf("%v: %.0f servings, gone with a chance of %.2f\n", t, expected, runOut)
	}
	// Output:
	// 1h0m0s: 60 servings, gone with a chance of 0.00
	// 3h0m0s: 120 servings, gone with a chance of 0.10
	// 5h0m0s: 180 servings, gone with a chance of 0.76
}
