package calc

import (
	"slices"
	"strings"

	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

// An Input is one thing a calculation asks for.
type Input struct {
	Name    string        // as typed after --, for example "cylinder-temp"
	Kind    quantity.Kind // what the text must be
	Default string        // taken, and stated as an assumption, when nothing is typed; "" for none
	Help    string        // a few words, no full stop
	Choices []string      // for Text: the words allowed
	Named   string        // "vessel" or "glass": a Volume that may also be typed by name
	Limit   string        // the row of a package's validity table, by the field it bounds: "volume.Tub.Height"
	Repeat  bool          // may be typed several times; the order counts
	Key     string        // key in the JSON inputs where Name and Kind do not give the right one

	limit volume.Range // of Limit; set by Ready
}

// Range returns the range of the input's package, and whether it has one.
func (in *Input) Range() (r volume.Range, ok bool) { return in.limit, in.limit.Name != "" }

// InputKey returns the key of the input in JSON and CSV: its name in
// snake_case with the unit suffix of its kind.
func (in *Input) InputKey() string {
	if in.Key != "" {
		return in.Key
	}
	key := strings.ReplaceAll(in.Name, "-", "_")
	suffix, _ := quantity.Suffix(in.Kind, 0)
	if suffix == "" || in.Named != "" || key == suffix || strings.HasSuffix(key, "_"+suffix) {
		return key
	}
	return key + "_" + suffix
}

// A Key is one answer of a calculation: its name in JSON and CSV, whose suffix
// gives the unit, and its label in text.
type Key struct {
	Key   string
	Label string // "" for the key's own words
}

// A Calculation describes one calculation of one package.
type Calculation struct {
	Package  string           // "carbonation", "thermal", "lines" or "volume"
	Name     string           // one word of small letters, for example "equilibrium"
	Summary  string           // one line of help
	Detail   string           // a paragraph of help
	Examples []string         // at least two command lines, without the program's name, that read every input between them
	Inputs   []Input          // its own; Ready adds those of Shared
	Shared   []func() []Input // groups of further ones, which other calculations have too
	NoAir    bool             // the air pressure does not enter the calculation; else its inputs are added
	Results  []Key            // in the order of the answer

	// Run reads the inputs, calls the package and fills the result. It may be
	// called many times with the same arguments refilled, and by several
	// goroutines with arguments of their own.
	Run func(in *Values, out *Result) error

	all []Input // Inputs and the shared ones; set by Ready
}

// Title returns the words that select the calculation: "carbonation
// equilibrium".
func (c *Calculation) Title() string { return c.Package + " " + c.Name }

// Ready completes the description and returns it. It must be called once
// before the calculation is used.
func (c *Calculation) Ready() *Calculation {
	if c.all == nil {
		for _, group := range c.Shared {
			c.Inputs = slices.Concat(c.Inputs, group())
		}
		c.all = slices.Clone(c.Inputs)
		if !c.NoAir {
			c.all = append(c.all, airInputs...)
		}
		for i := range c.all {
			if in := &c.all[i]; in.Limit != "" {
				in.limit = Limit(in.Limit)
			}
		}
	}
	return c
}

// AllInputs returns the inputs of c, the shared ones last.
func (c *Calculation) AllInputs() []Input { return c.all }

// index returns the position of the input called name, or -1.
func (c *Calculation) index(name string) int {
	for i := range c.all {
		if c.all[i].Name == name {
			return i
		}
	}
	return -1
}

// InputNames returns the names of all inputs.
func (c *Calculation) InputNames() []string {
	names := make([]string, len(c.all))
	for i := range c.all {
		names[i] = c.all[i].Name
	}
	return names
}
