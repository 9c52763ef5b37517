package lines

import (
	"cmp"
	"math"
	"slices"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/pipe"
	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// standardGravity is the acceleration of free fall in m/s², by definition (3rd
// CGPM, 1901). The true one differs by at most 0.3 %.
const standardGravity = 9.80665

// maxTubes is the most tubes a run may have in series, a dip tube among them.
const maxTubes = 8

// A Run is the way from the beer in a keg to the mouth of the tap. Zero means
// none: the zero Run with a temperature and a calibration factor is a tap
// straight on the keg that loses nothing. [DefaultRun] gives the usual values.
type Run struct {
	DipTube  Tube      `json:",omitzero"` // down through the keg; zero if there is none
	Tubes    []Tube    // in series, from the keg on; none for a tap on the keg
	Fittings []Fitting // losses in steps of bore, bends and the jet
	Hardware Hardware  // coupler, shank and tap

	Rated unit.Pressure // gauge pressure that the weakest part is rated for, 0 if not known; nothing but Cautions reads it

	Rise      unit.Length // from the surface of the beer in a full keg up to the tap; negative if the tap is lower
	KegHeight unit.Length // depth of beer in a full keg: the surface sinks by it until the keg is empty
	Full      float64     // how full the keg is, from 0 to 1

	Calibration float64             // factor on friction in the tubes, 1 where nothing was measured; see [Run.Calibrate]
	Beer        thermal.Beer        // the zero value is ordinary beer
	Temp        thermal.Temperature // of the beer in the run
}

// A Fitting is a loss K ρV²/2 on the speed V in a bore.
type Fitting struct {
	Name string
	K    float64     // loss coefficient
	Bore unit.Length // where V is taken; 0 for the bore of the last tube, at the tap
}

// A Hardware is the loss of a part that no table describes, measured at one
// flow; it is taken to grow with the square of the flow.
type Hardware struct {
	Loss unit.Pressure
	At   Flow
}

// DefaultRun returns a run of tubes with the usual values: ordinary beer at
// 38 °F in a full keg 0.5 m deep, no dip tube and no rise, and
//
//   - K = 2.5 on the last tube: entrance 0.5, two hose barbs 0.5 each, jet 1.0
//     (entrance and jet: handbook values; the barb is estimated)
//   - 2 psi at 2 oz/s for coupler, shank and tap (our estimate: no figure is
//     published, the trade allows up to 3 psi)
//
// The depth is common practice, no source: most kegs of 19 to 59 L stand 53 to
// 64 cm high.
func DefaultRun(tubes ...Tube) Run {
	return Run{
		Tubes:       slices.Clone(tubes),
		Fittings:    []Fitting{{Name: "entrance, two barbs, jet", K: 2.5}},
		Hardware:    Hardware{2 * carbonation.PSI, 2 * OuncePerSecond},
		KegHeight:   0.5,
		Full:        1,
		Calibration: 1,
		Temp:        thermal.Fahrenheit(38),
	}
}

// A circuit is a run made ready for one liquid: every loss as a function of
// the flow with its constants multiplied out.
type circuit struct {
	density, viscosity float64 // kg/m³, Pa s
	lift               float64 // pressure the rise takes, Pa
	fittings, hardware float64 // loss over flow squared, Pa s²/m⁶
	calibration        float64
	rated              unit.Pressure // of the weakest part
	n                  int
	tubes              [maxTubes]segment
}

// A segment is a tube of a circuit.
type segment struct {
	reynolds  float64 // Re over flow, 4ρ/(π d μ)
	loss      float64 // Δp over f and flow squared
	roughness float64 // e/d
	curvature float64 // d/D
	tube      Tube
}

// friction returns the Darcy friction factor of the segment at flow q.
func (s *segment) friction(q float64) float64 {
	return pipe.Coiled(s.reynolds*q, s.roughness, s.curvature)
}

// at returns the loss of the circuit at flow q in Pa.
func (c *circuit) at(q float64) float64 {
	if q == 0 {
		return 0
	}
	sum := c.fittings + c.hardware
	for i := range c.n {
		sum += c.tubes[i].loss * c.tubes[i].friction(q)
	}
	return sum * q * q
}

// add appends a tube; its errors are on behalf of fn.
func (c *circuit) add(fn string, t Tube) error {
	if err := t.check(fn); err != nil {
		return err
	}
	d := float64(t.Bore)
	s := &c.tubes[c.n]
	s.reynolds = 4 * c.density / (math.Pi * d * c.viscosity)
	s.loss = c.perMetre(t) * float64(t.Length)
	s.roughness = float64(t.Roughness) / d
	if t.Coil != 0 {
		s.curvature = d / float64(t.Coil)
	}
	s.tube = t
	c.n++
	return nil
}

// perMetre returns the loss per metre of t over friction factor and flow
// squared, c 8 ρ/(π² d⁵) (Darcy and Weisbach).
func (c *circuit) perMetre(t Tube) float64 {
	d := float64(t.Bore)
	d2 := d * d
	return c.calibration * 8 * c.density / (math.Pi * math.Pi * d2 * d2 * d)
}

// circuit checks the run on behalf of fn and makes it ready.
func (r *Run) circuit(fn string) (c circuit, err error) {
	if err = cmp.Or(
		limitTemperature.Check(fn, r.Temp.Celsius()),
		limitCalibration.Check(fn, r.Calibration),
		limitRated.Check(fn, float64(r.Rated/carbonation.KPa)),
	); err != nil {
		return c, err
	}
	density, err := r.Beer.Density(r.Temp)
	if err != nil {
		return c, err
	}
	viscosity, err := r.Beer.Viscosity(r.Temp)
	if err != nil {
		return c, err
	}
	c.density, c.viscosity, c.calibration, c.rated = float64(density), float64(viscosity), r.Calibration, r.Rated

	count := len(r.Tubes)
	if r.DipTube != (Tube{}) {
		count++
	}
	if err = limitTubes.Check(fn, float64(count)); err != nil {
		return c, err
	}
	if r.DipTube != (Tube{}) {
		if err = c.add(fn, r.DipTube); err != nil {
			return c, err
		}
	}
	for _, t := range r.Tubes {
		if err = c.add(fn, t); err != nil {
			return c, err
		}
	}
	if err = r.fixed(fn, &c); err != nil {
		return c, err
	}
	c.lift, err = r.lift(fn, c.density)
	return c, err
}

// fixed fills in the losses that go with the square of the flow.
func (r *Run) fixed(fn string, c *circuit) error {
	for _, f := range r.Fittings {
		if err := limitK.Check(fn, f.K); err != nil {
			return err
		}
		bore := f.Bore
		if bore == 0 && c.n > 0 {
			bore = c.tubes[c.n-1].tube.Bore
		}
		if f.K == 0 || bore == 0 && c.n == 0 {
			continue // a tap on the keg has no tube whose bore could count
		}
		if err := limitBore.Check(fn, float64(bore/Millimetre)); err != nil {
			return err
		}
		d2 := float64(bore * bore)
		c.fittings += f.K * 8 * c.density / (math.Pi * math.Pi * d2 * d2) // K ρV²/2
	}
	if err := limitHardware.Check(fn, float64(r.Hardware.Loss/carbonation.KPa)); err != nil {
		return err
	}
	if r.Hardware.Loss > 0 {
		if err := limitHardwareAt.Check(fn, r.Hardware.At.LitresPerMinute()); err != nil {
			return err
		}
		c.hardware = float64(r.Hardware.Loss) / float64(r.Hardware.At*r.Hardware.At)
	}
	return nil
}

// lift returns the pressure in Pa that the rise takes at the run's fullness.
func (r *Run) lift(fn string, density float64) (float64, error) {
	if err := cmp.Or(
		limitRise.Check(fn, float64(r.Rise)),
		limitKegHeight.Check(fn, float64(r.KegHeight)),
		limitFull.Check(fn, r.Full),
	); err != nil {
		return nan, err
	}
	rise := float64(r.Rise) + (1-r.Full)*float64(r.KegHeight)
	return density * standardGravity * rise, nil
}
