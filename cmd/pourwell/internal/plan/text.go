package plan

import (
	"strings"
	"time"

	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// The types below read quantities as text. The zero value of each has no
// value, so that what the file leaves out can be told from zero.
type (
	quantityOf struct {
		si  float64
		set bool
	}
	length      struct{ quantityOf }
	volumeOf    struct{ quantityOf }
	mass        struct{ quantityOf }
	share       struct{ quantityOf }
	number      struct{ quantityOf }
	count       struct{ quantityOf }
	span        struct{ quantityOf }
	speed       struct{ quantityOf }
	irradiance  struct{ quantityOf }
	conductance struct{ quantityOf }
)

func (q *quantityOf) read(k quantity.Kind, text []byte) error {
	v, err := quantity.Parse(k, string(text))
	if err != nil {
		return err
	}
	*q = quantityOf{v, true}
	return nil
}

// or sets q to si, in its SI unit, if it has no value, and reports whether it
// did.
func (q *quantityOf) or(si float64) bool {
	if q.set {
		return false
	}
	*q = quantityOf{si, true}
	return true
}

func (l *length) UnmarshalText(text []byte) error     { return l.read(quantity.Length, text) }
func (v *volumeOf) UnmarshalText(text []byte) error   { return v.read(quantity.Volume, text) }
func (m *mass) UnmarshalText(text []byte) error       { return m.read(quantity.Mass, text) }
func (s *share) UnmarshalText(text []byte) error      { return s.read(quantity.Share, text) }
func (n *number) UnmarshalText(text []byte) error     { return n.read(quantity.Number, text) }
func (c *count) UnmarshalText(text []byte) error      { return c.read(quantity.Count, text) }
func (t *span) UnmarshalText(text []byte) error       { return t.read(quantity.Time, text) }
func (s *speed) UnmarshalText(text []byte) error      { return s.read(quantity.Speed, text) }
func (i *irradiance) UnmarshalText(text []byte) error { return i.read(quantity.Irradiance, text) }

func (c *conductance) UnmarshalText(text []byte) error { return c.read(quantity.Conductance, text) }

func (l length) length() unit.Length   { return unit.Length(l.si) }
func (v volumeOf) volume() unit.Volume { return unit.Volume(v.si) }
func (m mass) mass() unit.Mass         { return unit.Mass(m.si) }
func (c count) int() int               { return quantity.Whole(c.si) }
func (t span) duration() time.Duration { return quantity.Seconds(t.si) }

// named is a keg or glass: its trade name, or its size.
type named struct {
	text string
	size unit.Volume
}

func (n *named) UnmarshalText(text []byte) error {
	s := strings.TrimSpace(string(text))
	if _, ok := volume.VesselNamed(s); ok {
		*n = named{text: s}
		return nil
	}
	if _, ok := volume.GlassNamed(s); ok {
		*n = named{text: s}
		return nil
	}
	v, err := quantity.Parse(quantity.Volume, s)
	if err != nil {
		return err
	}
	*n = named{text: s, size: unit.Volume(v)}
	return nil
}

func (n named) vessel() volume.Vessel {
	if v, ok := volume.VesselNamed(n.text); ok {
		return v
	}
	return volume.VesselOf(n.size)
}

func (n named) glass() volume.Glass {
	if g, ok := volume.GlassNamed(n.text); ok {
		return g
	}
	return volume.GlassOf(n.size)
}
