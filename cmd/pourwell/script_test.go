package main

import (
	"errors"
	"os"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestMain lets the scripts run the real command in a process of its own.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"pourwell": main})
}

// TestScript runs the scripts of testdata/script. Beside the commands of
// testscript they know
//
//	exits CODE pourwell ARGUMENTS...
//
// which runs the command and checks its exit code. With -update the files that
// cmp compares with are written anew.
func TestScript(t *testing.T) {
	if testing.Short() {
		t.Skip("each line starts a process; a short run is about goroutines within one")
	}
	testscript.Run(t, testscript.Params{
		Dir:           "testdata/script",
		UpdateScripts: *update,
		Setup: func(env *testscript.Env) error {
			env.Setenv("LC_ALL", "C.UTF-8")
			root, err := os.Getwd()
			env.Setenv("TOP", root+"/../..")
			return err
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"exits": exits},
	})
}

func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND ...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec(args[1], args[2:]...)
	if got := exitCode(err); got != want {
		ts.Fatalf("%v: exit code %d, want %d", args[1:], got, want)
	}
}

func exitCode(err error) int {
	var exit interface{ ExitCode() int }
	switch {
	case err == nil:
		return 0
	case errors.As(err, &exit):
		return exit.ExitCode()
	}
	return -1
}
