// Package chart draws curves into SVG and PNG files in the look of pourwell:
// black lines told apart by their strokes, each with its name at its end.
package chart
