// Package quantity turns the text people type into SI numbers of a stated
// kind, and numbers into text in the units they read.
//
// A number always carries its unit: "38F", "12psi", "3/16in". Only counts and
// pure numbers are bare. The package knows factors and names, no physics, and
// imports none of the packages it serves.
package quantity
