package thermal

import (
	"maps"
	"testing"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

func hours(v float64) time.Duration { return time.Duration(v * float64(time.Hour)) }

// A trier tries all that reads a value.
type trier = func(v float64) []trial

// A setter puts a value into what its methods name, and tries it.
type setter struct{ t testing.TB }

func (on setter) coil(set func(c *Coil, v float64)) trier {
	return func(v float64) []trial { return coilTrials(func(c *Coil, _ *Temperature, _ *Pours) { set(c, v) }) }
}

func (on setter) line(set func(l *Line, v float64)) trier {
	return func(v float64) []trial {
		return lineTrials(func(l *Line, _ *Temperature, _ *Flow, _ *time.Duration) { set(l, v) })
	}
}

func (on setter) plate(set func(p *Plate, v float64)) trier {
	return func(v float64) []trial {
		return plateTrials(func(p *Plate, _ *Temperature, _ *Pours, _ *unit.Mass) { set(p, v) })
	}
}

func (on setter) bath(set func(b *IceBath, v float64)) trier {
	return func(v float64) []trial { return bathTrials(on.t, func(b *IceBath) { set(b, v) }) }
}

func (on setter) keg(set func(k *Keg, v float64)) trier {
	return func(v float64) []trial { return kegTrials(on.t, func(k *Keg) { set(k, v) }) }
}

func (on setter) around(set func(s *Surroundings, v float64)) trier {
	return func(v float64) []trial { return aroundTrials(on.t, func(s *Surroundings) { set(s, v) }) }
}

func (on setter) vessels(set func(b *volume.Vessel, v float64)) trier {
	return func(v float64) []trial { return vesselTrials(on.t, func(b *volume.Vessel) { set(b, v) }) }
}

func (on setter) calibration(set func(c *Calibration, v float64)) trier {
	return func(v float64) []trial { return calibrationTrials(on.t, func(c *Calibration) { set(c, v) }) }
}

func (on setter) pours(set func(p *Pours, v float64)) trier {
	return func(v float64) []trial {
		all := coilTrials(func(_ *Coil, _ *Temperature, p *Pours) { set(p, v) })
		return append(all, plateTrials(func(_ *Plate, _ *Temperature, p *Pours, _ *unit.Mass) { set(p, v) })...)
	}
}

func joined(fs ...trier) trier {
	return func(v float64) (all []trial) {
		for _, f := range fs {
			all = append(all, f(v)...)
		}
		return all
	}
}

func melts(air func(v float64) (Conductance, Temperature, time.Duration)) trier {
	return func(v float64) []trial {
		u, a, d := air(v)
		m, err := u.Melts(a, d)
		return []trial{tried("Conductance.Melts", m, err)}
	}
}

func melted(of func(v float64) (unit.Mass, Temperature, time.Duration)) trier {
	return func(v float64) []trial {
		r, err := MeltedIce(of(v))
		return []trial{tried("MeltedIce", r, err)}
	}
}

func sky(of func(v float64) (lat, day, hour float64)) trier {
	return func(v float64) []trial {
		g, err := ClearSky(of(v))
		return []trial{tried("ClearSky", g, err)}
	}
}

// setters put a value where each row of Limits is checked, and try all that
// reads it.
func setters(t testing.TB) map[string]trier {
	on, all := setter{t}, map[string]trier{}
	for _, rows := range []map[string]trier{
		on.beerRows(), on.surroundingsRows(), on.kegRows(), on.bathRows(), on.tubeRows(), on.glassRows(), on.readingRows(),
	} {
		maps.Copy(all, rows)
	}
	return all
}
