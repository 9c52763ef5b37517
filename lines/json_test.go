package lines

import (
	"encoding"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// parameters are the structures that a program fills and may keep or send.
var parameters = []any{
	volume.Bar{}, volume.Crowd{}, volume.Cylinder{}, volume.Glass{}, volume.Pour{}, volume.Tub{}, volume.Vessel{},
	thermal.Calibration{}, thermal.Coil{}, thermal.Glassful{}, thermal.IceBath{}, thermal.Keg{}, thermal.Line{}, thermal.Plate{},
	thermal.Pour{}, thermal.Pours{}, thermal.Reading{}, thermal.Surroundings{}, thermal.TopUp{}, thermal.Upkeep{},
	carbonation.AirPump{}, carbonation.Draught{}, carbonation.Sealed{}, carbonation.Supply{}, carbonation.Wine{},
	Fitting{}, Hardware{}, Observation{}, Run{}, Serving{}, Tube{},
}

// TestParametersComeBack writes every parameter structure with random values as
// JSON, and every opaque quantity in it as text, and demands that they come back
// equal, invalid quantities among them.
func TestParametersComeBack(t *testing.T) {
	for _, p := range parameters {
		typ := reflect.TypeOf(p)
		t.Run(typ.String(), func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				value, back := reflect.New(typ), reflect.New(typ)
				fill(t, value.Elem(), typ.String())
				raw, err := json.Marshal(value.Interface())
				if err != nil {
					t.Fatal(err)
				}
				if err := json.Unmarshal(raw, back.Interface()); err != nil {
					t.Fatalf("%s: %v", raw, err)
				}
				if !reflect.DeepEqual(value.Interface(), back.Interface()) {
					t.Fatalf("%s comes back as %+v", raw, back.Elem())
				}
			})
		})
	}
}

// parts are structures that no program fills: of results, or of tables.
var parts = []string{
	"volume.Band", "volume.Range", "volume.Remark", "volume.Step", "volume.Drinks", "thermal.Sample", "lines.Finding", "lines.Station", "lines.TubeFlow",
	"volume.Choice", // holds a result, the yield of a keg
}

// TestParametersAreListed finds the structures that show fields and are no
// results, in the listings of what the packages export.
func TestParametersAreListed(t *testing.T) {
	listed := slices.Clone(parts)
	for _, p := range parameters {
		listed = append(listed, reflect.TypeOf(p).String())
	}
	for _, pkg := range []string{"volume", "thermal", "carbonation", "lines"} {
		api, err := os.ReadFile(filepath.Join("..", "testdata", "api", pkg+".txt"))
		if err != nil {
			t.Fatal(err)
		}
		results := regexp.MustCompile(`(?m)^func \(\w* ?\*?(\w+)\) (Steps\(\)|Error\(\))`)
		var isResult []string
		for _, m := range results.FindAllStringSubmatch(string(api), -1) {
			isResult = append(isResult, m[1])
		}
		for _, m := range regexp.MustCompile(`(?m)^type (\w+) struct, `).FindAllStringSubmatch(string(api), -1) {
			if name := pkg + "." + m[1]; !slices.Contains(isResult, m[1]) && !slices.Contains(listed, name) {
				t.Errorf("%s is neither listed nor a part of a result", name)
			}
		}
	}
}

var textual = reflect.TypeFor[encoding.TextUnmarshaler]()

// fill sets v, and what it holds, to random values that a program could set.
func fill(t *rapid.T, v reflect.Value, name string) {
	number := func() float64 { return rapid.Float64Range(-1e6, 1e6).Draw(t, name) }
	share := func() float64 { return rapid.Float64Range(0, 1).Draw(t, name) }
	set := func(x any) { v.Set(reflect.ValueOf(x)) }
	switch v.Interface().(type) {
	case thermal.Temperature:
		set(thermal.Kelvin(number())) // below 0 invalid
	case carbonation.Gauge:
		if number() > 0 {
			set(carbonation.PaG(number()))
		}
	case carbonation.Pressure:
		set(carbonation.PaA(number()))
	case carbonation.Content:
		set(carbonation.GramsPerLitre(number()))
	case thermal.Beer:
		b, err := thermal.BeerOf(0.2*share(), 1+0.05*share())
		if err != nil {
			b = thermal.Water()
		}
		set(b)
	case Tube:
		if !strings.HasSuffix(name, ".DipTube") || number() > 0 {
			set(Tube{
				Bore: unit.Length(0.001 + 0.05*share()), Length: unit.Length(300 * share()), Wall: unit.Length(0.02 * share()),
				Coil: unit.Length(share()), Roughness: unit.Length(1e-4 * share()), Material: rapid.SampledFrom([]string{"", "vinyl", "stainless"}).Draw(t, name),
			})
		}
	case Hardware:
		set(Hardware{Loss: unit.Pressure(number()), At: Flow(share())})
	case Flow:
		set(Flow(share() / 1e3))
	case carbonation.Container:
		set(rapid.SampledFrom([]carbonation.Container{carbonation.Growler, carbonation.Bottle, carbonation.Can, carbonation.Keg}).Draw(t, name))
	case time.Duration:
		set(time.Duration(number() * 1e9))
	default:
		switch v.Kind() {
		case reflect.Float64:
			v.SetFloat(number())
		case reflect.Int:
			v.SetInt(int64(number()))
		case reflect.Int64, reflect.Uint8:
			t.Fatalf("%s is of a kind that is not filled", name)
		case reflect.Bool:
			v.SetBool(number() > 0)
		case reflect.String:
			v.SetString(rapid.StringMatching(`[a-z ]{0,8}`).Draw(t, name))
		case reflect.Slice:
			if n := rapid.IntRange(0, 2).Draw(t, name); n > 0 {
				v.Set(reflect.MakeSlice(v.Type(), n, n))
			}
			for i := range v.Len() {
				fill(t, v.Index(i), name)
			}
		case reflect.Struct:
			if v.Addr().Type().Implements(textual) {
				t.Fatalf("%s is opaque and not filled", name)
			}
			for i := range v.NumField() {
				if f := v.Type().Field(i); f.IsExported() {
					fill(t, v.Field(i), name+"."+f.Name)
				}
			}
		default:
			t.Fatalf("%s is a %s", name, v.Kind())
		}
	}
}
