package main

import "example.com/pourwell/internal/calc"

var linesCalculations = []*calc.Calculation{&flow, &balance, &profile, &calibrateLine, &diagnose, &clean}
