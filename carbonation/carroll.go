package carbonation

import (
	"math"

	"example.com/pourwell/internal/water"
)

// carrollHenry returns Henry's constant of CO2 in water, Pa on the mole
// fraction basis. Valid from 273 to 433 K below 1 MPa. Source: Carroll, Slupsky
// & Mather, J. Phys. Chem. Ref. Data 20 (1991) 1201, abstract.
func carrollHenry(kelvin float64) float64 {
	x := 1 / kelvin
	return 1e6 * math.Exp(-6.8346+x*(1.2817e4+x*(-3.7668e6+x*2.997e8)))
}

// lnHenryHot returns ln K0, mol/(L atm), of water at any temperature of a
// closed vessel: Weiss to 45 °C, above it carried on by Carroll's temperature
// law so that there is no step. Carroll's own values lie 1.8 % higher there;
// the pressure is thus the higher of the two.
func lnHenryHot(kelvin float64) float64 {
	hot := limitTemperature.Max + iceKelvin
	if kelvin <= hot {
		return lnHenry(kelvin)
	}
	return lnHenry(hot) + math.Log(water.Density(kelvin)/water.Density(hot)*carrollHenry(hot)/carrollHenry(kelvin))
}

// hotLaw is lawAt for a closed vessel, to 80 °C.
func hotLaw(kelvin, strength float64) law {
	return law{kelvin, lnHenryHot(kelvin), lnFugacityPerPascal(kelvin), beerBeta(kelvin, strength)}
}
