package main

import (
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/cmd/pourwell/internal/catalog"
)

// build compiles a package of the project, stripped, and returns the file.
func build(b *testing.B, pkg string) string {
	b.Helper()
	name := filepath.Join(b.TempDir(), "program")
	out, err := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", name, pkg).CombinedOutput()
	if err != nil {
		b.Fatalf("%v: %s", err, out)
	}
	return name
}

// What testdata/bare has: sixteen flags for each command, and some for all.
const (
	bareCommands = 9 + 7 + 6 + 5
	bareFlags    = bareCommands*16 + 9
)

// BenchmarkStart measures whole processes, one answer of pourwell against the
// bare parser in turns, so that both see the same machine. The bare program has
// about as many flags as the catalogue. It reports medians in ms, and their
// ratio; the aim is 0.8 at most. Give it a hundred turns:
//
//	go test ./cmd/pourwell -run xxx -bench Start -benchtime 100x
func BenchmarkStart(b *testing.B) {
	flags := len(globalNames)
	for _, c := range catalog.All() {
		flags += len(c.Ready().AllInputs())
	}
	if n := len(catalog.All()); n != bareCommands || flags*9 > bareFlags*10 || flags*11 < bareFlags*10 {
		b.Fatalf("%d calculations of %d flags in all: make testdata/bare as large", n, flags)
	}
	ours, bare := build(b, "."), build(b, "./testdata/bare")
	commands := [2][]string{
		{ours, "carbonation", "equilibrium", "--temp", "38F", "--gauge", "12psi"},
		{bare, "one", "a", "--temp", "38F", "--gauge", "12psi"},
	}
	var took [2][]float64
	b.ResetTimer()
	for range b.N {
		for i, c := range commands {
			started := time.Now()
			if err := exec.Command(c[0], c[1:]...).Run(); err != nil {
				b.Fatal(err)
			}
			took[i] = append(took[i], float64(time.Since(started).Microseconds())/1000)
		}
	}
	b.ReportMetric(median(took[0]), "ms/start")
	b.ReportMetric(median(took[1]), "ms/bare")
	b.ReportMetric(median(took[0])/median(took[1]), "ratio")
	if info, err := os.Stat(ours); err == nil {
		b.ReportMetric(float64(info.Size())/(1<<20), "MiB")
	}
}

func median(v []float64) float64 {
	slices.Sort(v)
	return v[len(v)/2]
}

// BenchmarkSweep streams a million rows of the pressure chart as CSV. It
// reports rows a second, aimed at half a million on two processors, and the
// memory taken from the system at the end.
func BenchmarkSweep(b *testing.B) {
	const rows = 1_000_001
	args := strings.Fields("carbonation equilibrium --temp 0C..20C:0.00002C --gauge 12psi --format csv")
	for b.Loop() {
		if code := run(args, strings.NewReader(""), io.Discard, io.Discard); code != exitDone {
			b.Fatalf("exit code %d", code)
		}
	}
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	b.ReportMetric(rows*float64(b.N)/b.Elapsed().Seconds(), "rows/s")
	b.ReportMetric(float64(m.Sys)/(1<<20), "MiB")
}

// BenchmarkAnswer is one answer within the process: reading flags, the sum,
// the text.
func BenchmarkAnswer(b *testing.B) {
	args := strings.Fields("carbonation equilibrium --temp 38F --gauge 12psi")
	b.ReportAllocs()
	for b.Loop() {
		if code := run(args, strings.NewReader(""), io.Discard, io.Discard); code != exitDone {
			b.Fatalf("exit code %d", code)
		}
	}
}
