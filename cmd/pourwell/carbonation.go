package main

import "example.com/pourwell/internal/calc"

var carbonationCalculations = []*calc.Calculation{
	&equilibrium, &sealed, &blend, &airPump, &supply, &leakTest, &room, &uptake, &wine,
}
