// Package walk takes a well through the steps of a programme, in all choices of
// the uncertain inputs at once.
//
// # Worlds
//
// A world is a part of the box of all inputs (a region) in which the same things
// have happened in the same order, with every pressure as a form in the inputs.
// A leg is one drive of a step: a ramp, a piece of a swap, a squeeze, a pull.
// Where, along a leg, either of two things may come first, the world is parted:
// in one part the first comes first, in the other the second. What is due at the
// same pressure comes in either order. The next event of a world stands at a
// place that is a form itself, and putting it into the lines of the pressures
// gives the pressures of that moment.
//
// # Clusters
//
// What can't feel each other isn't ordered: bodies of fluid that no open port
// joins, that no action feels together and no limit holds against each other, are
// walked to the end of the leg each on its own (a cluster). If something that
// happens joins two of them, the leg is walked again with both as one.
//
// # Progress
//
// How far a row of triggers has come changes nothing but the row. It isn't worth
// a world: each action keeps alternatives of its progress, each with the rows
// under which it is the one, and only when it may act are they told apart.
//
// # What counts
//
// Reaching a level meets it, to a ten-millionth of a psi. Nothing is judged here:
// an Observer is shown every moment just before and just after every event, and
// the ends of the legs; between two of them every pressure is straight.
package walk
