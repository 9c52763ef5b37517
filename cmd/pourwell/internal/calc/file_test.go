package calc

import (
	"errors"
	"io/fs"
	"strings"
	"syscall"
	"testing"
)

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
