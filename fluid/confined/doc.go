// Package confined computes what closed volumes do: the pressure of a trapped
// annulus or line that is heated or squeezed, the volume that pressures a system
// up or bleeds it down, and what the record of a pressure test says.
//
// Signs. Heating is positive, a squeeze is a positive volume taken from the
// space, a rise of pressure is positive and a fall in a test's record is
// positive too (its name says fall or decline). Compliance of a wall is relative
// growth of the space per pressure inside it, positive. Pressures are gauge.
//
// A space is elastic steel around liquid and, if any, gas. Formation, cement
// and creep are outside: a wall that is backed by rock can be taken as Rigid,
// which gives the higher pressure.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package confined
