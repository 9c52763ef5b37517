package sweep

import (
	"errors"
	"fmt"
	"math"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// product is a calculation whose answer and slopes are known: area = length ×
// width, and the number of tiles, a whole number, that cover it.
func product() *calc.Calculation {
	c := &calc.Calculation{
		Package: "test", Name: "floor",
		Inputs: []calc.Input{
			{Name: "length", Kind: quantity.Length},
			{Name: "width", Kind: quantity.Length, Default: "2m"},
			{Name: "tiles", Kind: quantity.Count},
			{Name: "waste", Kind: quantity.Share, Default: "0%"},
			{Name: "motion", Kind: quantity.Text, Choices: []string{"still", "carried"}},
			{Name: "keg", Kind: quantity.Volume, Named: "vessel"},
			{Name: "tube", Kind: quantity.Text, Repeat: true},
			{Name: "lid", Kind: quantity.Switch},
		},
		Run: func(in *calc.Values, out *calc.Result) error {
			if err := in.Require("length"); err != nil {
				return err
			}
			length, width := in.Number("length"), in.Number("width")
			if length > 100 {
				return &volume.RangeError{Func: "test", Name: "length", Value: length, Max: 100, Suffix: "m"}
			}
			out.Set("area", length*width*(1+in.Number("waste")))
			out.Set("length_m", length)
			out.Set("tiles_left", in.Or("tiles", math.NaN()))
			out.SetText("motion", in.Text("motion"))
			if length > 50 {
				out.Caution(fmt.Sprintf("{%v m} is long.", length))
			}
			return nil
		},
	}
	return c.Ready()
}

// balance is the content of CO2 at a temperature and a gauge pressure.
func balance() *calc.Calculation {
	c := &calc.Calculation{
		Package: "test", Name: "balance",
		Inputs: []calc.Input{
			{Name: "temp", Kind: quantity.Temperature, Limit: "carbonation.Supply.Temperature"},
			{Name: "gauge", Kind: quantity.Gauge},
		},
		Run: func(in *calc.Values, out *calc.Result) error {
			air, err := in.Air()
			if err != nil {
				return err
			}
			c, err := carbonation.ContentAt(in.Temperature("temp"), in.Gauge("gauge").Absolute(air), thermal.Beer{})
			out.Set("co2_volumes", c.Volumes())
			return err
		},
	}
	return c.Ready()
}

func typed(pairs ...string) []calc.Typed {
	var all []calc.Typed
	for i := 0; i < len(pairs); i += 2 {
		all = append(all, calc.Typed{Name: pairs[i], Texts: []string{pairs[i+1]}})
	}
	return all
}

func isUsage(err error) bool {
	var usage *calc.UsageError
	return errors.As(err, &usage)
}
