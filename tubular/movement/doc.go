// Package movement finds the axial force along a completion string and what
// pressure, temperature, flow and set-down weight do to its length: how far
// the seals travel if they may, what force the packer takes if they may not.
//
// Two implementations stand side by side and are held together by the tests:
//
//   - Vertical is the classical closed form for a vertical well and fluids of
//     constant density (Lubinski, Althouse & Logan 1962; tapered strings after
//     Hammerlindl 1977);
//   - Assembly is the node-by-node solution for any sections on any well path and
//     any pressures and temperatures with depth, with any number of seals, of places
//     where the string can be held, of joints that part, on the hook as well as
//     landed: what an installation programme asks of a string, step after step.
//
// Landed is an Assembly with nothing but the seals at its lower end. It remembers
// the state in which the packer was set.
//
// # A string step by step
//
// Four things are kept apart, and none of them changes:
//
//	Assembly     what is made up: sections, seals, holds, joints, plugs, in a well
//	MadeUp       the same laid out once, by Assembly.MakeUp
//	Standing     how it stands: as landed, what holds it and what that locked in,
//	             what has parted; made by Land, TakeHold, SetDown, LetGo, Part, Join, HangOff
//	Conditions   pressures, temperatures, hook and drag of one moment
//
// and MadeUp.LoadInto(&loading, standing, conditions) answers with every force
// under its trade name, without allocating. For pulls, ReadingForJoint,
// ReadingForHold and MostReading answer the other way round. A setting pressure of
// which it is only known that slips bite somewhere between two values is two
// standings, one for each end of the band.
//
// The annulus is cut into parts by seals and held places, the bore by plugs, and
// Conditions.Inside and Outside are asked part by part, so that a pressure that
// steps is never smeared between two nodes. Marching up from the lower end, where
// the effective force is nothing, it changes by the effective weight, by hung
// loads, and by -Ap*(pb - pa) at each seal and each place that could hold; between
// two places that do hold, one force all along is added that keeps the length
// between them. Each place's load is the step of that force, each joint's balance
// effective force + (pi - po)*As.
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
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package movement
