package lines

import "example.com/pourwell/volume"

// What results and errors are made of, the same in all packages; see [volume].
type (
	Band            = volume.Band
	Code            = volume.Code
	NeverError      = volume.NeverError
	NoSolutionError = volume.NoSolutionError
	Range           = volume.Range
	RangeError      = volume.RangeError
	Remark          = volume.Remark
	Sentence        = volume.Sentence
	Severity        = volume.Severity
	Step            = volume.Step
)

// Errors to be tested for; what makes them so comes with them.
var (
	ErrNoSolution = volume.ErrNoSolution
	ErrNever      = volume.ErrNever
)
