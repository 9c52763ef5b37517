package catalog

import (
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/air"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/lines"
	"example.com/pourwell/thermal"
)

// servingInputs are the gas in the beer and what the line passes through.
func servingInputs() []calc.Input {
	return append([]calc.Input{
		{Name: "co2", Kind: quantity.Content, Help: "CO2 in the beer", Limit: "lines.Serving.Content"},
		{Name: "insulation", Kind: quantity.Length, Default: "0mm", Help: "thickness of foam around the line", Limit: "thermal: insulation"},
		{Name: "line-temp", Kind: quantity.Temperature, Help: "of the beer in the line, where it was measured", Limit: "lines.Serving.LineTemp"},
		{Name: "bath", Kind: quantity.Text, Choices: []string{"still", "packed", "pumped"}, Help: "ice water around every coiled tube: left alone, packed with ice or stirred by hand, or pumped"},
		{Name: "bath-temp", Kind: quantity.Temperature, Help: "water beside the coil, if measured", Limit: "thermal: bath temperature"},
	}, surroundingInputs()...)
}

// creviceInput is the radius of the crevices that bubbles grow from.
var creviceInput = calc.Input{
	Name: "crevice", Kind: quantity.Length, Help: "radius of the crevices that bubbles grow from, 4um to 13um; 5um if not given",
	Limit: "lines.Serving.Crevice",
}

// readServing returns the serving that the inputs describe.
func readServing(in *calc.Values) (lines.Serving, error) {
	s := lines.DefaultServing(in.Gauge("gauge"), in.Content("co2"))
	var err error
	if s.Air, err = in.Air(); err != nil {
		return s, err
	}
	if in.Given("air") {
		s.Around = thermal.Shade(in.Temperature("air"))
		s.Around.Humidity = in.Or("humidity", s.Around.Humidity)
		s.Around.Sun = thermal.Irradiance(in.Or("sun", 0))
		assign(&s.Around.Wind, in.Or("wind", 0))
		assign(&s.Around.Altitude, air.Altitude(s.Air.Pascals()))
	}
	s.LineTemp = in.Temperature("line-temp")
	assign(&s.Insulation, in.Or("insulation", 0))
	switch in.Text("bath") {
	case "still":
		s.Chiller = thermal.DefaultCoil().Still()
	case "packed":
		s.Chiller = thermal.DefaultCoil().Packed()
	case "pumped":
		s.Chiller = thermal.DefaultCoil().Pumped()
	}
	if in.Calculation().Name != "flow" && in.Given("crevice") {
		s.Crevice = in.Length("crevice")
	}
	if in.Given("bath-temp") {
		if !in.Given("bath") {
			return s, &calc.UsageError{What: "--bath-temp needs --bath", Hint: "add --bath still, packed or pumped"}
		}
		s.Chiller.Bath = in.Temperature("bath-temp")
	}
	return s, nil
}
