// Package controlline holds the small-bore hydraulic lines that move and hold
// devices downhole: what they hold, stand and lose, how long pressure takes to
// arrive, and the volumes by which a crew at the panel tells a shift from a leak.
//
// Signs: differentials are inside minus outside; depths are positive downwards;
// rates, losses and volumes are positive numbers. Pressures are gauge.
//
// A line is taken as evenly filled with one liquid of constant viscosity and
// compressibility, at one temperature. Gas in a line, the usual fault of a line
// that was badly filled, makes every volume and time larger.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package controlline
