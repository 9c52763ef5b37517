package calc

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"syscall"
)

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
