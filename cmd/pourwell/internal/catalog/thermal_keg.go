package catalog

import (
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/air"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
)

var kegInAir = calc.Calculation{
	Package: "thermal",
	Name:    "keg",
	Summary: "a keg in air: how fast it warms in shade or sun, or cools in a refrigerator",
	Detail: "Give --to for the time, or --for for the temperature. Dew heats a keg as much as the air does" +
		" on a humid day, so the humidity counts.",
	Examples: []string{
		"thermal keg --keg 5gal --from 38F --to 48F --air 86F --humidity 20%",
		"thermal keg --keg us-half --from 3C --for 3h --air 31C --sun 800W/m2 --jacket 10mm",
	},
	Inputs: []calc.Input{
		{Name: "keg", Kind: quantity.Volume, Named: "vessel", Help: "keg by name or volume", Limit: "thermal.Keg.Vessel.Capacity"},
		{Name: "from", Kind: quantity.Temperature, Help: "beer at the start", Limit: "thermal.Keg.From"},
		{Name: "to", Kind: quantity.Temperature, Help: "beer at the end, to find the time", Limit: "thermal.Keg.Reach.to"},
		{Name: "for", Kind: quantity.Time, Help: "time, to find the beer at the end", Limit: "thermal.Keg.After.d"},
		{Name: "surface", Kind: quantity.Text, Default: "bare", Choices: []string{"bare", "painted"}, Help: "clean steel, or painted, rubber or dull"},
		{Name: "jacket", Kind: quantity.Length, Default: "0mm", Help: "thickness of a foam jacket around the side", Limit: "thermal.Keg.Jacket"},
		{Name: "full", Kind: quantity.Share, Default: "100%", Help: "share of the keg that holds beer", Limit: "thermal.Keg.Fill"},
		{Name: "fan", Kind: quantity.Speed, Default: "0m/s", Help: "air past the keg from a fan, as in a refrigerator", Limit: "thermal.Surroundings.Wind"},
		{Name: "ua", Kind: quantity.Conductance, Help: "measured heat per kelvin, from thermal calibrate", Limit: "thermal.Keg.UA"},
		{Name: "car", Kind: quantity.Switch, Help: "in the boot of a closed car that stands in this air and sun"},
		clearSkyInput,
	},
	Shared: []func() []calc.Input{surroundingInputs, calc.BeerInputs},
	Results: []calc.Key{
		{Key: "time_s", Label: "time"},
		{Key: "temperature_c", Label: "beer"},
		{Key: "settles_c", Label: "settles at"},
		{Key: "ua_w_per_k", Label: "heat per kelvin (UA)"},
		{Key: "heat_w", Label: "heat into the beer"},
		{Key: "dew_g_per_h", Label: "water dripping off"},
		{Key: "dew_heat_share", Label: "heat that dew brings"},
		{Key: "around_c", Label: "air around the keg"},
		{Key: "sun_w_per_m2", Label: "sun on level ground there"},
	},
	Run: runKeg,
}

// surroundingInputs are those of everything that stands in air.
func surroundingInputs() []calc.Input {
	return []calc.Input{
		{Name: "air", Kind: quantity.Temperature, Help: "air temperature in the shade", Limit: "thermal.Surroundings.Air"},
		{Name: "humidity", Kind: quantity.Share, Default: "50%", Help: "relative humidity of the air", Limit: "thermal.Surroundings.Humidity"},
		{Name: "sun", Kind: quantity.Irradiance, Default: "0W/m2", Help: "sun on level ground; 0 is shade, 800W/m2 a clear noon", Limit: "thermal.Surroundings.Sun"},
		{Name: "wind", Kind: quantity.Speed, Default: "0m/s", Help: "wind past it", Limit: "thermal.Surroundings.Wind"},
	}
}

// surroundings reads them.
func surroundings(in *calc.Values) (thermal.Surroundings, error) {
	pressure, err := in.Air()
	if err != nil {
		return thermal.Surroundings{}, err
	}
	s := thermal.Shade(in.Temperature("air"))
	s.Humidity = in.Number("humidity")
	s.Sun = thermal.Irradiance(in.Number("sun"))
	assign(&s.Wind, in.Number("wind"))
	assign(&s.Altitude, air.Altitude(pressure.Pascals()))
	return s, nil
}

func runKeg(in *calc.Values, out *calc.Result) error {
	if err := in.Require("keg", "from", "air"); err != nil {
		return err
	}
	if err := in.Exactly(1, "to", "for"); err != nil {
		return err
	}
	keg, err := readKeg(in)
	if err != nil {
		return err
	}
	var w thermal.Warming
	if in.Given("to") {
		w, err = keg.Reach(in.Temperature("to"))
		out.Answer = "The beer takes {time_s} from {from_c} to {temperature_c}."
		out.Band("time_s", w.Band)
	} else {
		w, err = keg.After(in.Duration("for"))
		out.Answer = "After {time_s} the beer is at {temperature_c}."
		out.Band("temperature_c", w.Band)
	}
	if err != nil {
		return err
	}
	setWarming(out, w)
	setAround(out, keg.Around)
	out.Remark(w.Notes())
	if in.Given("clear-sky") {
		out.Note("The sun is that of a clear sky at that place and hour; clouds take half of it or more.")
	}
	if !in.Given("humidity") && !in.Given("ua") && w.Heat > 0 {
		out.Note("The humidity was not given: in dry air a bare keg warms about half as fast, on a muggy day faster still.")
	}
	out.Remark(w.Cautions())
	return nil
}

func readKeg(in *calc.Values) (thermal.Keg, error) {
	around, err := surroundings(in)
	if err != nil {
		return thermal.Keg{}, err
	}
	if fan := in.Number("fan"); fan > in.Number("wind") {
		assign(&around.Wind, fan)
	}
	if err := readSky(in, &around); err != nil {
		return thermal.Keg{}, err
	}
	if in.On("car") {
		around = around.InClosedCar()
	}
	keg := thermal.DefaultKeg(in.Vessel("keg"), in.Temperature("from"), around)
	if keg.Beer, err = in.Beer(); err != nil {
		return keg, err
	}
	keg.Fill = in.Number("full")
	keg.Jacket = in.Length("jacket")
	keg.UA = thermal.Conductance(in.Or("ua", 0))
	if in.Text("surface") == "painted" {
		keg.Surface = thermal.Painted
	}
	return keg, nil
}

func setWarming(out *calc.Result, w thermal.Warming) {
	out.Put("time_s", w.Time)
	out.Put("temperature_c", w.Temperature)
	out.Put("settles_c", w.Settles)
	out.Put("ua_w_per_k", w.UA)
	out.Put("heat_w", w.Heat)
	out.Put("dew_g_per_h", calc.PerHour(w.DewPerHour()))
	out.Put("dew_heat_share", w.DewHeatShare)
	out.Working(w.Steps)
	course := calc.Table{Key: "course", Columns: []string{"time_s", "temperature_c"}, Curve: true}
	for _, s := range w.Course(25) {
		course.Add(s.At, s.Beer)
	}
	out.Table(course)
}

// setAround tells the air and sun that the inputs came to.
func setAround(out *calc.Result, s thermal.Surroundings) {
	out.Put("around_c", s.Air)
	out.Put("sun_w_per_m2", s.Sun)
}
