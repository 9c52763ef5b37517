// Package calc holds the one description of a calculation that everything
// else is made from: the command's flags and help, the parsing of what people
// type, ranges and tolerances, and the text, JSON and CSV of the answer.
//
// A calculation is a [Calculation] value and the function it names. It reads
// typed quantities from [Values], calls one package, and puts answers under
// their keys into a [Result].
package calc
