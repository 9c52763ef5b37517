package calc

import (
	"fmt"
	"strings"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// airInputs give the air pressure around gauge and glass. Every calculation
// has them.
var airInputs = []Input{
	{Name: "elevation", Kind: quantity.Length, Limit: "carbonation: elevation", Help: "height above sea level, standard atmosphere; sea level if not given"},
	{Name: "station-pressure", Kind: quantity.Pressure, Limit: "carbonation: air pressure", Help: "air pressure as a barometer on the spot reads it"},
	{Name: "sea-level-pressure", Kind: quantity.Pressure, Limit: "carbonation: sea-level pressure", Help: "air pressure of a weather report, together with --elevation"},
}

// BeerInputs describe the beer. A calculation that needs one appends them to
// its inputs and reads them with [Values.Beer].
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

// Air returns the air pressure the inputs describe.
func (v *Values) Air() (carbonation.Pressure, error) {
	v.used = true
	elevation := quantity.Metres(v.Or("elevation", 0))
	station, sea := v.Has("station-pressure"), v.Has("sea-level-pressure")
	switch {
	case station && (sea || v.Given("elevation")):
		return carbonation.Pressure{}, &UsageError{
			"--station-pressure is the air pressure on the spot and needs no other",
			"drop --elevation and --sea-level-pressure",
		}
	case station:
		return v.pressure("station-pressure"), nil
	case sea && !v.Has("elevation"):
		return carbonation.Pressure{}, &UsageError{
			"--sea-level-pressure is a weather report's figure and needs the height",
			"add --elevation",
		}
	case sea:
		return v.pressure("sea-level-pressure").StationAt(elevation)
	}
	return carbonation.AirAt(elevation)
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

func (v *Values) pressure(name string) carbonation.Pressure {
	return carbonation.AbsoluteOf(quantity.Pascals(v.Number(name)))
}

// Vessel returns the vessel called name, typed by its trade name or as a
// volume.
func (v *Values) Vessel(name string) volume.Vessel {
	if text := v.Text(name); text != "" {
		if vessel, ok := volume.VesselNamed(text); ok {
			return vessel
		}
	}
	return volume.VesselOf(v.Volume(name))
}

// Glass returns the glass called name, typed by its trade name or as a volume.
func (v *Values) Glass(name string) volume.Glass {
	if text := v.Text(name); text != "" {
		if glass, ok := volume.GlassNamed(text); ok {
			return glass
		}
	}
	return volume.GlassOf(v.Volume(name))
}

// namedVolume returns the capacity in m³ of a vessel or glass typed by name or
// as a volume.
func namedVolume(kind, text string) (float64, error) {
	if kind == "vessel" {
		if vessel, ok := volume.VesselNamed(text); ok {
			return float64(vessel.Capacity), nil
		}
	} else if glass, ok := volume.GlassNamed(text); ok {
		return float64(glass.Volume), nil
	}
	si, err := quantity.Parse(quantity.Volume, text)
	if err != nil {
		return quantity.Missing(), &UsageError{
			What: fmt.Sprintf("%q is neither a %s by name nor a volume", text, kind),
			Hint: suggestNamed(kind, text),
		}
	}
	return si, nil
}

// Names returns the trade names of a kind of vessel: "vessel" or "glass".
func Names(kind string) []string {
	var names []string
	if kind == "vessel" {
		for _, v := range volume.Vessels() {
			names = append(names, v.Name)
		}
	} else {
		for _, g := range volume.Glasses() {
			names = append(names, g.Name)
		}
	}
	return names
}

// suggestNamed hints at the names that have text for one of their words, as
// us-pint and uk-pint have pint, or at one near it, or says where the names are.
func suggestNamed(kind, text string) string {
	names := Names(kind)
	word := "-" + strings.Join(strings.Fields(strings.ToLower(text)), "-") + "-"
	var alike []string
	for _, name := range names {
		if strings.Contains("-"+name+"-", word) {
			alike = append(alike, name)
		}
	}
	if len(alike) > 0 {
		return "did you mean " + join(alike, "or") + "?"
	}
	if hint := suggest(text, names); hint != "" {
		return hint
	}
	known := "us-pint"
	if kind == "vessel" {
		known = "us-sixth"
	}
	return fmt.Sprintf("type %s, or a name such as %s; pourwell help names lists them", quantity.Volume.Example(), known)
}

// Assumptions returns the defaults that v rests on, as "name value".
func (v *Values) Assumptions() []string {
	var all []string
	for i := range v.calc.all {
		in, c := &v.calc.all[i], &v.cells[i]
		if c.given || !c.set || in.Default == "" && !c.supposed || in.Name == "elevation" && !v.used {
			continue
		}
		words := in.Words()
		if in.Kind == quantity.Text || in.Named != "" {
			all = append(all, words+" "+c.texts[0])
			continue
		}
		suffix, value := quantity.Suffix(in.Kind, c.si)
		all = append(all, fmt.Sprintf("%s {%v %s}", words, value, suffix))
	}
	if v.calc.index("fg") >= 0 && !v.Given("fg") && !v.Given("og") {
		all = append(all, "final gravity 1.010")
	}
	if v.used && !v.Has("elevation") && !v.Given("station-pressure") {
		all = append(all, "sea level")
	}
	return all
}

// Words returns the input's name as words, such as "CO2 share".
func (in *Input) Words() string {
	if long, ok := longWords[in.Name]; ok {
		return long
	}
	words := strings.Split(in.Name, "-")
	for i, w := range words {
		if long, ok := longWords[w]; ok {
			words[i] = long
		}
	}
	return strings.Join(words, " ")
}

// longWords spells out what flags abbreviate.
var longWords = map[string]string{
	"abv": "alcohol", "co2": "CO2", "temp": "temperature", "fg": "final gravity", "og": "original gravity", "ua": "UA",
	"loss-k": "K of entrance, barbs and jet", "full": "keg filled to",
}

// NoteUnused adds a note to out if an air pressure was typed that the
// calculation did not read.
func (v *Values) NoteUnused(out *Result) {
	if !v.used && (v.Given("elevation") || v.Given("station-pressure") || v.Given("sea-level-pressure")) {
		out.Note("The air pressure does not enter this calculation.")
	}
}

// HighGauge is the gauge pressure, kPa, above which every answer carries the
// over-pressure caution: 30 psi, our choice, no source.
const HighGauge = 206.843

// OverPressure adds the over-pressure caution if a gauge pressure, in kPa, is
// above 30 psi.
func (r *Result) OverPressure(gaugeKPa float64) {
	if gaugeKPa > HighGauge {
		r.Caution(fmt.Sprintf("{%.5g kpa} is high for serving gear. Stay below the stamp on the keg, the line's and tap's ratings"+
			" and the relief valve; never defeat a relief valve.", gaugeKPa))
	}
}
