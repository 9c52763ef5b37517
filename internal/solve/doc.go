// Package solve finds roots and steps ordinary differential equations. Both
// are small because the problems are: smooth functions of one variable with a
// known bracket, and a handful of temperatures and masses over an afternoon.
package solve
