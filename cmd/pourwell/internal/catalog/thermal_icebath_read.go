package catalog

import (
	"fmt"
	"strings"
	"time"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// usualWater is in the tub where nothing is said of it: that of
// thermal.DefaultIceBath.
const usualWater = "15L"

func readIceBath(in *calc.Values) (thermal.IceBath, error) {
	around, err := surroundings(in)
	if err != nil {
		return thermal.IceBath{}, err
	}
	if err := readSky(in, &around); err != nil {
		return thermal.IceBath{}, err
	}
	b := thermal.DefaultIceBath(in.Vessel("keg"), in.Temperature("from"), around)
	if b.Beer, err = in.Beer(); err != nil {
		return b, err
	}
	b.Drained, b.Stirred = in.On("drained"), in.On("stirred")
	switch {
	case b.Drained && in.Given("water"):
		return b, &calc.UsageError{What: "--drained lets the water run off, and --water puts it in", Hint: "drop one of them"}
	case !b.Drained && !in.Given("water"):
		if err := in.Suppose("water", usualWater); err != nil {
			return b, err
		}
	}
	b.Kegs, b.Fill = in.Count("kegs"), in.Number("full")
	b.Ice, b.IceFrom = in.Mass("ice"), in.Temperature("ice-temp")
	b.Water = 0
	if !b.Drained {
		b.Water = in.Volume("water")
	}
	b.WaterFrom, b.Salt = in.Temperature("water-temp"), in.Number("salt")
	b.Tub = volume.Tub{Capacity: in.Volume("tub"), Height: in.Length("tub-height")}
	b.Wall, b.Lid = in.Length("wall"), in.On("lid")
	if in.On("foam") {
		b.Conductivity = thermal.ChestFoam
	}
	b.UA = thermal.Conductance(in.Or("ua", 0))
	for _, text := range in.Texts("pour") {
		p, err := readPour(text)
		if err != nil {
			return b, usage("pour", err)
		}
		b.Pours = append(b.Pours, p)
	}
	for _, text := range in.Texts("top-up") {
		u, err := readTopUp(text)
		if err != nil {
			return b, usage("top-up", err)
		}
		b.TopUps = append(b.TopUps, u)
	}
	return b, nil
}

// readPour reads AMOUNT:START-END, the amount a volume or a flow.
func readPour(text string) (thermal.Pour, error) {
	amount, when, ok := strings.Cut(text, ":")
	first, last, ok2 := strings.Cut(when, "-")
	if !ok || !ok2 {
		return thermal.Pour{}, &calc.UsageError{
			What: fmt.Sprintf("--pour %q is not AMOUNT:START-END", text), Hint: "for example --pour 15L:2h-7h, or --pour 4L/h:2h-7h",
		}
	}
	start, err := readTime(first)
	if err != nil {
		return thermal.Pour{}, err
	}
	end, err := readTime(last)
	if err != nil {
		return thermal.Pour{}, err
	}
	if flow, err := quantity.Parse(quantity.Flow, amount); err == nil {
		return thermal.Flow(flow).Between(start, end), nil
	}
	total, err := quantity.Parse(quantity.Volume, amount)
	if err != nil {
		return thermal.Pour{}, err
	}
	p := thermal.Pour{Start: start, End: end}
	assign(&p.Volume, total)
	return p, nil
}

// readTopUp reads AMOUNT:WHEN.
func readTopUp(text string) (thermal.TopUp, error) {
	amount, when, ok := strings.Cut(text, ":")
	if !ok {
		return thermal.TopUp{}, &calc.UsageError{What: fmt.Sprintf("--top-up %q is not AMOUNT:WHEN", text), Hint: "for example --top-up 10lb:3h"}
	}
	ice, err := quantity.Parse(quantity.Mass, amount)
	if err != nil {
		return thermal.TopUp{}, err
	}
	at, err := readTime(when)
	if err != nil {
		return thermal.TopUp{}, err
	}
	u := thermal.TopUp{At: at}
	assign(&u.Ice, ice)
	return u, nil
}

// assign sets a linear quantity to an SI number.
func assign[Q ~float64](to *Q, si float64) { *to = Q(si) }

func readTime(text string) (time.Duration, error) {
	s, err := quantity.Parse(quantity.Time, text)
	return quantity.Seconds(s), err
}
