package carbonation

import (
	"cmp"
	"math"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// Exposure limits, as shares of CO2 in the air one breathes. Sources: OSHA, 29
// CFR 1910.1000 table Z-1, and ACGIH, threshold limit values, both 0.5 % over 8
// h; ACGIH 3 % over 15 min; NIOSH 1996, 4 % immediately dangerous to life or
// health; all read as quoted in secondary sources.
const (
	limit8h    = 0.005
	limit15min = 0.03
	dangerous  = 0.04
)

// deficient is the share of oxygen below which air is deficient. Source: OSHA,
// 29 CFR 1910.146(b), from memory.
const deficient = 0.195

// Ordinary air: 420 ppm of CO2.
const (
	co2InAir   = 420e-6
	roomKelvin = 20 + iceKelvin
)

// RoomAir is the air of a closed room into which a whole cylinder has emptied:
// the answer of [Supply.IntoRoom]. It is never a permission to do without
// ventilation and a detector, and local code rules.
type RoomAir struct {
	CO2Share    float64     // 0 to 1, well mixed; the floor is worse
	OxygenShare float64     // 0 to 1; ordinary air has 0.2095
	Gas         unit.Volume // that the cylinder's CO2 fills at 20 °C and the air's pressure
	For8h       unit.Volume // room that would keep well-mixed CO2 at 0.5 %
	For15min    unit.Volume // room that would keep it at 3 %

	Over8h    bool // above 0.5 %, the limit over 8 h of OSHA and ACGIH
	Over15min bool // above 3 %, the limit over 15 min of ACGIH
	Dangerous bool // above 4 %, immediately dangerous to life or health by NIOSH
	Deficient bool // less than 19.5 % of oxygen, deficient by OSHA

	room       unit.Volume
	supply     Supply
	gasDensity float64
}

// IntoRoom returns the air of a closed room of that volume after one whole
// cylinder of the supply has emptied into it, well mixed, while as much air as
// gas came in went out through the gaps.
//
//	x = 1 − (1 − x0) exp(−V_gas/V)
//	room for x = V_gas / ln((1 − x0)/(1 − x))
//
// CO2 is half as heavy again as air and pools: the floor, a pit, a cellar or a
// cooler are worse than the answer.
//
// Valid for rooms from 0.5 m³; outside the ranges of [Limits] or for an invalid
// argument IntoRoom returns a [*RangeError] and a RoomAir of NaN.
//
// Source: dilution of a well-mixed volume; the virial equation, B of [1].
func (s Supply) IntoRoom(room unit.Volume) (RoomAir, error) {
	const fn = "carbonation.Supply.IntoRoom"
	nan := math.NaN()
	none := RoomAir{CO2Share: nan, OxygenShare: nan, Gas: unit.Volume(nan), For8h: unit.Volume(nan), For15min: unit.Volume(nan)}
	err := cmp.Or(limitAir.Check(fn, s.Air.KPa()), limitCharge.Check(fn, float64(s.Charge)), limitRoom.Check(fn, float64(room)))
	if err != nil {
		return none, err
	}
	r := RoomAir{supply: s, room: room, gasDensity: gasDensity(roomKelvin, s.Air.pascal)}
	r.Gas = unit.Volume(float64(s.Charge) / r.gasDensity)
	stays := math.Exp(-float64(r.Gas / room))
	r.CO2Share = 1 - (1-co2InAir)*stays
	r.OxygenShare = oxygenInAir * stays
	needed := func(limit float64) unit.Volume {
		return r.Gas / unit.Volume(math.Log((1-co2InAir)/(1-limit)))
	}
	r.For8h, r.For15min = needed(limit8h), needed(limit15min)
	r.Over8h, r.Over15min, r.Dangerous = r.CO2Share > limit8h, r.CO2Share > limit15min, r.CO2Share > dangerous
	r.Deficient = r.OxygenShare < deficient
	return r, nil
}

// Steps returns the working: enough to redo the sum by hand.
func (r RoomAir) Steps() []volume.Step {
	return []volume.Step{
		{Name: "CO2 released", Symbol: "m", Value: float64(r.supply.Charge), Suffix: "kg", Source: "given"},
		{Name: "density of CO2 gas", Symbol: "ρ", Value: r.gasDensity, Suffix: "kg_per_m3", Source: "at 20 °C and the air's pressure, virial equation"},
		{Name: "gas released", Symbol: "V_gas", Value: float64(r.Gas), Suffix: "m3", Source: "m/ρ"},
		{Name: "room", Symbol: "V", Value: float64(r.room), Suffix: "m3", Source: "given"},
		{Name: "CO2 share", Symbol: "x", Value: r.CO2Share, Source: "1 − (1 − 0.00042) exp(−V_gas/V)"},
		{Name: "oxygen share", Symbol: "x_O2", Value: r.OxygenShare, Source: "0.20946 exp(−V_gas/V)"},
		{Name: "room for 0.5 %", Symbol: "V_8h", Value: float64(r.For8h), Suffix: "m3", Source: "V_gas/ln((1 − 0.00042)/(1 − 0.005))"},
		{Name: "room for 3 %", Symbol: "V_15min", Value: float64(r.For15min), Suffix: "m3", Source: "V_gas/ln((1 − 0.00042)/(1 − 0.03))"},
	}
}

// Band returns the interval of the CO2 share: from the answer, well mixed, to
// the gas lying unmixed on the floor.
func (r RoomAir) Band() volume.Band {
	return volume.Band{
		Name: "CO2 share", Low: r.CO2Share, High: 1,
		Source: "well mixed at best; CO2 pools at floor level, where it can be nearly pure",
	}
}

// Verdict says which of the limits the mixed air passes.
func (r RoomAir) Verdict() volume.Sentence {
	switch {
	case r.Dangerous:
		return "That is immediately dangerous to life."
	case r.Over15min:
		return "That is above the limit for 15 minutes: nobody may stay."
	case r.Over8h:
		return "That is above the limit for a working day."
	}
	return "That is below the limit for a working day where it mixes; at the floor it can be far above."
}

// Cautions says what can hurt someone, whatever the answer: the limits, that
// none of it is a permission, and what to do. The limits are a danger where one
// of them is passed.
func (r RoomAir) Cautions() []volume.Remark {
	limits := caution(ExposureLimit, "Limits in the air people breathe: %g %% over 8 h (OSHA, ACGIH), %g %% over 15 min (ACGIH), %g %%"+
		" immediately dangerous to life or health (NIOSH).", 100*limit8h, 100*limit15min, 100*dangerous)
	if r.Over8h {
		limits.Severity = volume.Danger
	}
	all := []volume.Remark{limits}
	if r.Deficient {
		all = append(all, danger(ExposureLimit, "Air with less than %g %% of oxygen is deficient (OSHA): besides the CO2 it takes a breathing apparatus, and training.", 100*deficient))
	}
	return append(
		all,
		caution(Suffocation, "This is never a permission to do without ventilation and a CO2 detector at floor level with its alarm outside; local code and the"+
			" supplier's rules come first."),
		caution(Suffocation, "CO2 is heavier than air and collects at the floor, in cellars, pits and coolers, far above the figure here. If an alarm sounds or someone"+
			" is down, do not go in: get out, call for help, air the place from outside."),
	)
}

// Notes says what the answer rests on.
func (r RoomAir) Notes() []volume.Remark {
	return []volume.Remark{note(Method, "Well mixed is the best that can happen. Before it mixes the gas lies near the floor, where it can be nearly pure.")}
}
