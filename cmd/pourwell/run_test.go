package main

import (
	"bytes"
	"io"
	"strings"
	"syscall"
	"testing"
	"time"
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

// TestProgress: it counts after a second, a few times a second, and is wiped.
func TestProgress(t *testing.T) {
	var b bytes.Buffer
	p := &progress{w: &b, what: "rows", total: 100, started: time.Now()}
	p.tell(1)
	if b.Len() > 0 {
		t.Errorf("within the first second: %q", &b)
	}
	p.started = p.started.Add(-2 * time.Second)
	p.tell(2)
	p.tell(3)
	if got := b.String(); got != "\r2 of 100 rows" {
		t.Errorf("after two seconds: %q", got)
	}
	p.clear()
	if !strings.HasSuffix(b.String(), "\r") {
		t.Errorf("not wiped: %q", &b)
	}
	b.Reset()
	unknown := &progress{w: &b, what: "rows", total: -1, started: time.Now().Add(-2 * time.Second)}
	unknown.tell(5)
	if got := b.String(); got != "\r5 rows" {
		t.Errorf("without a total: %q", got)
	}
	if p := newProgress(io.Discard, "rows", 1); p.w != nil {
		t.Error("it counts where nobody looks")
	}
}

// TestExampleFolds keeps long command lines within the page.
func TestExampleFolds(t *testing.T) {
	got := example("lines flow --keg 1/6bbl-us --tube 1/4in-od:50ft:wall0.7mm:coil8in --tube 3/16in:4ft --gauge 30psi")
	want := "pourwell lines flow --keg 1/6bbl-us --tube 1/4in-od:50ft:wall0.7mm:coil8in \\\n      --tube 3/16in:4ft --gauge 30psi"
	if got != want {
		t.Errorf("%s", got)
	}
}
