// Package checktest holds what the tests of several packages do alike: read a
// table of outside values, compare a package's documentation, exported names and
// validity table with its code, and try every bound of that table. Only tests
// import it.
//
// A check table is a CSV file in a package's testdata. Its first line says
// what kind of truth it holds, the next lines cite the source, and the heading
// names the columns with their units:
//
//	# kind: published
//	# Freezing point of ethanol-water. Lange's Handbook of Chemistry, 15th ed.
//	ethanol_mass_pct,lange_degC
//	2.5,-1.0
//
// The kinds are published, reference (an independent library, with its
// version), practice (a rule of the trade) and memory (recalled, not read).
package checktest
