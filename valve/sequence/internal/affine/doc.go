// Package affine calculates with quantities that aren't known exactly: every
// uncertain input is a symbol between -1 and 1, and what follows from the inputs
// is a form in the symbols,
//
//	x = c + Σ c_k·e_k ± r,  e_k in [-1, 1]
//
// exact where the arithmetic is linear (r = 0), enclosed elsewhere. Conditions on
// the symbols are rows, form >= 0; the least value of a form where all rows hold
// is a linear programme over a box, whose answer is never believed: the bound that
// is returned is computed anew from its multipliers by weak duality, and so holds
// however badly the programme was solved.
//
// Source: Comba and Stolfi, Affine arithmetic and its applications to computer
// graphics, SIBGRAPI 1993; de Figueiredo and Stolfi, Affine arithmetic: concepts
// and applications, Numerical Algorithms 37, 2004, 147-158.
package affine
