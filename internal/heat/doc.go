// Package heat passes heat between a body and what is around it: films of air
// and water, faces with radiation, dew and sun, walls of tubes, and the way of a
// body to where it settles. Arguments and results are bare float64 in SI units;
// it knows nothing of beer.
//
// Temperatures are in kelvin for gases, radiation and faces, and in °C where the
// density maximum of water counts. Heat is positive into the body. Air's
// properties hold from 200 to 400 K, beyond which results are NaN; callers check
// their own narrower ranges first.
package heat
