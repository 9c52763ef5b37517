package catalog

import (
	"fmt"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

// pourInputs describe how beer gets from a keg into glasses.
func pourInputs() []calc.Input {
	return []calc.Input{
		{Name: "keg", Kind: quantity.Volume, Named: "vessel", Default: "us-sixth", Help: "the keg, by name or size", Limit: "volume.Vessel.Capacity"},
		{Name: "glass", Kind: quantity.Volume, Named: "glass", Default: "us-pint", Help: "the glass or growler, by name or size to the brim", Limit: "volume.Glass.Volume"},
		{Name: "glass-bore", Kind: quantity.Length, Help: "inside diameter of the glass at its head, such as 3.5in or 80mm; that of the glass named if not given", Limit: "volume.Glass.Bore"},
		{Name: "head", Kind: quantity.Text, Default: "1in", Help: "height of the head, or its share of the glass, as 5%"},
		{Name: "foam", Kind: quantity.Share, Default: "25%", Help: "liquid in a fresh head", Limit: "volume.Pour.Foam"},
		{Name: "heel", Kind: quantity.Share, Default: "1%", Help: "left in the keg below the dip tube", Limit: "volume.Pour.Heel"},
		{Name: "waste", Kind: quantity.Share, Default: "5%", Help: "spilt or foamed over", Limit: "volume.Pour.Waste"},
		{Name: "line", Kind: quantity.Text, Repeat: true, Help: "a tube left full at the end, as 3/16in:5ft"},
		{Name: "first-glass", Kind: quantity.Volume, Default: "0oz", Help: "poured away at the start", Limit: "volume.Pour.FirstGlass"},
	}
}

// readKegPour returns the pour that the inputs describe.
func readKegPour(in *calc.Values) (volume.Pour, error) {
	p := in.Vessel("keg").Into(in.Glass("glass"))
	if in.Given("glass-bore") {
		p.Glass.Bore, p.Glass.Sized, p.Glass.Source = in.Length("glass-bore"), volume.Law, "given"
	}
	p.Foam, p.Heel, p.Waste = in.Number("foam"), in.Number("heel"), in.Number("waste")
	if err := readText("head", in.Text("head"), headText{&p}); err != nil {
		return p, err
	}
	p.FirstGlass = in.Volume("first-glass")
	tubes, err := readTubes(in, "line")
	for _, t := range tubes {
		p.Line += t.Volume()
	}
	return p, err
}

// headText reads the head of a pour.
type headText struct{ pour *volume.Pour }

func (h headText) UnmarshalText(text []byte) error { return h.pour.ReadHead(string(text)) }

// noteHead says what the volume of the head rests on.
func noteHead(in *calc.Values, out *calc.Result, p volume.Pour) {
	if p.Head > 0 && !in.Given("glass-bore") {
		out.Note(fmt.Sprintf("The head stands in a bore of {%.4g mm} (%s): measure the glass and give --glass-bore for better.",
			float64(p.Glass.Bore/volume.Millimetre), p.Glass.Sized))
	}
}

// plural returns the word for n of it.
func plural(n int, word string) string {
	if n == 1 {
		return word
	}
	return word + "s"
}
