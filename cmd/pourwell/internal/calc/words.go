package calc

import (
	"fmt"
	"strings"

	"example.com/pourwell/internal/quantity"
)

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
	"abv": "alcohol", "co2": "CO2", "temp": "temperature", "fg": "final gravity", "og": "original gravity", "gravity": "final gravity", "ua": "UA",
	"loss-k": "K of entrance, barbs and jet", "full": "keg filled to",
}
