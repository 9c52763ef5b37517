package carbonation

import (
	"errors"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// TestRefusals checks that a refusal gives its numbers in US units first and in
// metric ones beside them.
func TestRefusals(t *testing.T) {
	d := Draught{Air: PaA(101325), CO2Share: 1}
	_, share := d.SolveShare(thermal.Fahrenheit(50), Volumes(3), PSIG(10))
	_, cold := TemperatureFor(Volumes(15), KPaA(100), thermal.Beer{})
	full := d.Sealed(Volumes(2.5), thermal.Fahrenheit(38))
	full.Headspace = 0.005
	_, bursts := full.At(thermal.Fahrenheit(140))
	s := d.Supply(19*volume.Litre, thermal.Fahrenheit(38), PSIG(12))
	_, leak := s.LeakTest(1*volume.Litre, unit.Pressure(1e-6), time.Hour)
	for _, x := range []struct {
		err  error
		kind error
		says string
	}{
		{share, volume.ErrNoSolution, "3.00 volumes at 50.0 °F (10.0 °C) need "}, {share, volume.ErrNoSolution, "10.0 psi (0.69 bar) is set"},
		{cold, volume.ErrNoSolution, "under 14.5 psi abs (1.00 bar abs)"},
		{bursts, volume.ErrNoSolution, "it bursts before 140.0 °F (60.0 °C)"},
		{leak, volume.ErrNever, " oz/h ("},
	} {
		if !errors.Is(x.err, x.kind) || !strings.Contains(x.err.Error(), x.says) {
			t.Errorf("%q, of %v, does not say %q", x.err, x.kind, x.says)
		}
	}
}
