package thermal

import (
	"errors"
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/water"
	"pgregory.net/rapid"
)

// spirit returns the beer that is ethanol and water alone, w by mass.
func spirit(t testing.TB, w float64) Beer {
	t.Helper()
	rho := ethanolWaterDensity(w, 20)
	b, err := BeerOf(w*rho/ethanolDensity20, rho/waterDensity20)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestEthanolWaterDensity(t *testing.T) {
	for _, row := range checktest.Table(t, "ethanol_water_density.csv") {
		w, c := row.Number("ethanol_mass_fraction"), row.Number("t_degC")
		checktest.Near(t, "density at "+row.Text("ethanol_mass_fraction"), ethanolWaterDensity(w, c),
			row.Number("rho_kg_m3"), row.Number("tolerance_kg_m3"))
	}
}

// A spirit made of the printed densities has no extract, its density at 20 °C
// is the printed one, and it expands as OIML's mixture.
func TestDensity(t *testing.T) {
	b := spirit(t, 0.05)
	checktest.Near(t, "extract of a spirit", b.RealExtract(), 0, 1e-9)
	rho, err := b.Density(Celsius(20))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Near(t, "density at 5 % by mass", rho, 989.378, 5e-4)
	for c := 0.0; c <= 40; c++ { // water against IAPWS, which is independent of OIML
		w, _ := Water().Density(Celsius(c))
		checktest.Near(t, "density of water", w, water.Density(c+zeroCelsius), 0.04)
	}
}

// The fit's stated 2 % holds to 30 °C and 20 % by mass. Water is that of the
// release, which the table of 1918 matches within 1 %.
func TestViscosityOfMixtures(t *testing.T) {
	for _, row := range checktest.Table(t, "ethanol_water_viscosity.csv") {
		c := row.Number("temperature_C")
		if c > 30 {
			continue
		}
		for w, column := range map[float64]string{0: "w0_percent_mPa_s", 0.10: "w10_percent_mPa_s"} {
			b := Water()
			if w > 0 {
				b = spirit(t, w)
			}
			mu, err := b.Viscosity(Celsius(c))
			if err != nil {
				t.Fatal(err)
			}
			want := row.Number(column) * 1e-3
			checktest.Near(t, "viscosity at "+row.Text("temperature_C")+" °C", mu, want, 0.02*want)
		}
		// 20 % by mass is 25 % by volume, above what a beer may have.
		want := row.Number("w20_percent_mPa_s") / row.Number("w0_percent_mPa_s")
		got := math.Exp((6.8751+(-0.13241+0.0012851*c)*c)*0.2 + (-7.2284+0.12291*c)*0.04)
		checktest.Near(t, "viscosity ratio at 20 %", got, want, 0.025*want)
	}
}

// Sucrose at 20 °C in mPa s, NBS circular C440, from memory; the fit holds
// within 0.3 % there, and within 1.5 % at 0 and 10 °C.
func TestViscosityOfSugar(t *testing.T) {
	for _, c := range []struct{ share, t, mu, tol float64 }{
		{0.05, 20, 1.146, 0.004}, {0.10, 20, 1.336, 0.004}, {0.15, 20, 1.592, 0.005}, {0.20, 20, 1.945, 0.006},
		{0.20, 0, 3.818, 0.06}, {0.20, 10, 2.662, 0.04},
	} {
		checktest.Near(t, "sugar", 1e3*water.Viscosity(c.t+zeroCelsius)*math.Exp(sucrose(c.share, c.t)), c.mu, c.tol)
	}
}

// Ordinary beer at 20 °C: 1.4 to 2.0 mPa s in textbooks of brewing (from
// memory), and at 2 °C no more than the 3.91 measured for a dark beer by Severa
// and Los, Acta Univ. Agric. Silvic. Mendel. Brun. 56(2) (2008) 303.
func TestViscosityOfBeer(t *testing.T) {
	warm, err := Beer{}.Viscosity(Celsius(20))
	if err != nil || !(1.4e-3 <= warm && warm <= 2.0e-3) {
		t.Errorf("at 20 °C %v, %v", warm, err)
	}
	cold, err := Beer{}.Viscosity(Celsius(2))
	if err != nil || !(2.3e-3 <= cold && cold <= 3.91e-3) {
		t.Errorf("at 2 °C %v, %v", cold, err)
	}
}

// A unit of the last printed digit, since the table is recalled.
func TestHeatCapacity(t *testing.T) {
	b := spirit(t, 0.10)
	for _, row := range checktest.Table(t, "ethanol_heat.csv") {
		want := row.Number("cp_cal_per_gK") * 4184
		checktest.Near(t, "heat capacity at "+row.Text("t_degC")+" °C", b.heatCapacity(row.Number("t_degC")), want, 0.01*4184)
	}
	// Wort of 12 °P: 3.9 kJ/(kg K) in texts of brewing (from memory); beer of
	// 5 %: between the 4.0 often quoted and water's 4.2.
	wort, err := BeerOf(0, 1.0484)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Near(t, "wort", wort.heatCapacity(20), 3900, 60)
	beer, err := Beer{}.HeatCapacity(Celsius(5))
	if err != nil || !(4000 < beer && beer < 4205) {
		t.Errorf("beer: %v, %v", float64(beer), err)
	}
	checktest.Near(t, "water", Water().heatCapacity(10), water.HeatCapacity(283.15), 0.5)
}

// Ethanol-water at 20 °C, W/(m K): 0.599 at 0, 0.536 at 10 % by mass and 0.169
// for ethanol (International Critical Tables and handbooks, from memory); sugar
// solution of 10 % 0.567 (Riedel, from memory). Within 4 %, the model's band.
func TestConductivity(t *testing.T) {
	checktest.Near(t, "10 % ethanol", spirit(t, 0.10).conductivity(20), 0.536, 0.04*0.536)
	wort, err := BeerOf(0, 1.0400) // 10 °P
	if err != nil {
		t.Fatal(err)
	}
	checktest.Near(t, "10 % sugar", wort.conductivity(20), 0.567, 0.04*0.567)
	k, err := Water().Conductivity(Celsius(25))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Near(t, "water", float64(k), 0.606502308, 1e-4) // SR6-08, table 8
	w := heat.Water(290)
	checktest.Near(t, "water as a beer, Pr", Water().fluidAt(16.85).Pr, w.Pr, 0.001*w.Pr)
	if k, err := (Beer{}).Conductivity(Celsius(41)); err == nil || !math.IsNaN(float64(k)) {
		t.Error("41 °C is accepted")
	}
}

func TestLiquidProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, err := BeerOf(rapid.Float64Range(0, 0.12).Draw(t, "abv"), rapid.Float64Range(1.000, 1.04).Draw(t, "fg"))
		if err != nil {
			return
		}
		c := rapid.Float64Range(-5, 39.9).Draw(t, "t")
		mu, err1 := b.Viscosity(Celsius(c))
		thinner, err2 := b.Viscosity(Celsius(c + 0.1))
		rho, err3 := b.Density(Celsius(c))
		k, err4 := b.Conductivity(Celsius(c))
		cp, err5 := b.HeatCapacity(Celsius(c))
		if err := errors.Join(err1, err2, err3, err4, err5); err != nil {
			t.Fatal(err)
		}
		if !(thinner < mu && mu > water.Viscosity(c+zeroCelsius)*0.999) {
			t.Fatalf("viscosity %v then %v", mu, thinner)
		}
		if !(950 < rho && rho < 1060 && 0.4 < k && k < 0.65 && 3500 < cp && cp < 4400) {
			t.Fatalf("density %v, conductivity %v, heat capacity %v", rho, float64(k), cp)
		}
		if f := b.FreezingPoint().Celsius(); !(-12 < f && f <= 0) {
			t.Fatalf("freezes at %v", f)
		}
	})
}

func TestLiquidRefuses(t *testing.T) {
	var r *RangeError
	for _, temp := range []Temperature{{}, Celsius(-5.1), Celsius(40.1), Celsius(math.NaN()), Fahrenheit(160)} {
		rho, e1 := Beer{}.Density(temp)
		mu, e2 := Beer{}.Viscosity(temp)
		cp, e3 := Beer{}.HeatCapacity(temp)
		for i, err := range []error{e1, e2, e3} {
			if !errors.As(err, &r) {
				t.Errorf("%v, property %d: %v", temp, i, err)
			}
		}
		if !math.IsNaN(rho) || !math.IsNaN(mu) || !math.IsNaN(cp) {
			t.Errorf("%v: %v %v %v, want NaN", temp, rho, mu, cp)
		}
	}
}

func TestLiquidDoesNotAllocate(t *testing.T) {
	var b Beer
	if n := testing.AllocsPerRun(100, func() {
		_, _ = b.Density(Celsius(4))
		_, _ = b.Viscosity(Celsius(4))
		_, _ = b.HeatCapacity(Celsius(4))
		_, _ = b.Conductivity(Celsius(4))
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkDensity(b *testing.B) {
	for b.Loop() {
		_, _ = Beer{}.Density(Celsius(4))
	}
}

func BenchmarkViscosity(b *testing.B) {
	for b.Loop() {
		_, _ = Beer{}.Viscosity(Celsius(4))
	}
}
