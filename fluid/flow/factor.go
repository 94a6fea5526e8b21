package flow

import "completion.example/hydrostatics/unit"

// FanningFactor is the friction factor of Fanning: wall stress over dynamic
// pressure, f = τw/(ρV²/2), which is 16/Re in laminar flow through a pipe. The
// oil trade and API RP 13D count with it.
type FanningFactor float64

// DarcyFactor is the friction factor of Darcy and Weisbach, Moody's on his
// chart: four times Fanning's, 64/Re in laminar flow through a pipe. The two are
// types of their own, since nothing else tells one from the other.
type DarcyFactor float64

// Darcy returns the same friction as Darcy's factor.
//
//	fD = 4 fF
//
// Range: any number; NaN in, NaN out.
//
// Source: definition.
func (f FanningFactor) Darcy() DarcyFactor { return DarcyFactor(4 * f) }

// Fanning returns the same friction as Fanning's factor.
//
//	fF = fD / 4
//
// Range: any number; NaN in, NaN out.
//
// Source: definition.
func (f DarcyFactor) Fanning() FanningFactor { return FanningFactor(f / 4) }

// Rounded writes the factor with a number of significant digits.
func (f FanningFactor) Rounded(digits int) string { return unit.Significant(float64(f), digits) }

// Rounded writes the factor with a number of significant digits.
func (f DarcyFactor) Rounded(digits int) string { return unit.Significant(float64(f), digits) }
