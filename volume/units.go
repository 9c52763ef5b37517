package volume

import "gonum.org/v1/gonum/unit"

// Units of volume. The factors are exact by definition; source: NIST SP 811
// (2008) appendix B, and NIST Handbook 44 appendix C for the barrels.
const (
	Litre      unit.Volume = 1e-3
	Millilitre unit.Volume = 1e-6

	USGallon     unit.Volume = 231 * 0.0254 * 0.0254 * 0.0254 // 231 cubic inches
	USPint                   = USGallon / 8
	USFluidOunce             = USGallon / 128
	USBarrel                 = 31 * USGallon // of beer

	ImperialGallon     unit.Volume = 4.54609e-3
	ImperialPint                   = ImperialGallon / 8
	ImperialFluidOunce             = ImperialGallon / 160
	UKBarrel                       = 36 * ImperialGallon // of beer
)

// Units of length and mass that vessels and glasses are sold by; exact, same
// source.
const (
	Inch       unit.Length = 0.0254
	Millimetre unit.Length = 1e-3
	Pound      unit.Mass   = 0.45359237
	Gram       unit.Mass   = 1e-3
)
