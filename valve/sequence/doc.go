// Package sequence walks an installation programme step by step and answers
// what moves, when, and by what margin nothing else does.
//
// # The model
//
// An installation is a small hydraulic network that changes its own shape.
//
//   - A compartment is a connected body of fluid: layers by depth, and at most
//     one thing that fixes its pressure, either a pressure applied at surface
//     or a formation. It may fall, lie level or rise.
//   - A port joins two compartments at a depth while it is open. Joined
//     compartments share the pressure at the port; the rest follows from their
//     columns. A body of compartments with nothing to fix its pressure is
//     trapped and keeps it; bodies that meet share theirs by volume. Where a
//     surface pressure and a formation fix one body, the surface prevails and
//     fluid flows in or is lost; where two surface pressures do, it circulates,
//     and the pressure lies anywhere between what each would make of it.
//   - A device has actions. Each action has a row of triggers on a
//     differential between two compartments at its depth (or against a sealed
//     chamber, or on the balance of a joint of the string) and effects: it opens and
//     closes ports, holds or releases the string, arms other actions. A packer,
//     a sleeve on control lines, an isolation valve, a plug, a burst disc and
//     shear pins in tension are all the same thing.
//   - A step ramps surface pressures or the pull on the string, swaps fluids,
//     or changes the temperature, and says which actions are intended.
//
// # The verdict
//
// Any quantity of a plan may have a tolerance: thresholds, re-arm levels, pins,
// densities, formation and fracture pressures, trapped pressures, strengths, depths
// of devices, temperatures, drag, and the error of the gauges. Check walks the plan
// in all choices of values inside all bands at once.
//
//   - Proved: no choice of values passes a limit. The least margin of each limit is
//     given with the values that attain it.
//   - Refuted: there is a choice of values, the witness, with which a walk of plain
//     numbers passes one; Plan.At makes the plan of that choice.
//   - Not decided: neither could be shown. It counts as failing.
//
// Pressures are straight in the uncertain values where densities don't depend on
// pressure, so that their margins are exact; what isn't straight (the string, fluids
// that feel pressure, zones that flow, pressures that move together by uncertain
// ways) is enclosed between evaluated points, and its margins say so.
//
// # What counts
//
// Reaching a level fires it; reaching a limit isn't passing it, both to 1e-7 psi.
// Limits are judged at every moment of a step: just before and just after every
// event, and at the ends of every ramp, swap, squeeze and pull, between which
// pressures are straight. What falls due at the same pressure may come in either
// order. The actions of one device must come in the order of Step.Expect, each as
// often as it stands there; the order across devices doesn't count. A test is held
// where its differential is furthest in the direction of its band, of all places
// where the step stands still after its start and in each choice of values: it has to
// come into the band there, and to go beyond it nowhere. A balance is held at the
// moment that it names.
//
// # Windows
//
// For each pressure that is held or bled to, and for each pull, Check gives all
// intervals in which the step is proved, with all else as planned; with
// Options.Ahead those in which all steps that follow are proved as well. Nothing is
// assumed of how failing depends on the pressure. An interval is proved from end to
// end; where the search has spent its budget, what is left counts as outside, and the
// edge says that it can't be walked. Compartments that are brought to
// the same pressure in the same ramp are varied together. Where a step before fails
// with some choices of values, the windows after it are those of the choices that did
// what was intended so far.
//
// # Signs
//
// A differential is inside minus outside, overbalance is compartment minus
// formation, tension is positive, depths are positive downwards from the datum
// of the well path, pressures are gauge.
//
// # Limits of the model
//
// Fluids are at rest at each moment: friction while pumping isn't in the
// pressures (package fluid/flow has it), nor is the time that anything takes.
// Of a swap of fluids the moving front is walked, its mixing isn't, and where a
// density feels pressure the front's own gain is taken at the pressure that stands
// there before. While zones produce, their rates and sand-face pressures are those
// of the flow; triggers, ratings, string and pressures at the devices are those of
// the well at rest at the surface pressures that stand then.
//
// A trapped compartment keeps the pressure at its top through a change of
// temperature: what heat does to it is for the plan to say, as a squeeze. A column
// that can't stand is a finding; where its level comes to rest isn't computed.
//
// The string's margins are enclosed between loads in the middle of all inputs, at
// both ends of each, and at two corners of all: a bound that is evaluated, not
// proved, where several of them are uncertain at once.
//
// A programme, a plan that isn't written to, and all functions here are safe for
// concurrent use.
package sequence
