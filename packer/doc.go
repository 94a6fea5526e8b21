// Package packer plans a packer that is set by tubing pressure, sealed into by
// a string that may move, and left again by overpull: setting, the holding
// envelope, the forces between tubing, packer and casing, seals and their
// stroke, and release.
//
// # Signs
//
// Tension and lengthening are positive, depth is positive downwards, a
// differential is inside minus outside, pressures are gauge. For what acts on the packer as a body:
//
//   - a differential across the packer is the pressure below minus the pressure
//     above: positive when it is held from below;
//   - an axial force of the tubing on the packer is positive when the tubing
//     pulls the packer up, which is tension in the tubing;
//   - a force of the packer on the casing is positive when it pushes the casing
//     up. A positive differential adds to it.
//
// The end force of a string in a seal bore is a force on the string, and is
// positive where it adds tension: a string pushed up out of its bore has a
// negative one.
//
// # Certainty
//
// Thresholds and strengths are bands. What must happen is held against the far
// end of its band, what must not against the near end, and between the ends the
// answer is that it isn't known. Where nothing satisfies the demands, the error
// says so with the numbers of both sides that contradict each other.
//
// # Limits
//
// Closed formulas are of straight pipe within its elastic range. Nothing here
// holds a maker's data: ratings, areas, pins and envelopes are inputs.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package packer
