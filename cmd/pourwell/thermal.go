package main

import "example.com/pourwell/internal/calc"

var thermalCalculations = []*calc.Calculation{
	&kegInAir,
	&iceBath,
	&coil,
	&plate,
	&warmingLine,
	&warmGlass,
	&calibrateKeg,
}
