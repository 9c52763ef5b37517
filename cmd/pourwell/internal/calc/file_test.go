package calc

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

type zeros struct{}

func (zeros) Read(b []byte) (int, error) { clear(b); return len(b), nil }

// TestReadFile: what has no end, and what is too long, stops at the bound.
func TestReadFile(t *testing.T) {
	name := filepath.Join(t.TempDir(), "day.toml")
	if err := os.WriteFile(name, make([]byte, MostBytes), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, data, err := ReadFile(name, nil); err != nil || len(data) != MostBytes {
		t.Errorf("%d bytes, %v", len(data), err)
	}
	if called, data, err := ReadFile("-", strings.NewReader("text")); err != nil || string(data) != "text" || called != "standard input" {
		t.Errorf("%s: %s, %v", called, data, err)
	}
	long := io.MultiReader(strings.NewReader("x"), io.LimitReader(zeros{}, MostBytes))
	for _, r := range []io.Reader{zeros{}, long} {
		_, _, err := ReadFile("-", r)
		var usage *UsageError
		if !errors.As(err, &usage) || usage.What != "standard input is longer than 4 MB" {
			t.Errorf("%v", err)
		}
	}
	if _, _, err := ReadFile(name+"x", nil); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("%v", err)
	}
}

func TestFileError(t *testing.T) {
	for _, c := range []struct {
		err   error
		usage bool
	}{
		{fs.ErrNotExist, true}, {fs.ErrPermission, true}, {syscall.EISDIR, true}, {syscall.ENOTDIR, true}, {syscall.ENAMETOOLONG, true},
		{syscall.ENOSPC, false}, {syscall.EIO, false},
	} {
		err := FileError("--plot", &fs.PathError{Op: "write", Path: "a.svg", Err: c.err})
		var usage *UsageError
		if errors.As(err, &usage) != c.usage || !strings.HasPrefix(err.Error(), "--plot a.svg: ") {
			t.Errorf("%v is %v", c.err, err)
		}
		if !c.usage && !errors.Is(err, c.err) {
			t.Errorf("%v is lost in %v", c.err, err)
		}
	}
	other := errors.New("other")
	if err := FileError("--plot", other); !errors.Is(err, other) || FileError("--plot", nil) != nil {
		t.Errorf("%v", err)
	}
}
