package main

import (
	"errors"
	"io"

	"example.com/pourwell/internal/report"
)

func runEvent(r *root, stdin io.Reader, w io.Writer, opt report.Options) error {
	return errors.New("not yet")
}
