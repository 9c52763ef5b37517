// Package chart draws curves into SVG and PNG files in the look of pourwell.
//
// It is made to be read in a grey print on a kitchen table: black lines told
// apart by their strokes, each with its name at its end, over hairline rules.
// A quantity that people read in two units has two rulers, one outside the
// other, with the unit at the end of each. All words are level.
package chart
