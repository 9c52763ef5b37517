package catalog

import (
	"fmt"
	"strings"
	"time"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
)

// clearSkyInput gives the sun by place and time.
var clearSkyInput = calc.Input{
	Name: "clear-sky", Kind: quantity.Text,
	Help: "instead of --sun: LATITUDE,MONTH-DAY,HOUR by the sun, such as 52N,07-18,14",
}

// readSky sets the sun of a clear sky if --clear-sky was given.
func readSky(in *calc.Values, around *thermal.Surroundings) error {
	text := in.Text("clear-sky")
	if text == "" {
		return nil
	}
	if in.Given("sun") {
		return &calc.UsageError{What: "--sun and --clear-sky are given, one describes the sun", Hint: "drop one of them"}
	}
	bad := &calc.UsageError{
		What: fmt.Sprintf("--clear-sky %q is not LATITUDE,MONTH-DAY,HOUR", text),
		Hint: "for example --clear-sky 52N,07-18,14; clocks in summer run one to two hours ahead of the sun",
	}
	parts := strings.Split(text, ",")
	if len(parts) != 3 {
		return bad
	}
	place, south := strings.CutSuffix(strings.TrimSpace(parts[0]), "S")
	latitude, err := quantity.Parse(quantity.Number, strings.TrimSuffix(place, "N"))
	if err != nil {
		return bad
	}
	if south {
		latitude = -latitude
	}
	day, err := time.Parse("01-02", strings.TrimSpace(parts[1]))
	if err != nil {
		return bad
	}
	hour, err := quantity.Parse(quantity.Number, strings.TrimSuffix(strings.TrimSpace(parts[2]), "h"))
	if err != nil {
		return bad
	}
	around.Sun, err = thermal.ClearSky(latitude, float64(day.YearDay()), hour)
	return err
}
