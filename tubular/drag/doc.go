// Package drag finds the hook load of a string that is run, pulled or rotated
// in a well, by the soft-string model: the string has weight and tension but
// no stiffness, lies along the hole, and rubs where it presses on the wall.
//
// Forces are effective axial forces, tension positive: true axial force with
// the pressures inside and outside taken out, so that a string that hangs free
// has none at its end whatever the pressure there. At surface without pressure
// effective and true force are the same. Depths are measured depths below the
// rotary table, positive downwards.
//
// Limits: constant density inside and outside; friction by Coulomb's law, a
// friction factor for each length of hole; no stiffness, no bit or tool jammed in
// a dogleg, no extra contact once the string buckles. Profile says where it
// would buckle: beyond that a run-in load is too optimistic.
//
// Source: Johancsik, Friesen & Dawson, "Torque and drag in directional wells:
// prediction and measurement", JPT June 1984, p. 987 (SPE 11380).
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package drag
