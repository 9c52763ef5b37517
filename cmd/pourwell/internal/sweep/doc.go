// Package sweep runs a calculation many times: over ranges of its inputs, over
// the rows of a file, and over the tolerances of its inputs.
//
// A [Plan] is a command line read: inputs that have one value, inputs that run
// through several ([Axis]), and inputs with a tolerance ([Tolerance]). Its Rows
// and Batch methods give rows that stream in order while all processors work;
// its Spread method says what the tolerances make of an answer.
package sweep
