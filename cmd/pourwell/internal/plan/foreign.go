package plan

import (
	"errors"
	"fmt"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"github.com/pelletier/go-toml/v2/unstable"
)

// mostLines is how many lines of keys and tables a file may have: a menu of as
// many beers as there may be, with every key, has fewer. The time that the TOML
// reader takes to tell of unknown keys grows with the square of their number.
const mostLines = 5000

// foreign checks every text of a file before any of it is used: names and the
// like are printed as they stand. It counts the beers, too, before there is
// memory for them. What is no TOML is left to the reader of the day.
func foreign(name string, data []byte) error {
	var p unstable.Parser
	p.Reset(data)
	tables := 0
	for lines := 1; p.NextExpression(); lines++ {
		if p.Expression().Kind == unstable.ArrayTable { // a [[beer]]: a day lists nothing else
			tables++
			if err := fewBeers(tables); err != nil {
				return err
			}
		}
		if lines > mostLines {
			return &FileError{name, 0, fmt.Sprintf("has more than %d lines of keys and tables", mostLines), "check that it is the file meant"}
		}
		if err := foreignIn(name, "", &p, p.Expression()); err != nil {
			return err
		}
	}
	return nil
}

// fewBeers holds the number of beers against its row.
func fewBeers(n int) error { return within("volume.Crowd.Menu.beers", float64(n)) }

// foreignIn checks the texts of node, the value of key.
func foreignIn(name, key string, p *unstable.Parser, node *unstable.Node) error {
	switch node.Kind {
	case unstable.String:
		var wrong *calc.UsageError
		if errors.As(calc.CheckWords(key, string(node.Data)), &wrong) {
			return &FileError{name, p.Shape(node.Raw).Start.Line, wrong.What, wrong.Hint}
		}
		return nil
	case unstable.KeyValue:
		for keys := node.Key(); keys.Next(); {
			key = string(keys.Node().Data)
		}
		return foreignIn(name, key, p, node.Value())
	case unstable.Array, unstable.InlineTable:
		for all := node.Children(); all.Next(); {
			if err := foreignIn(name, key, p, all.Node()); err != nil {
				return err
			}
		}
	}
	return nil
}
