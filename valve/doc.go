// Package valve holds what moves on pressure below the packer's floor: shear
// pins, triggers, isolation valves, and the subsurface safety valve. Control
// lines and the sleeves on them are in valve/controlline and valve/sleeve.
//
// Signs: a differential is inside minus outside, or applied minus opposing
// where a device has no inside. Depths are positive downwards. Pressures are
// gauge. A margin is positive while the thing it protects holds.
//
// Tolerances are bands (unit.Band). A device whose band was entered but not
// passed is in an unknown state, and every function here says so: it never
// takes the nominal value for the truth. The bounds are those of the two
// extreme devices of the band, one that moves as early and one that moves as
// late as the band permits.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package valve
