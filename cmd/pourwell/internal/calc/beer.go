package calc

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
)

// BeerInputs describe the beer. A calculation that needs one shares them and
// reads them with [Values.Beer].
func BeerInputs() []Input {
	return []Input{
		{Name: "abv", Kind: quantity.Share, Default: "5%", Key: "abv_share", Limit: "thermal: alcohol by volume", Help: "alcohol by volume"},
		{Name: "fg", Kind: quantity.Number, Limit: "thermal: final gravity", Help: "final gravity; 1.010 if not given"},
		{Name: "og", Kind: quantity.Number, Help: "original gravity, instead of --fg"},
	}
}

// Beer returns the beer the inputs describe: --abv with --fg or --og.
func (v *Values) Beer() (thermal.Beer, error) {
	abv := v.Number("abv")
	switch {
	case v.Given("fg") && v.Given("og"):
		return thermal.Beer{}, &UsageError{"--fg and --og are given, one describes the beer", "drop --og"}
	case v.Given("fg"):
		return thermal.BeerOf(abv, v.Number("fg"))
	case v.Given("og"):
		return thermal.BeerFromOriginal(abv, v.Number("og"))
	case !v.Given("abv"):
		return thermal.Beer{}, nil
	}
	return thermal.BeerOf(abv, thermal.Beer{}.FinalGravity())
}

// Draught returns the beer the inputs describe on pure CO2 in the air they
// describe.
func (v *Values) Draught() (carbonation.Draught, error) {
	air, err := v.Air()
	if err != nil {
		return carbonation.Draught{}, err
	}
	beer, err := v.Beer()
	return carbonation.Draught{Beer: beer, Air: air, CO2Share: 1}, err
}
