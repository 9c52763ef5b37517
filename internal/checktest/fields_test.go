package checktest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const box = `package box

import (
	"time"

	"gonum.org/v1/gonum/unit"
)

type Box struct {
	Wide  unit.Length
	Times []time.Duration
	Temp  Warmth
	Inner Part
	Name  string
	depth float64
}

type Warmth struct {
	kelvin float64
	valid  bool
}

type Part struct{ Weight float64 }

type Answer struct{ Weight float64 }

func (Box) Fill(to float64) Answer { return Answer{} }
func (Answer) Steps() []string     { return nil }
func Make(size float64) Box        { return Box{} }
func hidden(size float64)          {}
`

func TestFieldsFinds(t *testing.T) {
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{"box.go": box, "go.mod": "module box\n"} {
		if err := os.WriteFile(filepath.Join(".", name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	row := func(name, fields string) span { return span{Name: name, Max: 1, Fields: fields} }
	whole := row("all", "Box.Wide Box.Temp Box.Inner.Weight Box.Fill.to Make.size Answer.Weight Box.Times")
	for _, c := range []struct {
		rows   []span
		except map[string]string
		want   string
	}{
		{[]span{whole}, nil, ""},
		{[]span{whole, row("sum", "")}, map[string]string{"sum": "of two"}, ""},
		{[]span{row("some", "Box.Wide")}, map[string]string{"Box.Temp": "later"}, ""},
		{[]span{whole, row("sum", "")}, nil, `row "sum" bounds ""`},
		{[]span{whole, row("twice", "Box.Wide")}, nil, `Box.Wide stands in the rows "all" and "twice"`},
		{[]span{whole}, map[string]string{"Box.Wide": "no"}, `Box.Wide stands in row "all", and is excepted`},
		{[]span{whole}, map[string]string{"Box.High": "no"}, `"Box.High" is excepted and does not exist`},
		{[]span{row("some", "Box.Wide")}, nil, `Box.Temp stands in row ""`},
		{[]span{whole, row("x", "Box.High")}, nil, "Box.High, which does not exist"},
		{[]span{whole, row("x", "Box.depth")}, nil, "Box.depth, which does not exist"},
		{[]span{whole, row("x", "hidden.size")}, nil, "hidden.size, which does not exist"},
		{[]span{whole, row("x", "Box.Fill.from")}, nil, "Box.Fill.from, which does not exist"},
		{[]span{whole, row("x", "Box.Fill")}, nil, "Box.Fill, which does not exist"},
	} {
		said := says(func(t *tape) { Fields(t, c.rows, c.except) })
		if !strings.Contains(said, c.want) || c.want == "" && said != "" {
			t.Errorf("%v, except %v: says %q, want %q", c.rows, c.except, said, c.want)
		}
	}
}
