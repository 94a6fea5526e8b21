// Package sequence walks an installation programme step by step and answers
// what moves, when, and by what margin nothing else does.
//
// # The model
//
// An installation is a small hydraulic network that changes its own shape.
//
//   - A compartment is a connected body of fluid: layers by depth, and at most
//     one thing that fixes its pressure, either a pressure applied at surface
//     or a formation.
//   - A port joins two compartments at a depth while it is open. Joined
//     compartments share the pressure at the port; the rest follows from their
//     columns. A body of compartments with nothing to fix its pressure is
//     trapped and keeps it. Where two things fix one body's pressure, fluid
//     flows: the step reports inflow, loss or circulation and the differential.
//   - A device has actions. Each action has a row of triggers on a
//     differential between two compartments at its depth (or against a sealed
//     chamber, or on the axial force in the string) and effects: it opens and
//     closes ports, holds or releases the string, arms other actions. A packer,
//     a sleeve on control lines, an isolation valve, a plug, a burst disc and
//     shear pins in tension are all the same thing.
//   - A step ramps surface pressures or the pull on the string, swaps fluids,
//     or changes the temperature, and says which actions are intended.
//
// Each ramp is walked from event to event. The next trigger's moment is found
// on it, the network changes its shape, and the walk goes on.
//
// # Worlds
//
// A threshold is a band. Each walk takes one sharp threshold per action: a
// world. Check walks the nominal world, the two in which everything moves as
// early or as late as its band permits, and for every action the two in which
// it alone is early or late while all others are the opposite. An event that
// happens in a step in every world must happen; one that happens in some may.
// Where worlds differ after a step, the device is in an unknown state.
//
// # Signs
//
// A differential is inside minus outside, overbalance is compartment minus
// formation, tension is positive, depths are positive downwards from the datum
// of the well path, pressures are gauge.
//
// # Limits
//
// Fluids are at rest at each moment: friction while pumping isn't in the
// pressures (package fluid/flow has it), nor is the time that anything takes.
// Of a swap of fluids the moving front is walked, its mixing isn't. While zones
// produce, their rates and sand-face pressures are those of the flow; triggers,
// ratings, string and pressures at the devices are those of the well at rest at
// the surface pressures that stand then.
//
// A trapped compartment keeps the pressure at its top through a change of
// temperature: what heat does to it is for the plan to say, as a squeeze.
// Compartments must gain depth: a level or rising one can't be walked. There is
// one place where the string is held; once released, it hangs as a whole again.
package sequence
