// Command pourwell computes how to serve kegs outdoors: gas, cold, lines and
// amounts, and the whole day from one file.
//
// The command is glue: it reads flags, makes one call into the packages and
// writes one report. Run "pourwell --help" for what it computes.
package main

import "os"

func main() {
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}
