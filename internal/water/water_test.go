package water

import (
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
	"pgregory.net/rapid"
)

// volumeSlope returns the derivative of the specific volume of liquid water
// with temperature, m³/(kg K): the coefficients of [Density], held against
// values printed for them.
func volumeSlope(t float64) float64 {
	alpha, beta, ok := reduced(t)
	if !ok {
		return math.NaN()
	}
	s := 0.0
	for _, k := range volumeA {
		s += float64(k.n) * k.c * power(alpha, k.n+1)
	}
	for _, k := range volumeB {
		s -= float64(k.n) * k.c * power(beta, k.n+1)
	}
	return gasConstant / refP * s // derivative of eq. 2
}

// The printed digits of table 8 are nine; half a unit of the last is up to
// 5e-9 of the value.
func TestTable8(t *testing.T) {
	properties := map[string]func(float64) float64{
		"rho": Density, "cp": HeatCapacity, "mu": Viscosity, "k": Conductivity, "vT": volumeSlope,
	}
	for _, row := range checktest.Table(t, "sr608_table8.csv") {
		quantity := row.Text("quantity_SI")
		f, ok := properties[quantity]
		if !ok {
			t.Fatalf("unknown property %q", quantity)
		}
		want := row.Number("printed")
		checktest.Near(t, quantity+" at "+row.Text("T_K")+" K", f(row.Number("T_K")), want, 5e-9*math.Abs(want))
	}
}

// Half a unit of the last digit shown.
func TestLiquidAgainstLibrary(t *testing.T) {
	for _, row := range checktest.Table(t, "water_0_40C.csv") {
		at := " at " + row.Text("t_degC") + " °C"
		k := row.Number("t_degC") + ZeroCelsius
		checktest.Near(t, "density"+at, Density(k), row.Number("rho_kg_m3"), 6e-6)
		checktest.Near(t, "heat capacity"+at, HeatCapacity(k), row.Number("cp_J_kgK"), 6e-4)
		checktest.Near(t, "viscosity"+at, Viscosity(k)*1e3, row.Number("mu_mPa_s"), 6e-5)
		checktest.Near(t, "conductivity"+at, Conductivity(k), row.Number("k_W_mK"), 6e-6)
		checktest.Near(t, "expansivity"+at, Density(k)*volumeSlope(k), row.Number("beta_1_K"), 6e-9)
	}
}

// The maximum: 3.98 °C and 999.974 kg/m³, as printed in handbooks of physics
// (Kaye & Laby; from memory).
func TestDensestNearFour(t *testing.T) {
	best := 0.0
	for c := 0.0; c <= 10; c += 0.01 {
		if Density(c+ZeroCelsius) > Density(best+ZeroCelsius) {
			best = c
		}
	}
	checktest.Near(t, "temperature of greatest density", best, 3.98, 0.01)
	checktest.Near(t, "greatest density", Density(best+ZeroCelsius), 999.974, 6e-4)
}

func TestIce(t *testing.T) {
	for _, row := range checktest.Table(t, "ice.csv") {
		k := row.Number("t_degC") + ZeroCelsius
		want := row.Number("cp_J_kgK")
		checktest.Near(t, "heat capacity of ice at "+row.Text("t_degC")+" °C", IceHeatCapacity(k), want, 5e-4*want)
	}
	// IAPWS R10-06(2009), table 6, at 273.152519 K and 101325 Pa.
	checktest.Near(t, "density of ice", IceDensity, 916.721463419, 5e-3)
	checktest.Near(t, "heat capacity of melting ice", IceHeatCapacity(273.152519), 2096.71391024, 0.02)
	// The enthalpy of water at 273.1525 K and 101325 Pa less that of ice as
	// printed: 0.6 J/kg at the triple point of water (IAPWS-95, from memory),
	// 100.7 for the pressure, -31.6 for the 7.5 mK.
	checktest.Near(t, "latent heat", LatentHeat, 0.6+100.7-31.6+333354.873637, 10)
	// Ice from a freezer at -15 °C is worth 1.09 of melting ice: 15 K of some
	// 2.05 kJ/(kg K).
	checktest.Near(t, "cold of ice at -15 °C", IceCold(258.15)/LatentHeat, 1+15*2.0417/333.43, 2e-4)
	checktest.Near(t, "cold of melting ice", IceCold(ZeroCelsius), LatentHeat, 1e-9)
}

// −25 °C is in range, also where adding 273.15 rounds down.
func TestColdestIce(t *testing.T) {
	for _, k := range []float64{248.15, -25 + ZeroCelsius, math.Nextafter(248.15, 0), 248.149} {
		if v := IceCold(k); math.IsNaN(v) {
			t.Errorf("IceCold(%.17g) is NaN", k)
		}
	}
	if v := IceHeatCapacity(247.9); !math.IsNaN(v) {
		t.Errorf("at 247.9 K: %g", v)
	}
}

func TestEveryTableIsRead(t *testing.T) { checktest.EveryTableIsRead(t) }

func TestOutside(t *testing.T) {
	for _, f := range []func(float64) float64{Density, HeatCapacity, Viscosity, Conductivity, IceHeatCapacity, IceCold} {
		for _, k := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, 200, 400} {
			if v := f(k); !math.IsNaN(v) {
				t.Errorf("at %v K: %v, want NaN", k, v)
			}
		}
	}
}

// volumeSlope is the derivative of 1/Density, and viscosity falls with warmth.
func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(MinT+0.1, MaxT-0.1).Draw(t, "t")
		const h = 1e-3
		slope := (1/Density(k+h) - 1/Density(k-h)) / (2 * h)
		if d := math.Abs(slope - volumeSlope(k)); !(d <= 1e-11) {
			t.Fatalf("slope %g, want %g", volumeSlope(k), slope)
		}
		if !(Viscosity(k+h) < Viscosity(k)) {
			t.Fatalf("viscosity does not fall at %g K", k)
		}
	})
}

func TestNoAllocation(t *testing.T) {
	k := 277.0
	if n := testing.AllocsPerRun(100, func() { k += 1e-6 * (Density(k) + Viscosity(k) + Conductivity(k) + HeatCapacity(k)) / 1e4 }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkDensity(b *testing.B) {
	for b.Loop() {
		Density(277.1)
	}
}

func BenchmarkViscosity(b *testing.B) {
	for b.Loop() {
		Viscosity(277.1)
	}
}
