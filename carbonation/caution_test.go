package carbonation

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// warns fails unless the worst of the remarks under a code is of that severity;
// a note stands for none. It also reads each of them.
func warns(t *testing.T, what string, all []volume.Remark, code volume.Code, want volume.Severity) {
	t.Helper()
	worst := volume.Note
	for _, r := range all {
		if r.Code == code {
			worst = max(worst, r.Severity)
		}
		if text := r.Text.String(); r.Code == "" || r.Severity == volume.Note || strings.ContainsAny(text, "{}") || strings.Contains(text, "%!") || !strings.HasSuffix(text, ".") {
			t.Errorf("%s: %+v", what, r)
		}
	}
	if worst != want {
		t.Errorf("%s: %s as a %v, want a %v", what, code, worst, want)
	}
}

// Each result on serving gear says so above 30 psi, and not below.
func TestCautionOfPressure(t *testing.T) {
	d, cold := DefaultDraught(), thermal.Celsius(4)
	for psi, least := range map[unit.Pressure]volume.Severity{29: volume.Note, 31: volume.Caution} {
		g := PSIG(float64(psi))
		e := must(d.SolveContent(cold, g))(t)
		warns(t, "equilibrium", e.Cautions(), OverPressure, least)
		warns(t, "uptake", must(e.After(Volumes(1), 0.5, time.Hour))(t).Cautions(), OverPressure, least)
		warns(t, "wine", Wine{}.Cautions(g), OverPressure, least)
		s := d.Supply(volume.USBarrel/2, cold, g)
		warns(t, "supply", must(s.Plan())(t).Cautions(), OverPressure, least)
		warns(t, "leak", must(s.LeakTest(10*volume.Litre, PSI, time.Hour))(t).Cautions(), OverPressure, least)
		pump := d.AirPump(volume.VesselOf(volume.USBarrel/2), cold, Volumes(2.5))
		pump.Gauge = g
		warns(t, "pump", must(pump.After(time.Hour))(t).Cautions(), OverPressure, least)
		keg := d.Sealed(e.Content, cold) // closed at balance it reads the same
		keg.Vessel, keg.AtBalance = Keg, true
		warns(t, "keg", must(keg.At(cold))(t).Cautions(), OverPressure, least)
		keg.Vessel = Can // no serving gear
		warns(t, "can", must(keg.At(cold))(t).Cautions(), OverPressure, volume.Note)
	}
}

// What does not depend on a threshold is said with every answer.
func TestCautionsSaidAlways(t *testing.T) {
	d, cold, g := DefaultDraught(), thermal.Celsius(4), PSIG(10)
	s := d.Supply(volume.USBarrel/2, cold, g)
	plan := must(s.Plan())(t)
	warns(t, "supply", plan.Cautions(), CylinderCare, volume.Caution)
	warns(t, "supply", plan.Cautions(), Suffocation, volume.Caution)
	warns(t, "leak", must(s.LeakTest(10*volume.Litre, PSI, time.Hour))(t).Cautions(), Leaking, volume.Caution)
	warns(t, "room", must(s.IntoRoom(1e6))(t).Cautions(), ExposureLimit, volume.Caution)
	warns(t, "room", must(s.IntoRoom(1e6))(t).Cautions(), Suffocation, volume.Caution)
	pump := d.AirPump(volume.VesselOf(volume.USBarrel/2), cold, Volumes(2.5))
	warns(t, "pump", must(pump.After(time.Hour))(t).Cautions(), HandPump, volume.Caution)
	for vessel, least := range map[Container]volume.Severity{Growler: volume.Caution, Bottle: volume.Caution, Can: volume.Note, Keg: volume.Note} {
		sealed := d.Sealed(Volumes(2), cold)
		sealed.Vessel = vessel
		p := must(sealed.At(cold))(t)
		warns(t, vessel.String(), p.Cautions(), Venting, volume.Caution)
		warns(t, vessel.String(), p.Cautions(), UnratedGlass, least)
		if p.Verdict() != "" {
			t.Errorf("cold beer of 2 volumes in a %v: %s", vessel, p.Verdict())
		}
	}
	pure, blend := d, d
	blend.CO2Share = 0.99
	warns(t, "pure CO2", must(pure.SolveContent(cold, g))(t).Cautions(), Suffocation, volume.Note)
	warns(t, "blend", must(blend.SolveContent(cold, g))(t).Cautions(), Suffocation, volume.Caution)
	warns(t, "wine in the open", Wine{}.Cautions(PaG(0)), Bursting, volume.Note)
	warns(t, "wine under pressure", Wine{}.Cautions(PaG(1)), Bursting, volume.Caution)
	warns(t, "wine under none", Wine{}.Cautions(Gauge{}), Bursting, volume.Note)
}

// Either side of 2.7 volumes, 25 °C and 45 °C, our limits: those of the data.
func TestCautionsOfSealedVessels(t *testing.T) {
	for _, c := range []struct {
		vessel    Container
		volumes   float64
		celsius   float64
		code      volume.Code
		least     volume.Severity
		forbidden bool
	}{
		{Growler, 2.69, 24.9, Bursting, volume.Note, false}, {Growler, 2.71, 24.9, Bursting, volume.Danger, true}, {Growler, 2.69, 25.1, Bursting, volume.Danger, true},
		{Bottle, 2.69, 24.9, Bursting, volume.Note, false}, {Bottle, 2.71, 25.1, Bursting, volume.Danger, true},
		{Can, 2.69, 24.9, Bursting, volume.Note, false}, {Can, 2.71, 24.9, Bursting, volume.Caution, false}, {Can, 2.69, 25.1, Bursting, volume.Caution, false},
		{Keg, 0.5, 24.9, OverPressure, volume.Note, false}, {Keg, 0.5, 25.1, OverPressure, volume.Caution, false},
		{Bottle, 2, 44.9, HotCar, volume.Note, true}, {Bottle, 2, 45.1, HotCar, volume.Caution, true},
	} {
		s := DefaultDraught().Sealed(Volumes(c.volumes), thermal.Celsius(4))
		s.Vessel = c.vessel
		p := must(s.At(thermal.Celsius(c.celsius)))(t)
		warns(t, c.vessel.String(), p.Cautions(), c.code, c.least)
		if (p.Verdict() != "") != c.forbidden {
			t.Errorf("%+v: verdict %q", c, p.Verdict())
		}
	}
	// A keg set at 12 psi and closed there reads 12 psi, above a rating of 11.9.
	e := must(DefaultDraught().SolveContent(thermal.Celsius(4), PSIG(12)))(t)
	keg := DefaultDraught().Sealed(e.Content, e.Temperature)
	keg.Vessel, keg.AtBalance = Keg, true
	for psi, least := range map[unit.Pressure]volume.Severity{11.9: volume.Danger, 12.1: volume.Note} {
		keg.Rating = PSIG(float64(psi))
		p := must(keg.At(e.Temperature))(t)
		warns(t, "rating", p.Cautions(), OverPressure, least)
		if (p.Verdict() != "") != (least == volume.Danger) {
			t.Errorf("rated %g psi at 12 psi: %q", float64(psi), p.Verdict())
		}
	}
	keg.Rating = Gauge{}
	for psi, least := range map[unit.Pressure]volume.Severity{11.9: volume.Caution, 12.1: volume.Note} {
		keg.Regulator = PSIG(float64(psi))
		warns(t, "regulator", must(keg.At(e.Temperature))(t).Cautions(), PushBack, least)
	}
	// Water grows by 999.97/992.22 from 4 to 40 °C: what leaves 1 % then.
	for more, least := range map[float64]volume.Severity{-2e-4: volume.Danger, 2e-4: volume.Note} {
		can := DefaultDraught().Sealed(Volumes(0.5), thermal.Celsius(4))
		can.Headspace = 1 - 0.99*992.22/999.97 + more
		can.Vessel = Keg
		warns(t, "growing beer", must(can.At(thermal.Celsius(40)))(t).Cautions(), Bursting, least)
	}
}

// By hand: 5 lb are 1.233 m³ at 20 °C, in V m³ of room x = 1 − 0.99958
// exp(−1.233/V); 0.5 % are passed below 268.5 m³, 3 % below 41.0, 4 % below
// 30.5, and 19.5 % of oxygen below 1.233/ln(0.20946/0.195) = 17.2 m³.
func TestCautionsOfRooms(t *testing.T) {
	s := DefaultDraught().Supply(50*volume.Litre, thermal.Celsius(4), PSIG(12))
	for _, c := range []struct {
		room    unit.Volume
		least   volume.Severity
		verdict string
		oxygen  bool
	}{
		{271, volume.Caution, "below the limit for a working day", false}, {266, volume.Danger, "above the limit for a working day", false},
		{41.5, volume.Danger, "above the limit for a working day", false}, {40.5, volume.Danger, "limit for 15 minutes", false},
		{31, volume.Danger, "limit for 15 minutes", false}, {30, volume.Danger, "immediately dangerous", false},
		{17.5, volume.Danger, "immediately dangerous", false}, {17, volume.Danger, "immediately dangerous", true},
	} {
		r := must(s.IntoRoom(c.room))(t)
		warns(t, "room", r.Cautions(), ExposureLimit, c.least)
		warns(t, "room", r.Cautions(), Suffocation, volume.Caution)
		if !strings.Contains(string(r.Verdict()), c.verdict) || r.Deficient != c.oxygen || len(r.Cautions()) != map[bool]int{false: 3, true: 4}[c.oxygen] {
			t.Errorf("%g m³: %q, %d cautions, oxygen %g", float64(c.room), r.Verdict(), len(r.Cautions()), r.OxygenShare)
		}
	}
}

// Liquid-full at 26.8 °C for 0.68 kg/L: 679.24 kg/m³ at 300 K, Span & Wagner
// 1996. In a hot car that charge comes to the pressure of the disc; half a
// kilogram a litre, near the critical density, stays far below.
func TestCautionsOfCylinders(t *testing.T) {
	s := DefaultDraught().Supply(50*volume.Litre, thermal.Celsius(4), PSIG(12))
	for celsius, least := range map[float64]volume.Severity{26.5: volume.Note, 27.1: volume.Danger} {
		s.CylinderTemperature = thermal.Celsius(celsius)
		n := must(s.Plan())(t)
		warns(t, "cylinder", n.Cautions(), LiquidFull, least)
		if told := len(n.Notes()) == 2; told != (least == volume.Note) {
			t.Errorf("at %g °C the notes are %v", celsius, n.Notes())
		}
	}
	for filling, least := range map[float64]volume.Severity{0.5: volume.Note, 0.68: volume.Caution} {
		s.Filling = filling
		warns(t, "hot car", must(s.Plan())(t).Cautions(), HotCar, least)
	}
}

// TestNotes reads every note, and looks for those that depend on the answer.
func TestNotes(t *testing.T) {
	d, cold := DefaultDraught(), thermal.Celsius(4)
	e := must(d.SolveGauge(cold, Volumes(2.5)))(t)
	flat := must(d.SolveGauge(cold, Volumes(1)))(t)
	blend := d
	blend.CO2Share = 0.7
	mixed := must(blend.SolveGauge(cold, Volumes(2.5)))(t)
	pump := d.AirPump(volume.VesselOf(volume.USBarrel/2), cold, Volumes(2.5))
	pump.Gauge = PSIG(20)
	held := must(pump.After(time.Hour))(t)
	pump.Gauge = PSIG(5) // 2.5 volumes ask for some 11 psi, the chart
	foams := must(pump.After(time.Hour))(t)
	sealed := d.Sealed(Volumes(1), cold)
	supply := d.Supply(50*volume.Litre, cold, PSIG(12))
	for _, c := range []struct {
		notes []volume.Remark
		codes string
	}{
		{e.Notes(), "at-rest"}, {flat.Notes(), "below-air at-rest"}, {mixed.Notes(), "nitrogen practice"},
		{must(e.After(Volumes(1), 0.5, time.Hour))(t).Notes(), "at-rest estimate"}, {must(e.After(Volumes(3), 0.5, time.Hour))(t).Notes(), "at-rest estimate"},
		{held.Notes(), "staling method"}, {foams.Notes(), "foaming staling method"},
		{must(sealed.At(thermal.Celsius(44.9)))(t).Notes(), "method"}, {must(sealed.At(thermal.Celsius(45.1)))(t).Notes(), "method method"},
		{must(supply.Plan())(t).Notes(), "gauge-tells practice"}, {must(supply.LeakTest(10*volume.Litre, PSI, time.Hour))(t).Notes(), "cooling"},
		{must(supply.IntoRoom(20))(t).Notes(), "method"}, {Wine{}.Notes(PaG(1)), "method at-rest"}, {Wine{}.Notes(PaG(-1)), "below-air method at-rest"},
	} {
		var codes []string
		for _, r := range c.notes {
			codes = append(codes, string(r.Code))
			if text := r.Text.String(); r.Severity != volume.Note || strings.ContainsAny(text, "{}") || strings.Contains(text, "%!") {
				t.Errorf("%+v", r)
			}
		}
		if got := strings.Join(codes, " "); got != c.codes {
			t.Errorf("notes %q, want %q", got, c.codes)
		}
	}
}

func TestContainers(t *testing.T) {
	for i, word := range containers {
		var c Container
		text, err := Container(i).MarshalText()
		if err != nil || string(text) != word || c.UnmarshalText(text) != nil || c != Container(i) {
			t.Errorf("%s is read as %v, %v", text, c, err)
		}
	}
	c := Keg
	if err := c.UnmarshalText([]byte("bucket")); err == nil || c != Keg {
		t.Errorf("a bucket is a %v, %v", c, err)
	}
	if got := Container(math.MaxUint8).String(); got != "vessel" {
		t.Error(got)
	}
}
