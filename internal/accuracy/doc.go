// Package accuracy measures how many digits the formulas keep. Each is put to
// random inputs over its range, and what comes out is held against the same
// equation in its textbook form, worked with 256 binary digits by package precise.
// Deviations are counted in units of the last place of a float64, 2⁻⁵².
//
// It says nothing about whether an equation is true of wells: that is what the
// published cases are for. It finds cancellation, overflow and searches that end
// too early.
package accuracy
