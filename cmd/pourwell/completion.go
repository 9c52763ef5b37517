package main

import (
	"os"
	"slices"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/internal/quantity"
	"github.com/posener/complete"
	"github.com/willabides/kongplete"
)

// complement answers a shell that asks what may come next, and reports whether
// one did. The shell says so in COMP_LINE; only then is the parser built with
// the flags of every calculation.
func complement() bool {
	if os.Getenv("COMP_LINE") == "" {
		return false
	}
	k, _, err := parserOf(catalog.All())
	if err != nil {
		return true
	}
	kongplete.Complete(k, kongplete.WithPredictors(predictors()), kongplete.WithExitFunc(func(int) {}))
	return true
}

// predictors gives the words that a flag may be completed with, by the name in
// the flag's tag.
func predictors() map[string]complete.Predictor {
	all := map[string]complete.Predictor{
		"csv":  complete.PredictFiles("*.csv"),
		"toml": complete.PredictFiles("*.toml"),
		"plot": complete.PredictOr(complete.PredictFiles("*.svg"), complete.PredictFiles("*.png")),
		"topic": complete.PredictFunc(func(complete.Args) []string {
			words := slices.Clone(topicNames())
			for _, c := range catalog.All() {
				words = append(words, c.Name)
			}
			return words
		}),
	}
	for _, c := range catalog.All() {
		for _, in := range c.Ready().AllInputs() {
			if words := choices(&in); words != nil {
				all[predictorName(c, &in)] = complete.PredictSet(words...)
			}
		}
	}
	return all
}

// choices returns the words that an input may be given, nil for a number.
func choices(in *calc.Input) []string {
	switch {
	case len(in.Choices) > 0:
		return in.Choices
	case in.Named != "":
		return calc.Names(in.Named)
	case in.Kind == quantity.Text && in.Name == "log":
		return nil
	}
	return nil
}

func predictorName(c *calc.Calculation, in *calc.Input) string {
	return c.Package + "-" + c.Name + "-" + in.Name
}

const helpCompletion = `Put the line of your shell into its start-up file.

  bash   complete -C pourwell pourwell
  zsh    autoload -U +X bashcompinit && bashcompinit
         complete -C pourwell pourwell
  fish   function __pourwell
             set -lx COMP_LINE (commandline -cp)
             test -z (commandline -ct); and set COMP_LINE "$COMP_LINE "
             pourwell
         end
         complete -f -c pourwell -a "(__pourwell)"
`
