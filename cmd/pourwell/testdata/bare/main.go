// Command bare is the yardstick for the start of pourwell: a program of the
// same parser with as many commands, each with a dozen flags, that does nothing.
package main

import (
	"fmt"

	"github.com/alecthomas/kong"
)

type flags struct {
	Temp      string `help:"one"`
	Gauge     string `help:"two"`
	Content   string `help:"three"`
	Share     string `help:"four"`
	Keg       string `help:"five"`
	From      string `help:"six"`
	To        string `help:"seven"`
	Air       string `help:"eight"`
	Humidity  string `help:"nine"`
	Elevation string `help:"ten"`
	Units     string `help:"eleven" enum:"us,metric,both" default:"both"`
	Explain   bool   `help:"twelve"`
}

type eight struct {
	A flags `cmd:"" help:"a"`
	B flags `cmd:"" help:"b"`
	C flags `cmd:"" help:"c"`
	D flags `cmd:"" help:"d"`
	E flags `cmd:"" help:"e"`
	F flags `cmd:"" help:"f"`
	G flags `cmd:"" help:"g"`
	H flags `cmd:"" help:"h"`
}

func main() {
	var cli struct {
		One   eight `cmd:"" help:"one"`
		Two   eight `cmd:"" help:"two"`
		Three eight `cmd:"" help:"three"`
		Four  eight `cmd:"" help:"four"`
	}
	ctx := kong.Parse(&cli)
	fmt.Println(ctx.Command())
}
