package sweep

import (
	"fmt"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// cells are some rows of a file.
type cells struct {
	columns []fileColumn
	rows    []fileRow
}

func (c *cells) len() int { return len(c.rows) }

// fill puts the i'th row into v, what can be read of it, and returns what is
// wrong with the first cell that cannot.
func (c *cells) fill(i int, v *calc.Values) error {
	row, first := c.rows[i].cells, c.rows[i].err
	if first != nil {
		return first
	}
	if len(row) != len(c.columns) {
		return &calc.UsageError{What: fmt.Sprintf("the row has %d cells, the header %d", len(row), len(c.columns))}
	}
	for k, column := range c.columns {
		if column.input == nil {
			if err := calc.CheckText(column.name, row[k]); err != nil && first == nil {
				first = err
			}
			continue
		}
		if c.earlier(k) {
			continue
		}
		texts := c.texts(row, k)
		if len(texts) == 0 {
			continue
		}
		if err := v.SetText(column.name, texts...); err != nil && first == nil {
			first = err
		}
	}
	return first
}

// earlier reports whether column k repeats one before it.
func (c *cells) earlier(k int) bool {
	for _, before := range c.columns[:k] {
		if before.name == c.columns[k].name {
			return true
		}
	}
	return false
}

// texts returns what row gives for the input of column k, from all columns of
// its name.
func (c *cells) texts(row []string, k int) []string {
	var texts []string
	for n := k; n < len(row); n++ {
		column := c.columns[n]
		text := strings.TrimSpace(row[n])
		if column.name != c.columns[k].name || text == "" {
			continue
		}
		if column.input.Kind == quantity.Switch {
			text = switched(text)
		}
		if column.unit != "" {
			text = withUnit(text, column.unit)
		}
		texts = append(texts, text)
	}
	return texts
}

// switched reads the words people put in a cell for yes.
func switched(text string) string {
	switch strings.ToLower(text) {
	case "yes", "y", "on", "true", "1", "x":
		return "true"
	}
	return "false"
}

// text returns a cell that is copied, without one that must not be shown.
func (c *cells) text(i, column int) string {
	if row := c.rows[i].cells; column < len(row) && calc.CheckText("", row[column]) == nil {
		return row[column]
	}
	return ""
}
