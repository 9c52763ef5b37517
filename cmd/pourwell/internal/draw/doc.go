// Package draw turns answers into figures, and writes the file of one.
package draw
