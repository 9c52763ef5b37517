package sweep

import (
	"cmp"
	"fmt"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
)

// A grid gives the combinations of its axes in pieces.
type grid struct {
	axes        []*Axis
	total, done int
}

func newGrid(axes []*Axis) (*grid, error) {
	g := &grid{axes: axes, total: 1}
	for _, a := range axes {
		if g.total > mostRows/a.Len() {
			return nil, &calc.UsageError{What: fmt.Sprintf("the ranges make more than %d rows", mostRows), Hint: "take larger steps"}
		}
		g.total *= a.Len()
	}
	return g, nil
}

// mostRows keeps the product of several long ranges countable.
const mostRows = 1 << 30

func (g *grid) next() (job, error) {
	if g.done == g.total {
		return nil, nil
	}
	n := min(piece(g.done), g.total-g.done)
	g.done += n
	return &combinations{g.axes, g.done - n, n}, nil
}

// piece is how many rows the next worker takes: few at first, so that all
// workers have some even of a short sweep.
func piece(done int) int { return min(1+done/16, 512) }

// combinations are n rows of a grid from the given one on.
type combinations struct {
	axes    []*Axis
	from, n int
}

func (c *combinations) len() int { return c.n }

func (c *combinations) fill(i int, v *calc.Values) error { return setRank(c.axes, c.from+i, v) }

func (c *combinations) text(int, int) string { return "" }

// setRank puts the combination of the given rank into v, the last axis
// changing fastest.
func setRank(axes []*Axis, rank int, v *calc.Values) error {
	for k := len(axes) - 1; k >= 0; k-- {
		n := axes[k].Len()
		if err := axes[k].set(v, rank%n); err != nil {
			return err
		}
		rank /= n
	}
	return nil
}

// corners are the combinations of the first, middle and last values.
type corners struct{ axes []*Axis }

func (c *corners) len() int {
	n := 1
	for range c.axes {
		n *= 3
	}
	return min(n, 243)
}

func (c *corners) fill(i int, v *calc.Values) error {
	for _, a := range c.axes {
		at := [...]int{0, a.Len() / 2, a.Len() - 1}[i%3]
		if err := a.set(v, at); err != nil {
			return err
		}
		i /= 3
	}
	return nil
}

func (c *corners) text(int, int) string { return "" }

// shown keeps the answers named, in that order; all if none are.
func shown(answers []Column, show []string, c *calc.Calculation) ([]Column, error) {
	if len(show) == 0 {
		return answers, nil
	}
	var kept []Column
	var keys []string
	for _, a := range answers {
		keys = append(keys, a.Key)
	}
	for _, key := range show {
		found := false
		for _, a := range answers {
			if a.Key == key {
				kept, found = append(kept, a), true
			}
		}
		if !found && len(answers) > 0 {
			hint := cmp.Or(calc.Suggest(key, keys), "there are "+strings.Join(keys, ", "))
			return nil, &calc.UsageError{What: fmt.Sprintf("--show: %q is no answer of %s", key, c.Title()), Hint: hint}
		}
	}
	return kept, nil
}
