package main

import "example.com/pourwell/internal/calc"

var volumeCalculations = []*calc.Calculation{&pours, &guests, &taps, &fit, &left}
