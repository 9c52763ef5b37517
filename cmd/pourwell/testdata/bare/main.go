// Command bare is the yardstick for the start of pourwell: a program of the
// same parser with as many commands and flags as the catalogue has, that does
// nothing.
package main

import (
	"fmt"

	"github.com/alecthomas/kong"
)

type flags struct {
	Temp     string `help:"one"`
	Gauge    string `help:"two"`
	Content  string `help:"three"`
	Share    string `help:"four"`
	Keg      string `help:"five"`
	From     string `help:"six"`
	To       string `help:"seven"`
	Air      string `help:"eight"`
	Humidity string `help:"nine"`
	Height   string `help:"ten"`
	Tub      string `help:"eleven"`
	Ice      string `help:"twelve"`
	Water    string `help:"thirteen"`
	Sun      string `help:"fourteen"`
	Wind     string `help:"fifteen"`
	Lid      bool   `help:"sixteen"`
}

type five struct {
	A flags `cmd:"" help:"a"`
	B flags `cmd:"" help:"b"`
	C flags `cmd:"" help:"c"`
	D flags `cmd:"" help:"d"`
	E flags `cmd:"" help:"e"`
}

type two struct {
	F flags `cmd:"" help:"f"`
	G flags `cmd:"" help:"g"`
}

func main() {
	var cli struct {
		Units   string `help:"one" enum:"us,metric,both" default:"both"`
		Format  string `help:"two" enum:"text,json,csv" default:"text"`
		Explain bool   `help:"three"`
		Plot    string `help:"four"`
		Input   string `help:"five"`
		Show    string `help:"six"`
		Rows    string `help:"seven"`
		Samples int    `help:"eight"`
		Seed    int    `help:"nine" default:"1"`

		One struct {
			five
			two
			H flags `cmd:"" help:"h"`
			I flags `cmd:"" help:"i"`
		} `cmd:"" help:"one"`
		Two struct {
			five
			two
		} `cmd:"" help:"two"`
		Three struct {
			five
			H flags `cmd:"" help:"h"`
		} `cmd:"" help:"three"`
		Four  five `cmd:"" help:"four"`
		Event struct {
			File string `arg:"" optional:"" help:"a file"`
		} `cmd:"" help:"five"`
	}
	ctx := kong.Parse(&cli)
	fmt.Println(ctx.Command())
}
