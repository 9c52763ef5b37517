package heat

import (
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
)

// The resistances of a bare and a foamed line by hand: 3/16 in by 7/16 in of
// 0.15 W/(m K) with 13 W/(m² K) outside, and half an inch of foam of 0.038 with
// 10.
func TestResistances(t *testing.T) {
	const d, tube, outer = 0.0047625, 0.0111125, 0.0111125 + 2*0.0127
	wall := math.Log(tube/d) / (2 * math.Pi * 0.15)
	checktest.Near(t, "bare", 1/(RadialResistance(d, tube, 0.15)+FilmResistance(tube, 13)), 1/(wall+1/(13*math.Pi*tube)), 1e-12)
	foam := math.Log(outer/tube) / (2 * math.Pi * 0.038)
	checktest.Near(t, "foamed", 1/(RadialResistance(d, tube, 0.15)+RadialResistance(tube, outer, 0.038)+FilmResistance(outer, 10)),
		1/(wall+foam+1/(10*math.Pi*outer)), 1e-12)
	checktest.Near(t, "outlet", Approach(3, 30, 0.32*3/249.4), 30-27*math.Exp(-0.96/249.4), 1e-9)
}

func TestTubeExamples(t *testing.T) {
	got := map[string]float64{
		// the length at which a tube of the film's conductance reaches 115 °C
		"cengel_8_1_length":          math.Log((120.0-15)/(120-115)) * 0.3 * 4187 * FilmResistance(0.025, 800),
		"cengel_3_9_interface":       30 + 80*(RadialResistance(0.003, 0.007, 0.15)+FilmResistance(0.007, 12))/5,
		"cengel_3_9_critical_radius": 1e3 * CriticalRadius(0.15, FilmResistance(0.007, 12), 0.007),
		"ht_cylinder_conduction":     RadialResistance(0.9, 1, 20) / 10,
	}
	for _, row := range checktest.Table(t, "tube_examples.csv") {
		name, printed, tolerance := row.Text("example"), row.Number("printed"), row.Number("tolerance")
		if name == "kreith_8_4_ntu" {
			// With the chart's NTU the water leaves within what half a digit
			// of it makes: 0.05 of e^(−1.4) × 65.4 °F.
			checktest.Near(t, name, Approach(60, 125.4, printed), 110, tolerance*math.Exp(-printed)*65.4)
			continue
		}
		value, ok := got[name]
		if !ok {
			t.Errorf("no test for %s", name)
		}
		checktest.Near(t, name, value, printed, tolerance)
	}
	checktest.Near(t, "Cengel 8-1 outlet", Approach(15, 120, 61/(0.3*4187*FilmResistance(0.025, 800))), 115, 0.5/61*math.Log(21)*5)
}

// LayerHeat against the midpoint rule.
func TestLayerHeat(t *testing.T) {
	const a, b, k, c, beyond, whole = 0.010, 0.050, 0.04, 1e5, 0.5, 9.0
	sum, n := 0.0, 100000
	for i := range n {
		r := (a + (b-a)*(float64(i)+0.5)/float64(n)) / 2
		phi := (beyond + math.Log(b/2/r)/(2*math.Pi*k)) / whole
		sum += phi * phi * 2 * math.Pi * r * c * (b - a) / 2 / float64(n)
	}
	checktest.Near(t, "layer", LayerHeat(a, b, k, c, beyond, whole), sum, 1e-6*sum)
}
