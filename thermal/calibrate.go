package thermal

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/pourwell/internal/water"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A Reading is one look at a thermometer in the beer.
type Reading struct {
	Time        time.Duration // since any moment, the same for all readings
	Temperature Temperature
}

// A Calibration asks for the conductance of a keg or a box from its own
// readings. [DefaultCalibration] has usual values.
type Calibration struct {
	Readings    []Reading   // two or more, in the order of time
	Air         Temperature // steady while they were taken
	Content     unit.Volume // of beer or water in it
	Beer        Beer
	Metal       unit.Mass  // of the empty keg, as stainless steel; 0 for a box
	Thermometer Difference // by which a reading may be off, one standard deviation
}

// DefaultCalibration returns the calibration of a full vessel of ordinary beer
// with a kitchen thermometer that is good to 0.3 K.
func DefaultCalibration(v volume.Vessel, air Temperature, readings ...Reading) Calibration {
	return Calibration{
		Readings: slices.Clone(readings), Air: air, Content: v.Capacity, Metal: v.Tare, Thermometer: 0.3,
	}
}

// A Calibrated is a conductance that was measured, to be used in place of a
// computed one.
type Calibrated struct {
	UA           Conductance
	Uncertainty  Conductance   // two standard deviations
	TimeConstant time.Duration // 0 where ice was melted
	Scatter      Difference    // of the readings about the fit, one standard deviation; 0 for two readings

	capacity, slope, slopeError float64 // J/K, 1/s, 1/s
	air                         float64 // °C
	thermometer                 Difference
	readings                    []Reading
	melted, during              float64 // kg, s, where ice was melted
}

// Solve returns the conductance that explains the readings best. A body that
// exchanges heat with air of one temperature follows
//
//	ln |T − T_air| = ln |T_0 − T_air| − (UA/C) t
//
// and the slope is fitted by least squares with the weights (T − T_air)², since
// an error of the thermometer weighs the more in the logarithm the nearer the
// air is. C is the heat capacity of content and metal. The uncertainty takes in
// the thermometer's error or the scatter of the readings, whichever is greater,
// and the same error on the air's temperature.
//
// Sun, changing air, and beer not mixed before reading spoil the result; the
// scatter shows it. A steel keg's conductance grows with the difference to the
// air and with dew, so calibrate in conditions like those of the day.
//
// Valid for 2 to 100000 readings over at most 30 days, all on one side of the
// air's temperature and 0.5 K or more from it. Outside the range Solve returns
// a [*RangeError] and NaN; where the readings do not approach the air, an error
// that wraps [volume.ErrNoSolution].
func (c Calibration) Solve() (Calibrated, error) {
	const fn = "thermal.Calibration.Solve"
	if err := c.check(fn); err != nil {
		return noCalibrated(), err
	}
	air := c.Air.Celsius()
	fit := c.fit(air)
	if !(fit.slope > 0) {
		return noCalibrated(), noSolution(fn, "the readings do not approach the air's {%.6g c}", air)
	}
	mean := (c.Readings[0].Temperature.Celsius() + c.Readings[len(c.Readings)-1].Temperature.Celsius()) / 2
	r := Calibrated{
		capacity: float64(c.Content)*c.Beer.density(mean)*c.Beer.heatCapacity(mean) + float64(c.Metal)*steelHeat,
		slope:    fit.slope, air: air, readings: slices.Clone(c.Readings), thermometer: c.Thermometer, Scatter: Difference(fit.scatter),
	}
	sigma := math.Max(fit.scatter, float64(c.Thermometer))
	shift := c.fit(air+math.Copysign(sigma, air-mean)).slope - fit.slope // air further off, so no logarithm fails
	r.slopeError = math.Hypot(sigma/math.Sqrt(fit.spread), shift)
	r.UA = Conductance(r.slope * r.capacity)
	r.Uncertainty = Conductance(2 * r.slopeError * r.capacity)
	r.TimeConstant = seconds(1 / r.slope)
	return r, nil
}

// A logFit is a weighted straight line through the logarithms.
type logFit struct {
	slope   float64 // of decay, 1/s
	spread  float64 // Σ w (t − t̄)², K² s²
	scatter float64 // K
}

// fit fits the decay towards air, °C.
func (c *Calibration) fit(air float64) logFit {
	var w, wt, wy float64
	for _, r := range c.Readings {
		d := r.Temperature.Celsius() - air
		w += d * d
		wt += d * d * r.Time.Seconds()
		wy += d * d * math.Log(math.Abs(d))
	}
	t0, y0 := wt/w, wy/w
	var tt, ty float64
	for _, r := range c.Readings {
		d := r.Temperature.Celsius() - air
		t := r.Time.Seconds() - t0
		tt += d * d * t * t
		ty += d * d * t * (math.Log(math.Abs(d)) - y0)
	}
	f := logFit{slope: -ty / tt, spread: tt}
	if n := len(c.Readings); n > 2 {
		sum := 0.0
		for _, r := range c.Readings {
			d := r.Temperature.Celsius() - air
			miss := d * (math.Log(math.Abs(d)) - y0 + f.slope*(r.Time.Seconds()-t0)) // K
			sum += miss * miss
		}
		f.scatter = math.Sqrt(sum / float64(n-2))
	}
	return f
}

// check returns an error in the name of fn if the readings cannot be used.
func (c *Calibration) check(fn string) error {
	if err := cmp.Or(
		limitReadings.Check(fn, float64(len(c.Readings))),
		limitAir.Check(fn, c.Air.Celsius()),
		limitContent.Check(fn, float64(c.Content)*1e3),
		limitMetal.Check(fn, float64(c.Metal)),
		limitThermometer.Check(fn, float64(c.Thermometer)),
	); err != nil {
		return err
	}
	first, last := c.Readings[0], c.Readings[len(c.Readings)-1]
	if err := limitSpan.Check(fn, (last.Time - first.Time).Seconds()); err != nil {
		return err
	}
	side := math.Copysign(1, float64(first.Temperature.Sub(c.Air)))
	for i, r := range c.Readings {
		if err := limitLiquid.Check(fn, r.Temperature.Celsius()); err != nil {
			return err
		}
		distance := float64(r.Temperature.Sub(c.Air)) * side
		if distance < 0 {
			return noSolution(fn, "reading %d, {%.6g c}, is on the other side of the air's {%.6g c}; was the air steady?",
				i+1, r.Temperature.Celsius(), c.Air.Celsius())
		}
		if err := limitApproach.Check(fn, distance); err != nil {
			return err
		}
		if i > 0 && r.Time <= c.Readings[i-1].Time {
			return noSolution(fn, "reading %d is not later than the one before it", i+1)
		}
	}
	return nil
}

// noCalibrated is what a calibration returns beside an error.
func noCalibrated() Calibrated {
	n := math.NaN()
	return Calibrated{UA: Conductance(n), Uncertainty: Conductance(n), Scatter: Difference(n)}
}

// Band returns the interval of the conductance, in W/K, two standard
// deviations either way and not below 0.
func (r Calibrated) Band() volume.Band {
	source := "thermometer, scatter and air temperature, two standard deviations"
	if r.melted > 0 {
		source = "ice and water weighed wet, ±" + percent(meltBand)
	}
	return volume.Band{
		Name: "conductance", Low: math.Max(0, float64(r.UA-r.Uncertainty)), High: float64(r.UA + r.Uncertainty),
		Suffix: "w_per_k", Source: source,
	}
}

// Steps returns the working of the calibration.
func (r Calibrated) Steps() []volume.Step {
	if r.melted > 0 {
		return []volume.Step{
			{Name: "melted ice", Symbol: "m", Value: r.melted, Suffix: "kg", Source: "given"},
			{Name: "latent heat of ice", Symbol: "L", Value: water.LatentHeat, Suffix: "j_per_kg", Source: "IAPWS-06"},
			{Name: "air", Symbol: "T_air", Value: r.air, Suffix: "c", Source: "given"},
			{Name: "time", Symbol: "t", Value: r.during, Suffix: "s", Source: "given"},
			{Name: "conductance", Symbol: "UA", Value: float64(r.UA), Suffix: "w_per_k", Source: "m L/(T_air t)"},
		}
	}
	var steps []volume.Step
	for i, reading := range r.readings {
		steps = append(steps,
			volume.Step{Name: "time of a reading", Symbol: fmt.Sprintf("t%d", i+1), Value: reading.Time.Seconds(), Suffix: "s", Source: "given"},
			volume.Step{Name: "temperature", Symbol: fmt.Sprintf("T%d", i+1), Value: reading.Temperature.Celsius(), Suffix: "c", Source: "given"})
	}
	return append(steps,
		volume.Step{Name: "air", Symbol: "T_air", Value: r.air, Suffix: "c", Source: "given"},
		volume.Step{Name: "heat capacity of content and metal", Symbol: "C", Value: r.capacity, Suffix: "j_per_k", Source: fmt.Sprintf("ρ V c + m × %g J/(kg K)", steelHeat)},
		volume.Step{Name: "slope of ln |T − T_air|", Symbol: "k", Value: r.slope, Suffix: "per_s", Source: "least squares, weights (T − T_air)²; of two readings ln[(T1 − T_air)/(T2 − T_air)]/(t2 − t1)"},
		volume.Step{Name: "its standard deviation", Symbol: "s_k", Value: r.slopeError, Suffix: "per_s", Source: "thermometer or scatter, and air temperature"},
		volume.Step{Name: "time constant", Symbol: "τ", Value: r.TimeConstant.Seconds(), Suffix: "s", Source: "1/k"},
		volume.Step{Name: "conductance", Symbol: "UA", Value: float64(r.UA), Suffix: "w_per_k", Source: "k C"})
}
