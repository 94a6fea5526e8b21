// Package production computes what zones give when they flow together through
// their chokes into one tubing.
//
// A Well lists its zones from the bottom up: inflow, choke positions, water cut,
// and the tubing to the zone above. An Outflow says what stands above the
// topmost zone: a pressure, a rate, tubing to surface, or a table. Prepare
// checks it all and returns a Network, whose Solve finds rates and pressures for
// choke positions, and names every zone that takes fluid from the others.
// MatchSplit and LimitWater search the positions that exist.
//
// The method: for a pressure in the tubing at the lowest zone, every zone's
// rate and every pressure above follow in one pass upwards, with their
// derivatives. What the outflow asks for and what arrives differ by a function
// that grows with that pressure wherever inflow falls and losses grow, so there
// is one solution or none, and Newton's steps inside a closing bracket find it.
// None is an error that says by how much.
//
// Signs: a rate is positive from the zone into the tubing and from the tubing
// to surface; depth is positive down; a choke's drop is in front of the zone
// minus tubing. Rates count volumes at surface conditions: liquid at stock tank,
// or gas at standard conditions. Pressures are gauge.
//
// Limits: one phase in the network, liquid or gas; each interval of tubing has
// one density and a loss that grows with rate and rate squared. A liquid's choke
// follows the square law without choking: where the pressure downstream is low,
// hold the drop found against choke.Trim.Liquid. A zone that takes fluid takes
// it through its choke at its own fluid's density, and along its inflow's
// extension, which is common practice and no more.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package production
