package plan

import (
	"errors"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"github.com/pelletier/go-toml/v2/unstable"
)

// foreign checks every text of a file before any of it is used: names and the
// like are printed as they stand. What is no TOML is left to the reader of the
// day.
func foreign(name string, data []byte) error {
	var p unstable.Parser
	p.Reset(data)
	for p.NextExpression() {
		if err := foreignIn(name, "", &p, p.Expression()); err != nil {
			return err
		}
	}
	return nil
}

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
