// Package well is the well of an installation programme at one moment: which
// compartments are joined, what fixes their pressure, and how each pressure
// depends on the uncertain inputs (package affine) and on the way s along the
// present leg.
//
// It knows what is, not what is meant to be: limits and intentions are for the
// packages above it. Depths are measured depths with their true vertical depth
// beside them, pressures in Pa, forces in N; names are indices.
package well
