package main

import (
	"bytes"
	"strings"
	"syscall"
	"testing"
)

// TestBrokenPipe: a reader that goes away early is no error.
func TestBrokenPipe(t *testing.T) {
	for _, line := range []string{
		"carbonation equilibrium --temp 38F --gauge 12psi",
		"carbonation equilibrium --temp 38F --gauge 12psi --format json",
		"carbonation equilibrium --temp 0C..20C:0.001C --gauge 12psi --format csv",
		"carbonation equilibrium --temp 0C..20C:0.001C --gauge 12psi --format json",
		"help units",
	} {
		var errs bytes.Buffer
		if code := run(strings.Fields(line), strings.NewReader(""), gone{}, &errs); code != exitDone || errs.Len() > 0 {
			t.Errorf("pourwell %s: exit code %d: %s", line, code, &errs)
		}
	}
}

type gone struct{}

func (gone) Write([]byte) (int, error) { return 0, syscall.EPIPE }

// TestExampleFolds keeps long command lines within the page.
func TestExampleFolds(t *testing.T) {
	got := example("lines flow --keg 1/6bbl-us --tube 1/4in-od:50ft:wall0.7mm:coil8in --tube 3/16in:4ft --gauge 30psi")
	want := "pourwell lines flow --keg 1/6bbl-us --tube 1/4in-od:50ft:wall0.7mm:coil8in \\\n      --tube 3/16in:4ft --gauge 30psi"
	if got != want {
		t.Errorf("%s", got)
	}
}
