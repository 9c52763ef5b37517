package catalog

import (
	"fmt"
	"strings"
	"time"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
)

var plate = calc.Calculation{
	Package: "thermal",
	Name:    "plate",
	Summary: "a plate under ice: how cold it pours, and when to let the melt water off",
	Detail: "How the ice lies on the plate decides: pressed on and drained, loose cubes, or flooded by its own melt" +
		" water. The answers are good to a factor of 2 in that contact. A plate suits beer that is cool already.",
	Examples: []string{
		"thermal plate --inlet 50F --flow 2oz/s --contact pressed --ice 20lb",
		"thermal plate --size 25x38cm --passage 5.5m --bore 6.5mm --inlet 12C --flow 3L/min --contact loose --every 1min",
	},
	Inputs: []calc.Input{
		{Name: "inlet", Kind: quantity.Temperature, Help: "beer as it enters", Limit: "thermal.Plate.Chill.inlet"},
		{Name: "contact", Kind: quantity.Text, Default: "pressed", Choices: []string{"pressed", "loose", "flooded"}, Help: "crushed ice pressed on, loose cubes, or standing in melt water"},
		{Name: "size", Kind: quantity.Text, Default: "25x38cm", Help: "face that the ice lies on"},
		{Name: "plate-mass", Kind: quantity.Mass, Default: "8kg", Help: "mass of the aluminium", Limit: "thermal.Plate.Mass"},
		{Name: "passage", Kind: quantity.Length, Default: "5.5m", Help: "length of the tube inside", Limit: "thermal.Plate.Passage"},
		{Name: "bore", Kind: quantity.Length, Default: "6.5mm", Help: "inside diameter of the tube", Limit: "thermal.Plate.Bore"},
		{Name: "flow", Kind: quantity.Flow, Default: "2oz/s", Help: "while the tap is open", Limit: "thermal.Pours.Flow"},
		{Name: "ice", Kind: quantity.Mass, Default: "10kg", Help: "ice on the plate", Limit: "thermal.Plate.DrainDue.ice"},
		{Name: "glass", Kind: quantity.Volume, Named: "glass", Default: "16oz", Help: "beer in a glass", Limit: "thermal.Pours.Glass"},
		{Name: "every", Kind: quantity.Time, Default: "2min", Help: "from the start of one glass to the next", Limit: "thermal.Pours.Every"},
	},
	Shared: []func() []calc.Input{calc.BeerInputs},
	NoAir:  true,
	Results: []calc.Key{
		{Key: "outlet_c", Label: "without a rest"},
		{Key: "first_glass_c", Label: "first glass"},
		{Key: "tenth_glass_c", Label: "tenth glass in a row"},
		{Key: "recovery_s", Label: "recovers in"},
		{Key: "drain_due_s", Label: "let the water off after"},
		{Key: "block_c", Label: "block without a rest"},
		{Key: "ice_kg_per_l", Label: "ice for the beer"},
		{Key: "ice_kg_per_h", Label: "ice at this pace"},
		{Key: "steady_ice_kg_per_h", Label: "ice without a rest"},
		{Key: "holdup_l", Label: "beer in the plate"},
		{Key: "reynolds", Label: "Reynolds number"},
		{Key: "ua_w_per_k", Label: "heat per kelvin (UA)"},
		{Key: "ntu", Label: "transfer units (NTU)"},
		{Key: "effectiveness", Label: "effectiveness"},
		{Key: "coil_outlet_c", Label: "a usual coil instead"},
		{Key: "coil_tenth_glass_c", Label: "  its tenth glass"},
	},
	Run: runPlate,
}

func runPlate(in *calc.Values, out *calc.Result) error {
	if err := in.Require("inlet"); err != nil {
		return err
	}
	p, err := readPlate(in)
	if err != nil {
		return err
	}
	pours, inlet := readPours(in), in.Temperature("inlet")
	r, err := p.Chill(inlet, pours.Flow)
	if err != nil {
		return err
	}
	s, err := p.Serve(inlet, pours)
	if err != nil {
		return nameEvery(err)
	}
	out.Band("outlet_c", r.Band)
	out.Band("tenth_glass_c", s.Band)
	out.Put("outlet_c", r.Outlet)
	out.Working(r.Steps)
	setService(out, s, pours)
	if err := setDrain(in, out, p, pours); err != nil {
		return err
	}
	setPlate(out, r)
	out.Remark(r.Notes())
	setCoilInstead(in, out, p.Beer, pours)
	out.Remark(r.Cautions())
	return nil
}

func readPlate(in *calc.Values) (thermal.Plate, error) {
	p := thermal.DefaultPlate().Pressed()
	switch in.Text("contact") {
	case "loose":
		p = p.Loose()
	case "flooded":
		p = p.Flooded()
	}
	width, depth, err := readSize(in.Text("size"))
	if err != nil {
		return p, err
	}
	assign(&p.Width, width)
	assign(&p.Depth, depth)
	p.Mass, p.Passage, p.Bore = in.Mass("plate-mass"), in.Length("passage"), in.Length("bore")
	p.Beer, err = in.Beer()
	return p, err
}

// readSize reads two lengths such as 25x38cm, in metres; a first one without a
// unit has that of the second.
func readSize(text string) (width, depth float64, err error) {
	first, second, ok := strings.Cut(text, "x")
	if !ok {
		return 0, 0, &calc.UsageError{What: fmt.Sprintf("--size %q is not two lengths", text), Hint: "for example --size 25x38cm or --size 10x15in"}
	}
	first, second = strings.TrimSpace(first), strings.TrimSpace(second)
	if strings.Trim(first, "0123456789./ ") == "" {
		first += strings.TrimLeft(second, "0123456789./ ")
	}
	if width, err = quantity.Parse(quantity.Length, first); err == nil {
		depth, err = quantity.Parse(quantity.Length, second)
	}
	return width, depth, usage("size", err)
}

func setPlate(out *calc.Result, r thermal.PlateChill) {
	out.Put("block_c", r.Block)
	out.Put("steady_ice_kg_per_h", calc.PerHour(r.IcePerHour))
	out.Put("holdup_l", r.HoldUp)
	out.Put("reynolds", r.Reynolds)
	out.Put("ua_w_per_k", r.UA)
	out.Put("ntu", r.NTU)
	out.Put("effectiveness", r.Effectiveness)
}

// setDrain sets when the melt water must be let off.
func setDrain(in *calc.Values, out *calc.Result, p thermal.Plate, pours thermal.Pours) error {
	if in.Text("contact") == "flooded" {
		out.Put("drain_due_s", time.Duration(0)) // the plate says so
		return nil
	}
	due, err := p.DrainDue(in.Temperature("inlet"), pours, in.Mass("ice"))
	if err != nil {
		return err
	}
	out.Put("drain_due_s", due)
	out.Note("With the drain shut the melt water carries half of the ice's weight after {drain_due_s} of this serving, sooner in the sun;" +
		" an open drain and ice pushed down now and then keep the contact.")
	return nil
}

// setCoilInstead sets what a coil would do with the same beer and glasses, or
// says why it does not.
func setCoilInstead(in *calc.Values, out *calc.Result, beer thermal.Beer, pours thermal.Pours) {
	c := thermal.DefaultCoil().Packed()
	c.Beer = beer
	what := fmt.Sprintf("A coil of {%.5g m} packed in ice and water, fed the same,", float64(c.Length))
	s, err := c.Serve(in.Temperature("inlet"), pours)
	if err != nil {
		out.Note(what + " has no answer: " + whyNot(err) + ".")
		return
	}
	out.Put("coil_outlet_c", s.Sustained)
	out.Put("coil_tenth_glass_c", s.Last)
	out.Note(what + " pours the tenth glass at {coil_tenth_glass_c} and without a rest at {coil_outlet_c}.")
}
