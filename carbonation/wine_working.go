package carbonation

import (
	"math"

	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// wineSpread is the uncertainty of the formula away from 20 °C, as a share.
const wineSpread = 0.05

// Steps returns the working of [Wine.ContentAt] for the wine at temperature t
// under the absolute partial pressure p: enough to redo the sum by hand. An
// invalid argument gives NaN in the steps that rest on it.
func (w Wine) Steps(t thermal.Temperature, p Pressure) []volume.Step {
	law := math.Exp(lnHenry(t.Kelvin()) - lnHenry(20+iceKelvin))
	c := w.perPascal(t.Kelvin()) * p.Pascals()
	return []volume.Step{
		{Name: "temperature", Symbol: "T", Value: t.Kelvin(), Suffix: "k", Source: "given"},
		{Name: "CO2 pressure", Symbol: "p", Value: p.KPa(), Suffix: "kpa_abs", Source: "gauge and air pressure"},
		{Name: "alcohol", Symbol: "A", Value: 100 * w.ABV, Suffix: "percent_by_volume", Source: "given"},
		{Name: "sugar", Symbol: "S", Value: w.Sugar, Suffix: "g_per_l", Source: "given"},
		{Name: "temperature law", Symbol: "K0(T)/K0(20 °C)", Value: law, Source: "Weiss 1974 eq. 12"},
		{Name: "content", Symbol: "c", Value: c, Suffix: "g_per_l", Source: "c = 1.951e-5 p (0.86 − 0.01 A)(1 − 0.00144 S) K0(T)/K0(20 °C), p in Pa, Regulation (EEC) No 2676/90"},
		{Name: "content", Symbol: "v", Value: c / gramsPerLitrePerVolume, Suffix: "volumes", Source: "v = c / 1.9768 g/L"},
	}
}

// Band returns the uncertainty of a content c that the wine holds, 5 %.
func (w Wine) Band(c Content) volume.Band {
	return volume.Band{
		Name: "content", Low: (1 - wineSpread) * c.Volumes(), High: (1 + wineSpread) * c.Volumes(), Suffix: "volumes",
		Source: "the regulation's formula at 20 °C, its temperature law from water",
	}
}

// Cautions says what can hurt someone when the wine stands under g: a high
// pressure, and glass.
func (w Wine) Cautions(g Gauge) []volume.Remark {
	if !(g.Pascals() > 0) {
		return nil
	}
	return append(HighPressure(g), caution(Bursting, "Under {%v kpa} glass can burst and throw splinters: bottles for still wine are made for no pressure,"+
		" sparkling ones for what their maker states. Keep it cold, and open it away from faces.", g.KPa()))
}

// Notes says what the answer for the wine under g rests on.
func (w Wine) Notes(g Gauge) []volume.Remark {
	return append(
		belowAir(g, "wine"),
		note(Method, "Regulation (EEC) No 2676/90, within 5 %%: on its own drink only."),
		note(AtRest, "At rest it settles there in a week or more, not in an afternoon."),
	)
}
