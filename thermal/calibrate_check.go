package thermal

import (
	"fmt"
	"math"

	"example.com/pourwell/internal/water"
	"example.com/pourwell/volume"
)

var (
	limitReadings    = volume.Range{Name: "number of readings", Min: 2, Max: 10000, Source: "two points make a line"}
	limitSpan        = volume.Range{Name: "time between first and last", Min: 60, Max: 30 * 86400, Suffix: "s", Source: "a minute to 30 days"}
	limitApproach    = volume.Range{Name: "distance of a reading from the air", Min: 0.5, Max: 60, Suffix: "k", Source: "nearer, a thermometer's error outweighs the reading"}
	limitContent     = volume.Range{Name: "content", Min: 0.1, Max: 1000, Suffix: "l", Source: "from a bottle to a tank"}
	limitMetal       = volume.Range{Name: "mass of metal", Min: 0, Max: 200, Suffix: "kg", Source: "vessels of the trade"}
	limitThermometer = volume.Range{Name: "error of the thermometer", Min: 0.001, Max: 5, Suffix: "k", Source: "from a laboratory's to none"}
	limitMelted      = volume.Range{Name: "melted ice", Min: 0.1, Max: 500, Suffix: "kg", Source: "from a handful to a bin"}
	limitMeltAir     = volume.Range{Name: "air around the ice", Min: 5, Max: 60, Suffix: "c", Source: "nearer 0 °C the difference is too uncertain"}
)

// check returns an error in the name of fn if the readings cannot be used.
func (c *Calibration) check(fn string) error {
	for _, x := range [...]struct {
		limit *volume.Range
		value float64
	}{
		{&limitReadings, float64(len(c.Readings))},
		{&limitAir, c.Air.Celsius()},
		{&limitContent, float64(c.Content) * 1e3},
		{&limitMetal, float64(c.Metal)},
		{&limitThermometer, float64(c.Thermometer)},
	} {
		if err := x.limit.Check(fn, x.value); err != nil {
			return err
		}
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
			return fmt.Errorf("%s: %w: reading %d, %s, is on the other side of the air's %s; was the air steady?",
				fn, volume.ErrNoSolution, i+1, onBothScales(r.Temperature), onBothScales(c.Air))
		}
		if err := limitApproach.Check(fn, distance); err != nil {
			return err
		}
		if i > 0 && r.Time <= c.Readings[i-1].Time {
			return fmt.Errorf("%s: %w: reading %d is not later than the one before it", fn, volume.ErrNoSolution, i+1)
		}
	}
	return nil
}

// Band returns the interval of the conductance, in W/K, two standard
// deviations either way and not below 0.
func (r Calibrated) Band() volume.Band {
	source := "thermometer, scatter and air temperature, two standard deviations"
	if r.melted > 0 {
		source = "ice and water weighed wet, ±10 %"
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
		volume.Step{Name: "heat capacity of content and metal", Symbol: "C", Value: r.capacity, Suffix: "j_per_k", Source: "ρ V c + m × 477 J/(kg K)"},
		volume.Step{Name: "slope of ln |T − T_air|", Symbol: "k", Value: r.slope, Suffix: "per_s", Source: "least squares, weights (T − T_air)²; of two readings ln[(T1 − T_air)/(T2 − T_air)]/(t2 − t1)"},
		volume.Step{Name: "its standard deviation", Symbol: "s_k", Value: r.slopeError, Suffix: "per_s", Source: "thermometer or scatter, and air temperature"},
		volume.Step{Name: "time constant", Symbol: "τ", Value: r.TimeConstant.Seconds(), Suffix: "s", Source: "1/k"},
		volume.Step{Name: "conductance", Symbol: "UA", Value: float64(r.UA), Suffix: "w_per_k", Source: "k C"})
}

// noCalibrated is what a calibration returns beside an error.
func noCalibrated() Calibrated {
	n := math.NaN()
	return Calibrated{UA: Conductance(n), Uncertainty: Conductance(n), Scatter: Difference(n)}
}
