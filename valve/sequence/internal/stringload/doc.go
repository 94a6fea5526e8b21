// Package stringload puts the completion string into the well of a programme:
// what its joints and packers feel along a leg, how it was landed and held, and
// the margins of its limits. All formulas are those of tubular/movement; here
// they are asked.
//
// The string isn't straight in the pressures: it buckles, its limits change from
// one to the next. What is asked of it is a form all the same: it is loaded in the
// middle of all inputs, with each input that it feels at either end, and at some
// corners, and what isn't straight between these widens the form. Such a margin is
// "enclosed between evaluated loads", not exact; where nothing that the string
// feels is uncertain, it is the load itself.
//
// On the hook, hole and seals take their share of what is pulled. Where the hook turns
// round, what it took on the way up is first given back, and nothing arrives at depth
// (Turn, Slides); a pull is cut there, and where drag along the path bends what arrives
// (Cut), so that each piece is straight. Drag along the path is package drag's, taken
// from the string loaded without any.
package stringload
