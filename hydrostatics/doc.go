// Package hydrostatics turns densities and depths into pressures: gradients
// and equivalent mud weights, the well path, temperature with depth, columns
// of layered fluids, balance against a formation, U-tubes, and the greatest
// surface pressure that the weakest point allows.
//
// It doesn't know which fluid it is: a column asks the Fluid interface for a
// density at a pressure and a temperature.
//
// # Conventions
//
// Depth is positive downwards. TVD is true vertical depth and MD is measured
// depth along the hole, both from one datum, as a rule the rotary table; a
// TVD of zero is where surface pressures are read. Pressures are gauge. Balance
// is well pressure minus formation pressure: overbalance is positive.
// Inclination is from the vertical, 0 pointing down and 90° level; azimuth is
// from north towards east. Gravity is the standard g = 9.80665 m/s²; the local
// one lies between 9.780 and 9.832 at sea level, ±0.3 %.
//
// # Errors
//
// Closed formulas return no error: NaN in gives NaN out. What solves, looks up
// or models checks its whole input first and reports all faults together.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package hydrostatics
