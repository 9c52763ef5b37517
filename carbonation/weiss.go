package carbonation

import "math"

// Constants. Sources: the gas constant is exact in the SI since 2019 (CODATA
// 2018); molar masses from memory of the IUPAC table.
const (
	gasConstant  = 8.314462618 // J/(mol K)
	molarMassCO2 = 44.0095     // g/mol
	atmosphere   = float64(Atmosphere)
	iceKelvin    = 273.15
)

// CO2 in fresh water, ln K0 with K0 in mol/(L atm). Source: R. F. Weiss, Mar.
// Chem. 2 (1974) 203, table I, volumetric form at zero salinity. Coefficients
// from memory, confirmed by three printed values of K0 in testdata.
const (
	weissA1 = -58.0931
	weissA2 = 90.5069
	weissA3 = 22.2940
)

// lnHenry returns ln K0, the molar solubility of CO2 in water, mol/(L atm) of
// fugacity, at kelvin.
func lnHenry(kelvin float64) float64 {
	h := kelvin / 100
	return weissA1 + weissA2/h + weissA3*math.Log(h) // Weiss 1974, eq. 12 with S = 0
}

// lnHenrySlope returns d ln K0 / dT, 1/K.
func lnHenrySlope(kelvin float64) float64 {
	return (weissA3 - weissA2*100/kelvin) / kelvin
}

// Second virial coefficient of CO2, m³/mol. Source: Weiss 1974, eq. 6, printed
// in cm³/mol; within 0.8 cm³/mol of Span & Wagner's from 270 to 320 K.
const (
	virialB0 = -1636.75e-6
	virialB1 = 12.0408e-6
	virialB2 = -3.27957e-8
	virialB3 = 3.16528e-11
)

// virial returns B, the second virial coefficient of CO2, m³/mol.
func virial(kelvin float64) float64 {
	return virialB0 + kelvin*(virialB1+kelvin*(virialB2+kelvin*virialB3)) // Weiss 1974, eq. 6
}

// lnFugacityPerPascal returns B/RT, so that the fugacity coefficient of CO2 at
// a partial pressure p is exp(p B/RT).
func lnFugacityPerPascal(kelvin float64) float64 {
	return virial(kelvin) / (gasConstant * kelvin) // Weiss 1974, eq. 9 for the pure gas
}

// lnFugacitySlope returns d(B/RT)/dT.
func lnFugacitySlope(kelvin float64) float64 {
	return (virialB2 + 2*kelvin*virialB3 - virialB0/(kelvin*kelvin)) / gasConstant
}
