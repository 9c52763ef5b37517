package pipe

import (
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
	"pgregory.net/rapid"
)

// The reference library evaluates the same equation, printed to 7 decimals.
func TestStraightAgainstReference(t *testing.T) {
	for _, r := range checktest.Table(t, "smooth_tube_reference.csv") {
		re := r.Number("reynolds")
		checktest.Near(t, "smooth f at Re "+r.Text("reynolds"), Straight(re, 0), r.Number("fluids_churchill_1977"), 0.5e-7)
		checktest.Near(t, "laminar f at Re "+r.Text("reynolds"), Laminar(re), r.Number("laminar_64_over_Re"), 0.5e-6)
	}
	for _, r := range checktest.Table(t, "rough_tube_reference.csv") {
		re, rough := r.Number("reynolds"), r.Number("eD")
		f := Straight(re, rough)
		checktest.Near(t, "rough f at Re "+r.Text("reynolds")+", e/d "+r.Text("eD"), f, r.Number("fluids_churchill_1977"), 0.5e-7)
		// Colebrook is an independent correlation of the same data; the two are
		// known to part by up to 2.5 % near Re 4000 and at high roughness.
		colebrook := r.Number("fluids_colebrook")
		checktest.Near(t, "f against Colebrook", f, colebrook, 0.03*colebrook)
	}
	checktest.Near(t, "f at Re 1e5, e/d 1e-4", Straight(1e5, 1e-4), 0.018462624566, 0.5e-12)
}

// Measured: within 3 % from Re 3200 to 20000, where beer lines run turbulent,
// and within 4 % beyond. Below Re 1000 the data scatter by up to 9.4 % about the
// laminar line, from there to 2100 they lie up to 14.2 % above it.
func TestStraightAgainstMeasurement(t *testing.T) {
	checked := 0
	for _, r := range checktest.Table(t, "smooth_tube_measured.csv") {
		re, measured := r.Number("reynolds"), r.Number("friction_factor_measured")
		f := Straight(re, 0)
		tolerance := 0.0
		switch {
		case re == 40850:
			continue // misprint: 0.02086 breaks the curve, 0.02186 would fit within 0.5 %
		case re < 1000:
			tolerance = 0.095
		case re < TransitionLow:
			tolerance = 0.145
		case re < 3200: // the flow flips between two answers: it lies between them, data scatter allowed
			low, high := Transition(re, 0)
			if !(0.98*low <= measured && measured <= 1.17*high) {
				t.Errorf("Re %g: measured %g outside %g to %g", re, measured, low, high)
			}
			checked++
			continue
		case re <= 20000:
			tolerance = 0.03
		default:
			tolerance = 0.04
		}
		checktest.Near(t, "f at Re "+r.Text("reynolds"), f, measured, tolerance*measured)
		checked++
	}
	if checked != 58 {
		t.Errorf("checked %d points, want all but one of 59", checked)
	}
}

func TestTextbookExamples(t *testing.T) {
	for _, r := range checktest.Table(t, "friction_textbook.csv") {
		density, bore, speed := r.Number("density_kg_m3"), r.Number("bore_m"), r.Number("speed_m_s")
		re := density * speed * bore / r.Number("viscosity_pa_s")
		f := Straight(re, r.Number("roughness_m")/bore)
		name, tolerance := r.Text("example"), r.Number("tolerance_share")
		if want := r.Optional("printed_re"); !math.IsNaN(want) {
			checktest.Near(t, name+" Re", re, want, 0.001*want)
		}
		want := r.Number("printed_f")
		checktest.Near(t, name+" f", f, want, math.Max(tolerance*want, 0.00005))
		if want := r.Optional("printed_loss_pa"); !math.IsNaN(want) {
			loss := f * r.Number("length_m") / bore * density * speed * speed / 2 // Darcy and Weisbach
			checktest.Near(t, name+" loss", loss, want, tolerance*want)
		}
	}
}

func TestCoiledAgainstReference(t *testing.T) {
	for _, r := range checktest.Table(t, "coil_friction_printed.csv") {
		re, curvature, want := r.Optional("reynolds"), r.Number("d_over_D"), r.Number("value")
		switch r.Text("quantity") {
		case "white":
			checktest.Near(t, "White", Coiled(re, 0, curvature), want, 0.5e-8)
		case "critical ito":
			checktest.Near(t, "critical Reynolds number after Ito", CriticalIto(curvature), want, 0.5e-4)
		case "critical schmidt":
			checktest.Near(t, "critical Reynolds number after Schmidt", CriticalSchmidt(curvature), want, 0.5e-4)
		default:
			t.Errorf("unknown quantity %q", r.Text("quantity"))
		}
	}
	laminar, turbulent := 0, 0
	for _, r := range checktest.Table(t, "coil_friction_reference.csv") {
		re, curvature := r.Number("reynolds"), r.Number("d_over_D")
		f := Coiled(re, 0, curvature)
		what := "f in a coil at Re " + r.Text("reynolds") + ", d/D " + r.Text("d_over_D")
		switch x := re * curvature * curvature; {
		case re < 0.85*CriticalIto(curvature):
			// White to the reference's last digit.
			checktest.Near(t, what, f, r.Number("white_1929_lam"), 0.6e-6)
			laminar++
		case re < CriticalIto(curvature):
			// The two branches cross here; the larger exceeds White by at most 2 %.
			white := r.Number("white_1929_lam")
			checktest.Near(t, what, f, 1.01*white, 0.01001*white)
			laminar++
		case x <= 300:
			// Ito against an independent correlation inside his range.
			mori := r.Number("mori_nakayama_turb")
			checktest.Near(t, what, f, mori, 0.04*mori)
			turbulent++
		case x <= 1000: // beyond his range the two part slowly
			mori := r.Number("mori_nakayama_turb")
			checktest.Near(t, what, f, mori, 0.08*mori)
			turbulent++
		}
		// Schmidt agrees once the coil is fully turbulent; near its critical
		// number it is known to lie far above the others.
		if schmidt := r.Optional("schmidt_1967_turb"); re >= 20000 && re*curvature*curvature <= 500 {
			checktest.Near(t, what+" against Schmidt", f, schmidt, 0.045*schmidt)
		}
	}
	if laminar < 35 || turbulent < 30 {
		t.Errorf("checked %d laminar and %d turbulent coils", laminar, turbulent)
	}
}

func TestCoiledIsContinuousAndNeverBelowStraight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		re := math.Exp(rapid.Float64Range(math.Log(1), math.Log(1e5)).Draw(t, "ln Re"))
		rough := rapid.Float64Range(0, 0.01).Draw(t, "e/d")
		curvature := rapid.Float64Range(0.005, 0.2).Draw(t, "d/D")
		f, next := Coiled(re, rough, curvature), Coiled(re*1.001, rough, curvature)
		if !(f >= Straight(re, rough)) {
			t.Errorf("coil %g below straight %g", f, Straight(re, rough))
		}
		if !(math.Abs(next/f-1) < 0.005) {
			t.Errorf("jump from %g to %g", f, next)
		}
		// A greater flow never loses less: f Re² rises.
		if !(next*1.001*1.001 > f) {
			t.Errorf("loss falls as flow rises: f %g to %g", f, next)
		}
		if tighter := Coiled(re, rough, curvature*1.01); !(tighter >= f) {
			t.Errorf("a tighter coil loses less: %g, %g", tighter, f)
		}
	})
}

func TestEveryTableIsRead(t *testing.T) { checktest.EveryTableIsRead(t) }

func TestFrictionSpecialCases(t *testing.T) {
	if f := Straight(0, 0); !math.IsInf(f, 1) {
		t.Errorf("Straight(0, 0) = %g", f)
	}
	for _, bad := range [][2]float64{{-1, 0}, {math.NaN(), 0}, {1000, -1}, {1000, math.NaN()}} {
		if f := Straight(bad[0], bad[1]); !math.IsNaN(f) {
			t.Errorf("Straight(%g, %g) = %g, want NaN", bad[0], bad[1], f)
		}
		if f := Coiled(bad[0], bad[1], 0.1); !math.IsNaN(f) {
			t.Errorf("Coiled(%g, %g, 0.1) = %g, want NaN", bad[0], bad[1], f)
		}
	}
	if a, b := Straight(200, 0), Straight(199.999999, 0); math.Abs(a/b-1) > 1e-7 {
		t.Errorf("joins at Re 200: %g, %g", a, b)
	}
	if Coiled(5000, 0, 0) != Straight(5000, 0) {
		t.Error("curvature 0 is not straight")
	}
	if CriticalIto(0) != TransitionLow || CriticalSchmidt(0) != 2300 {
		t.Error("critical numbers of a straight tube")
	}
	if low, high := Transition(5000, 0); low != high || low != Straight(5000, 0) {
		t.Errorf("Transition outside the transition: %g, %g", low, high)
	}
}

func BenchmarkStraight(b *testing.B) {
	for b.Loop() {
		Straight(6300, 0)
	}
}

func BenchmarkStraightRough(b *testing.B) {
	for b.Loop() {
		Straight(6300, 3e-4)
	}
}

func BenchmarkCoiled(b *testing.B) {
	for b.Loop() {
		Coiled(6300, 0, 0.05)
	}
}
