package air

import (
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
	"pgregory.net/rapid"
)

// Recalled values, so the tolerance is one unit of the last digit and 3 parts
// in a million rather than half a unit.
func TestStandardAtmosphere(t *testing.T) {
	for _, row := range checktest.Table(t, "icao.csv") {
		height, want := row.Number("height_m"), row.Number("pressure_hPa")*100
		checktest.Near(t, "pressure", Pressure(height), want, 1+3e-6*want)
		checktest.Near(t, "altitude", Altitude(want), height, 0.2)
	}
}

// A barometer that a weather report quotes as standard is the standard
// atmosphere; and 1 hPa is 27 to 28 ft near sea level, 8.3 m (a rule of
// flying, from memory).
func TestStationPressure(t *testing.T) {
	checktest.Near(t, "standard day at 1500 m", StationPressure(SeaLevel, 1500), Pressure(1500), 1e-6)
	checktest.Near(t, "1018.25 hPa at 41.5 m", StationPressure(101825, 41.5), SeaLevel, 5)
}

// Table A-15 prints conductivities 2 % below and so Prandtl numbers 3 % above
// the standard atmosphere's, which agrees with Bergman et al., table A.4, 0.0263
// at 300 K (from memory); density is within 0.1 %, viscosity within 1 %.
func TestAirAgainstTable(t *testing.T) {
	for _, row := range checktest.Table(t, "air_A15.csv") {
		k := row.Number("t_degC") + 273.15
		density, conductivity := row.Number("rho_kg_m3"), row.Number("k_W_mK")
		viscosity, prandtl := row.Number("mu_Pa_s"), row.Number("Pr")
		checktest.Near(t, "density", Density(k, SeaLevel), density, 1e-3*density)
		checktest.Near(t, "heat capacity", HeatCapacity, row.Number("cp_J_kgK"), 1.5)
		checktest.Near(t, "conductivity", Conductivity(k), conductivity, 0.026*conductivity)
		checktest.Near(t, "viscosity", Viscosity(k), viscosity, 0.01*viscosity)
		checktest.Near(t, "Prandtl number", Viscosity(k)*HeatCapacity/Conductivity(k), prandtl, 0.031*prandtl)
	}
}

// US Standard Atmosphere 1976, sea level, as printed (from memory).
func TestTransportAtSeaLevel(t *testing.T) {
	checktest.Near(t, "viscosity", Viscosity(288.15), 1.7894e-5, 5e-10)
	checktest.Near(t, "conductivity", Conductivity(288.15), 0.025326, 2e-6)
	checktest.Near(t, "density", Density(288.15, SeaLevel), 1.2250, 5e-5)
}

// The equation's stated agreement with the tables is 0.03 %.
func TestSaturation(t *testing.T) {
	for _, row := range checktest.Table(t, "saturation.csv") {
		want := row.Number("reference_Pa")
		checktest.Near(t, "saturation pressure", SaturationPressure(row.Number("t_degC")+273.15), want, 3e-4*want)
	}
}

// Printed saturation values of ASHRAE Handbook, Fundamentals (2017), chapter
// 1, table 2, at 101.325 kPa, which count the enhancement factor of 0.4 %.
func TestHumidityRatio(t *testing.T) {
	checktest.Near(t, "at 5 °C", HumidityRatio(278.15, 1, SeaLevel), 0.005425, 0.005*0.005425)
	checktest.Near(t, "at 25 °C", HumidityRatio(298.15, 1, SeaLevel), 0.020173, 0.005*0.020173)
}

// Steam tables: 2500.9 kJ/kg at 0 °C, 2441.7 at 25 °C, 2382 at 50 °C (from
// memory).
func TestCondensationHeat(t *testing.T) {
	for _, c := range []struct{ t, want float64 }{{0, 2500.9e3}, {25, 2441.7e3}, {50, 2381.9e3}} {
		checktest.Near(t, "condensation heat", CondensationHeat(c.t+273.15), c.want, 0.001*c.want)
	}
}

func TestEveryTableIsRead(t *testing.T) { checktest.EveryTableIsRead(t) }

func TestOutside(t *testing.T) {
	nan := math.NaN()
	for what, v := range map[string]float64{
		"height": Pressure(12000), "NaN height": Pressure(nan), "pressure": Altitude(1), "NaN pressure": Altitude(nan),
		"negative pressure": Altitude(-1), "station": StationPressure(nan, 0), "cold": Viscosity(100), "hot": Conductivity(500),
		"NaN": Density(nan, SeaLevel), "vapour": SaturationPressure(nan), "rh": HumidityRatio(300, 1.1, SeaLevel),
		"NaN rh": HumidityRatio(300, nan, SeaLevel), "boiling": HumidityRatio(390, 1, SeaLevel),
	} {
		if !math.IsNaN(v) {
			t.Errorf("%s: %v, want NaN", what, v)
		}
	}
}

func TestAltitudeInvertsPressure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.Float64Range(-1999, 10999).Draw(t, "h")
		if back := Altitude(Pressure(h)); !(math.Abs(back-h) <= 1e-6) {
			t.Fatalf("%g m comes back as %g", h, back)
		}
	})
}

func BenchmarkSaturationPressure(b *testing.B) {
	for b.Loop() {
		SaturationPressure(290)
	}
}
