// Package movement finds the axial force along a completion string and what
// pressure, temperature, flow and set-down weight do to its length: how far
// the seals travel if they may, what force the packer takes if they may not.
//
// Two implementations stand side by side and are held together by the tests:
//
//   - Vertical is the classical closed form for a vertical well and fluids of
//     constant density (Lubinski, Althouse & Logan 1962; tapered strings after
//     Hammerlindl 1977);
//   - Landed is the node-by-node solution for any sections on any well path
//     and any pressures and temperatures with depth. It remembers the state in
//     which the packer was set.
//
// Signs: axial force is positive in tension; a change of length is positive
// when the string gets longer, a movement of its lower end positive downwards;
// depths are positive downwards from the hanger. Friction of flowing fluid is
// positive when the fluid flows down. Slack-off alone is named by its
// trade meaning: set-down weight is positive, an upward pull negative.
//
// True (real) axial force is what a strain gauge in the pipe wall would show.
// Effective axial force,
//
//	Fe = F - pi*Ai + po*Ao
//
// is what bends the pipe: a string buckles where Fe falls below a critical
// compression. The neutral point is where Fe is zero. With Fe in compression
// and F in tension the string buckles all the same.
//
// Pressures are gauge; only their differences from the reference state and
// inside against outside matter.
//
// Limits: elastic pipe, steady state, no dynamic effects, no wall friction in
// the movement itself (package drag has the friction of running and pulling),
// bending stiffness neglected except in buckling.
package movement
