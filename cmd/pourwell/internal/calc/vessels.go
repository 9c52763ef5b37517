package calc

import (
	"fmt"
	"strings"

	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

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
	if hint := Suggest(text, names); hint != "" {
		return hint
	}
	known := "us-pint"
	if kind == "vessel" {
		known = "us-sixth"
	}
	return fmt.Sprintf("type %s, or a name such as %s; pourwell help names lists them", quantity.Volume.Example(), known)
}
