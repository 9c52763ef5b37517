package volume

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/pourwell/internal/checktest"
	"gonum.org/v1/gonum/unit"
)

// Every constant that has an exact factor in the published table has it here.
func TestUnitsExact(t *testing.T) {
	ours := map[string]float64{
		"1 inch": float64(Inch), "1 lb avoirdupois": float64(Pound),
		"1 US gallon (231 in3)": float64(USGallon / Litre), "1 US fluid ounce": float64(USFluidOunce / Millilitre),
		"1 imperial gallon": float64(ImperialGallon / Litre), "1 imperial fluid ounce": float64(ImperialFluidOunce / Millilitre),
		"1 imperial pint": float64(ImperialPint / Millilitre), "1 US pint": float64(USPint / Millilitre),
		"US beer barrel 31 gal": float64(USBarrel / Litre), "UK beer barrel 36 imp gal": float64(UKBarrel / Litre),
	}
	seen := 0
	for _, row := range checktest.Table(t, "unit_conversions.csv") {
		got, ok := ours[row.Text("quantity")]
		if !ok {
			continue // units of other packages
		}
		seen++
		if want := row.Number("value"); math.Abs(got/want-1) > 1e-15 {
			t.Errorf("%s: %.17g, want %.17g", row.Text("quantity"), got, want)
		}
	}
	if seen != len(ours) {
		t.Errorf("%d of %d units found in the table", seen, len(ours))
	}
}

func TestVesselVolumesByDefinition(t *testing.T) {
	gallon := map[string]float64{"us": 3.785411784, "imperial": 4.54609}
	for _, row := range checktest.Table(t, "vessel_volumes.csv") {
		v, ok := VesselNamed(row.Text("vessel"))
		want := row.Number("gallons") * gallon[row.Text("system")]
		if got := float64(v.Capacity / Litre); !ok || math.Abs(got/want-1) > 1e-14 {
			t.Errorf("%s: %v, %.15g L; want %.15g", row.Text("vessel"), ok, got, want)
		}
	}
}

// Sizes agree to the millimetre the table is rounded to; 1 mm more for the pin
// lock keg, whose row is itself a sum of inches. A full keg weighs its tare and
// beer of gravity 1.008 within 0.5 lb, the rounding of the printed weights; the
// 50 L keg is left out, as its printed weight contradicts itself.
func TestVesselSizes(t *testing.T) {
	for _, row := range checktest.Table(t, "vessels.csv") {
		v, ok := VesselNamed(row.Text("vessel"))
		if !ok {
			t.Errorf("%s is not known", row.Text("vessel"))
			continue
		}
		if h := float64(v.Height / Millimetre); math.Abs(h-row.Number("height_mm")) > 1 {
			t.Errorf("%s: height %.1f mm, want %s", v.Name, h, row.Text("height_mm"))
		}
		if d := float64(v.Diameter / Millimetre); math.Abs(d-row.Number("diameter_mm")) > 1 {
			t.Errorf("%s: diameter %.1f mm, want %s", v.Name, d, row.Text("diameter_mm"))
		}
		if w := row.Text("tare_lb"); w != "" && math.Abs(float64(v.Tare/Pound)-row.Number("tare_lb")) > 0.05 {
			t.Errorf("%s: tare %.2f lb, want %s", v.Name, float64(v.Tare/Pound), w)
		}
		if w := row.Text("full_lb"); w != "" && v.Name != "euro-50" {
			if full := float64(v.Tare/Pound) + beerDensity*float64(v.Capacity)/float64(Pound); math.Abs(full-row.Number("full_lb")) > 0.5 {
				t.Errorf("%s: full %.1f lb, want %s", v.Name, full, w)
			}
		}
	}
}

func TestEveryVesselIsUsable(t *testing.T) {
	names := map[string]bool{}
	for _, v := range vessels {
		if err := v.check("test"); err != nil {
			t.Errorf("%s: %v", v.Name, err)
		}
		for _, name := range append(strings.Fields(v.aliases), v.Name) {
			if names[name] || name != tradeName(name) {
				t.Errorf("%s: name %q is taken or not in the table's spelling", v.Name, name)
			}
			names[name] = true
			if got, ok := VesselNamed(strings.ToUpper(strings.ReplaceAll(name, "-", " "))); !ok || got != v.Vessel {
				t.Errorf("VesselNamed(%q) = %q, %v", name, got.Name, ok)
			}
		}
		if outside := math.Pi / 4 * float64(v.Diameter*v.Diameter) * float64(v.Height); float64(v.Capacity) > outside {
			t.Errorf("%s holds %.1f L in a cylinder of %.1f L", v.Name, float64(v.Capacity/Litre), 1e3*outside)
		}
		if v.Source == "" || v.Defined == "" || v.Sized == "" || v.Weighed == "" {
			t.Errorf("%s lacks a source or a status", v.Name)
		}
	}
	for _, name := range []string{"", "pint", "barrel", "us-sixht"} {
		if v, ok := VesselNamed(name); ok || v != (Vessel{}) {
			t.Errorf("VesselNamed(%q) = %v", name, v)
		}
	}
}

func TestVesselOf(t *testing.T) {
	for _, c := range []struct {
		of   unit.Volume
		name string
	}{
		{19 * Litre, "soda-5gal"}, {5 * USGallon, "soda-5gal"}, {50 * Litre, "din-50"}, {USBarrel / 6, "us-sixth"},
		{64 * USFluidOunce, "growler"}, {9 * ImperialGallon, "firkin"}, {10 * Litre, "keg"}, {120 * Litre, "keg"},
	} {
		v := VesselOf(c.of)
		if v.Name != c.name || v.Capacity != c.of || v.check("test") != nil {
			t.Errorf("VesselOf(%g L) = %+v, want %s", float64(c.of/Litre), v, c.name)
		}
	}
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if v := VesselOf(unit.Volume(bad)); v != (Vessel{}) {
			t.Errorf("VesselOf(%g) = %+v", bad, v)
		}
	}
	// The proportions give back what they are said to: the half and the sixth
	// barrel's tare within 2 %, the others within 15 % and 30 %.
	for name, tolerance := range map[string]float64{"us-half": 0.02, "us-sixth": 0.02, "us-quarter": 0.15, "soda-5gal": 0.42} {
		v, _ := VesselNamed(name)
		tare := 0.9 * math.Pow(float64(v.Capacity/Litre), 2./3)
		if math.Abs(tare/float64(v.Tare)-1) > tolerance {
			t.Errorf("%s: tare %.2f kg in proportion, %.2f kg printed", name, tare, float64(v.Tare))
		}
	}
}

func ExampleVesselNamed() {
	keg, ok := VesselNamed("sixth barrel")
	fmt.Println(keg.Name, ok)
	fmt.Printf("%.4g gal, %.4g lb empty\n", float64(keg.Capacity/USGallon), float64(keg.Tare/Pound))
	// Output:
	// us-sixth true
	// 5.167 gal, 14.5 lb empty
}
