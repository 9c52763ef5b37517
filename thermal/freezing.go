package thermal

import (
	"example.com/pourwell/internal/solve"
	"example.com/pourwell/volume"
)

// FreezingPoint returns the temperature at which ice begins to form in the
// beer, with A the alcohol in percent by mass and OE the original extract in
// degrees Plato:
//
//	t_f = −(0.42 A + 0.04 OE + 0.2) °C
//
// within 0.4 K. The 0.2 stands for salts and dissolved gas; below 5 °P it falls
// in proportion to OE, so that water freezes at 0 °C.
//
// Source: the rule of the brewing trade, from memory. It is also printed with
// the signs of the last two terms reversed, which would put beer of 5 % at
// −1.0 °C, above the −1.6 °C of its alcohol alone (Lange's Handbook of
// Chemistry, 15th ed.) and so cannot be right.
func (b Beer) FreezingPoint() Temperature {
	oe := b.OriginalExtract()
	return Celsius(-(ethanolDepression*b.ABW() + 0.04*oe + 0.2*min(1, oe/5)))
}

// ethanolDepression is by how much 1 % by mass of ethanol lowers the freezing
// point, K.
const ethanolDepression = 0.42

// densest returns the temperature, °C, at which the beer is densest.
func (b Beer) densest() float64 {
	slope := func(c float64) float64 { return b.density(c+0.01) - b.density(c-0.01) }
	c, ok := solve.Root(slope, -20, 6, 1e-3)
	if !ok {
		return -20 // strong beer has no maximum above the range of its density
	}
	return c
}

// checkLiquid refuses a temperature at which the beer is frozen or its
// properties are not known.
func (b Beer) checkLiquid(fn, name string, t Temperature) error {
	if err := limitLiquid.Check(fn, t.Celsius()); err != nil {
		return err
	}
	r := volume.Range{
		Name: name, Min: b.FreezingPoint().Celsius(), Max: limitLiquid.Max, Suffix: "c",
		Source: "this beer freezes at the lower end",
	}
	return r.Check(fn, t.Celsius())
}

// freezes returns an error in the name of fn if beer would come to t, below its
// freezing point.
func (b Beer) freezes(fn string, t Temperature) error {
	freezing := b.FreezingPoint()
	if t.Sub(freezing) >= 0 {
		return nil
	}
	return noSolution(fn, "the beer would come to {%.6g c}, below its freezing point of {%.6g c}", t.Celsius(), freezing.Celsius())
}
