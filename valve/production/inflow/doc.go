// Package inflow computes what a zone gives at a pressure in front of it.
//
//   - Liquid: productivity index, Vogel's curve for a saturated oil, and both
//     joined at the bubble point.
//   - Gas: the back-pressure equation.
//   - Index: productivity index from permeability, thickness and skin.
//   - DamageSkin: Hawkins' skin of a damaged ring.
//
// Signs: a rate is positive out of the formation; where the pressure in front
// of the zone is above that of its reservoir, the rate is negative: the zone
// takes fluid. Rates count volumes at surface conditions. Pressures are gauge;
// the back-pressure equation turns them absolute inside, while Vogel's ratio is
// that of the pressures as given, which is how the trade works it.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package inflow
