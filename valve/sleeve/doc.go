// Package sleeve holds sliding sleeves that are shifted by control lines: n
// sleeves, each with an open line of its own, and one close line common to all.
//
// A sleeve's piston feels its open line on one side and the close line on the
// other. It opens when the open line's force exceeds the close line's by more
// than friction, closes the other way round, and otherwise stays. Pressure on
// the close line therefore moves every open sleeve whose own line doesn't hold
// it.
//
// Signs: forces on a piston are positive in the direction of opening.
// Differentials across a sleeve are inside minus outside. Pressures are gauge,
// depths positive downwards.
//
// Friction is a band, and so is everything that follows: a sleeve that the band
// doesn't decide is Unknown from then on.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package sleeve
