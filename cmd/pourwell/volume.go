package main

import "example.com/pourwell/internal/calc"

var volumeCalculations = []*calc.Calculation{}
