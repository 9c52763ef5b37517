package pipe

import (
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
	"pgregory.net/rapid"
)

// The library evaluates the same equations in the same precision.
func TestNusseltAgainstReference(t *testing.T) {
	for _, r := range checktest.Table(t, "nusselt_printed.csv") {
		re, pr := r.Optional("reynolds"), r.Optional("prandtl")
		want := r.Number("nusselt")
		switch r.Text("correlation") {
		case "gnielinski":
			checktest.Near(t, "Gnielinski", Gnielinski(re, pr, r.Number("friction_factor")), want, 1e-12*want)
		case "hausen":
			checktest.Near(t, "Hausen", Hausen(re*pr*r.Number("bore_over_length")), want, 1e-12*want)
		case "schmidt_critical":
			checktest.Near(t, "CriticalSchmidt", CriticalSchmidt(r.Number("curvature")), want, 1e-12*want)
		case "schmidt_turbulent":
			// Another correlation for the same thing: each claims 15 %. It is
			// stated to hold from the critical Reynolds number up.
			curvature := r.Number("curvature")
			if re < CriticalSchmidt(curvature) {
				continue
			}
			checktest.Near(t, "NusseltCoiled at Re "+r.Text("reynolds"), NusseltCoiled(re, pr, curvature), want, 0.30*want)
		default:
			t.Errorf("unknown correlation %q", r.Text("correlation"))
		}
	}
}

// Three laminar correlations of other authors, constants from memory: Dravid,
// Smith, Merrill & Brian, AIChE J. 17 (1971) 1114; Xin & Ebadian, J. Heat
// Transfer 119 (1997) 467; Manlapaz & Churchill, Chem. Eng. Commun. 9 (1981)
// 185. The one used lies above them all, by no more than its documentation says.
func TestNusseltCoiledLaminarAgainstOthers(t *testing.T) {
	const pr, curvature = 13, 0.02465
	for _, re := range []float64{500, 1000, 2000, 4000} {
		de := re * math.Sqrt(curvature)
		x1, x2 := math.Pow(1+957/(de*de*pr), 2), 1+0.477/pr
		others := map[string]float64{
			"Dravid":   (0.65*math.Sqrt(de) + 0.76) * math.Pow(pr, 0.175),
			"Xin":      (2.153 + 0.318*math.Pow(de, 0.643)) * math.Pow(pr, 0.177),
			"Manlapaz": math.Cbrt(math.Pow(3.657+4.343/x1, 3) + 1.158*math.Pow(de/x2, 1.5)),
		}
		nu := NusseltCoiled(re, pr, curvature)
		for name, other := range others {
			if !(0.60*nu <= other && other <= 1.10*nu) {
				t.Errorf("Re %g: Nu %.4g, %s %.4g: outside −40 to +10 %%", re, nu, name, other)
			}
		}
	}
}

// A slightly curved tube is a straight one: two correlations meet within the
// 10 % that each claims.
func TestNusseltCoiledMeetsStraight(t *testing.T) {
	for _, re := range []float64{22000, 5e4, 1e5} {
		for _, pr := range []float64{7, 13} {
			straight := NusseltStraight(re, pr, 0)
			checktest.Near(t, "NusseltCoiled", NusseltCoiled(re, pr, 1e-5), straight, 0.10*straight)
		}
	}
}

// Petukhov's friction factor against measured smooth tubes, over the range
// where heat transfer uses it. Its fit leaves them by 3.4 % at most, small beside
// the 10 % of the Nusselt number that it enters.
func TestPetukhovAgainstMeasured(t *testing.T) {
	n := 0
	for _, r := range checktest.Table(t, "smooth_tube_measured.csv") {
		re, f := r.Number("reynolds"), r.Number("friction_factor_measured")
		if re < NusseltTransitionHigh || re > 1e6 || re == 40850 { // 40850 looks misprinted
			continue
		}
		n++
		checktest.Near(t, "Petukhov at Re "+r.Text("reynolds"), Petukhov(re), f, 0.04*f)
	}
	if n < 5 {
		t.Errorf("only %d measurements in range", n)
	}
}

// The straight tube takes each of its three branches and meets at their ends.
func TestNusseltStraightBranches(t *testing.T) {
	const pr, ratio = 12, 0.002
	checktest.Near(t, "laminar", NusseltStraight(1000, pr, ratio), Hausen(1000*pr*ratio), 1e-12)
	checktest.Near(t, "endless", NusseltStraight(1000, pr, 0), 3.66, 1e-12) // Graetz, any textbook
	checktest.Near(t, "turbulent", NusseltStraight(8000, pr, ratio), Gnielinski(8000, pr, Petukhov(8000)), 1e-12)
	for _, edge := range []float64{NusseltTransitionLow, NusseltTransitionHigh} {
		below, above := NusseltStraight(edge*(1-1e-12), pr, ratio), NusseltStraight(edge*(1+1e-12), pr, ratio)
		checktest.Near(t, "step at a branch's end", above, below, 1e-9*below)
	}
	lo, hi := NusseltStraight(NusseltTransitionLow, pr, ratio), NusseltStraight(NusseltTransitionHigh, pr, ratio)
	checktest.Near(t, "midway", NusseltStraight(3150, pr, ratio), (lo+hi)/2, 1e-9)
}

func TestNusseltProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		re := rapid.Float64Range(1, 9e4).Draw(t, "re")
		pr := rapid.Float64Range(1, 50).Draw(t, "pr")
		curvature := rapid.Float64Range(0.001, 0.14).Draw(t, "curvature")
		ratio := rapid.Float64Range(0, 0.1).Draw(t, "d/L")
		if a, b := NusseltCoiled(re, pr, curvature), NusseltCoiled(re*1.01, pr, curvature); !(a > 3.66 && b > a) {
			t.Fatalf("coil: Nu does not grow with Re: %v, %v", a, b)
		}
		if a, b := NusseltStraight(re, pr, ratio), NusseltStraight(re*1.01, pr, ratio); !(a >= 3.66 && b >= a) {
			t.Fatalf("straight: Nu falls with Re: %v, %v", a, b)
		}
		if a, b := NusseltCoiled(re, pr, curvature), NusseltCoiled(re, pr*1.01, curvature); !(b > a) {
			t.Fatalf("coil: Nu does not grow with Pr: %v, %v", a, b)
		}
	})
	for _, bad := range []float64{-1, math.NaN()} {
		if !math.IsNaN(NusseltCoiled(bad, 7, 0.02)) || !math.IsNaN(NusseltStraight(1000, bad, 0)) || !math.IsNaN(NusseltStraight(1000, 7, bad)) {
			t.Errorf("argument %v gives a number", bad)
		}
	}
}

func BenchmarkNusseltCoiled(b *testing.B) {
	for b.Loop() {
		NusseltCoiled(3000, 13, 0.025)
	}
}
