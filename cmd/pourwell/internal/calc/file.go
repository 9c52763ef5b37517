package calc

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"syscall"
)

// MostBytes is how much is read of a file that is kept whole; one that is
// longer, or a device without an end, is a slip.
const MostBytes = 4 << 20

// ReadFile reads a file, or stdin for "-", and returns its name for messages.
// One of more than [MostBytes] is a [*UsageError].
func ReadFile(file string, stdin io.Reader) (name string, data []byte, err error) {
	name = "standard input"
	if file != "-" {
		f, err := os.Open(file)
		if err != nil {
			return file, nil, err
		}
		defer f.Close()
		name, stdin = file, f
	}
	data, err = io.ReadAll(io.LimitReader(stdin, MostBytes+1))
	if err == nil && len(data) > MostBytes {
		err = &UsageError{What: fmt.Sprintf("%s is longer than %d MB", name, MostBytes>>20), Hint: "check that it is the file meant"}
	}
	return name, data, err
}

// sick are errors of a disk or system, which another name does not mend.
var sick = []error{syscall.ENOSPC, syscall.EIO, syscall.EDQUOT, syscall.EFBIG, syscall.EMFILE, syscall.ENFILE}

// FileError says which file, named by the flag, cannot be used and why. It is
// a [*UsageError] unless disk or system are to blame.
func FileError(flag string, err error) error {
	var path *fs.PathError
	if !errors.As(err, &path) {
		return err
	}
	if slices.ContainsFunc(sick, func(s error) bool { return errors.Is(path.Err, s) }) {
		return fmt.Errorf("%s %s: %w", flag, path.Path, path.Err)
	}
	return &UsageError{What: fmt.Sprintf("%s %s: %v", flag, path.Path, path.Err), Hint: "check the name of the file"}
}
