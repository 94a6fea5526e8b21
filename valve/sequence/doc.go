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
//     and the pressure lies anywhere between what each would make of it. Where open
//     ports make a ring, the columns in it must balance: what would go round by itself
//     is refused.
//   - A device has actions. Each action has a row of triggers on a
//     differential between two compartments at its depth (or against a sealed
//     chamber, or on the balance of a joint of the string) and effects: it opens and
//     closes ports, holds or releases the string, arms other actions. A packer,
//     a sleeve on control lines, an isolation valve, a plug, a burst disc and
//     shear pins in tension are all the same thing.
//   - A step ramps surface pressures or the pull on the string, displaces fluids,
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
// # Gas
//
// Nitrogen, methane and natural gas stand at the top of a compartment, in one layer,
// and weigh what hydrostatics.Column makes of their equations of state at the step's
// temperatures. While the compartment's top is open, gas is let in and out there and
// its lower end stays. Once the top is shut its mass stays, and its lower end goes
// where that mass has the pressure of the liquid under it: one liquid, whose surface
// rises into it and falls. What isn't modelled is refused with a line that says so, and
// what to write in its place: gas under liquid, gas on gas, gas that is shut in and leaves
// its compartment through a port, that passes a low point of the hole, that meets others
// while nothing fixes their pressure, a squeeze of what it presses on. Fluids stay where
// they are put: gas, oil and condensate that would rise, in a compartment or through an
// open port, are named with the high point at which they would collect. An annulus that lifts
// with gas has no open port to the string: an action feels annulus less string at the valve
// ("passes gas", and "stops" where that falls to nothing), expected in the step that produces,
// whose density or outflow has what the gas makes of the string's weight. The gas stands in
// the annulus at what is applied on it; how much of it flows isn't computed. A gas can't be
// pumped at a rate; it is let in by a ramp or a displacement from above.
//
// What gas makes of pressures isn't straight. It is enclosed: straight in what
// moves, with the secants as slopes, and a remainder: what the equation of state
// leaves of that at the ends, halves and corners of the present range, and a quarter
// more. That is evaluated, not proved; tests hold it against choices all over the range. Ramps are walked in pieces of at most 250 psi, and no more than a tenth of
// the pressure of gas that is shut in. A witness counts where the walk of plain
// numbers passes the limit by more than the remainder, in eight times as many pieces
// if need be; else the limit isn't decided.
//
// # Pumping
//
// A step may pump into one compartment and out at another, or into a formation. Pump
// and well are then one body, fixed where it returns; friction is what package
// fluid/flow makes of each fluid in each bore at the rate, against the flow. The rate
// comes up and goes down in pieces, between which friction is enclosed by its own
// values; the fluids move as plugs from pieces to pieces between which no front passes
// anything, and on which pressures are straight. What leaves is counted. Where the
// columns alone would carry more than is pumped the pump's pressure is below zero, and
// said to fall by itself; below a vacuum it is a finding. The greatest rate at which the
// step is proved is searched for among proofs: friction grows with the rate. Fluids on
// the way are of constant density; ways that part, ways that change while they are
// pumped, mixing, gels and losses in fittings aren't modelled, and the first two are
// refused.
//
// # Flowing
//
// A step that produces ends with its zones flowing: pressures go straight from those at
// rest to those of package valve/production at the wellhead pressure of the step, and
// back. On that way, too, devices, ratings, the string and the packer are held against
// what they feel: the string's pressure, straight in true vertical depth between where
// zones come in (friction lies anywhere between its share of that and of the hole's
// length), and behind a choke that of the sandface with the zone's own fluid. Outflow is
// of one density and a loss that grows with the square of the rate; or a table; or, with a
// viscosity, section by section: the friction of the bores at the rate that comes up through
// each, and the weight of what comes in below, by rate, with its water and gas cuts (a share
// of gas that stays the same all the way up; the zones along the hole in the order of their
// depths). Zones give liquid by an index, under a bubble point by Vogel's curve, or gas. The
// temperatures are those that the step names. Rates are held against the plan while the
// zones flow. A device that moves then and changes which zones do is refused, unless it isn't
// intended, which is a finding; so is another way to surface that stands open beside the string. Start-up surges aren't modelled; flow between zones is a
// finding of its own.
//
// # Levels that fall
//
// A compartment that stands open at surface is taken as kept full: where its formation
// doesn't carry its column, the difference is loss. An act by hand drains it instead:
// it is left open to the air until its level has come down to where the formation
// carries what is left (the air's own weight isn't counted). From then on nothing
// stands above the level, and below it the fluid from the formation up. Between which
// two depths of the plan the level lies parts the worlds, so that every pressure stays
// straight and exact; where the level lies between two depths along a rating it is
// found by itself, which is enclosed. A string takes pressure about a level as straight
// over 50 ft, and what that may be off counts against it. It is filled with its own fluid
// by hand, before it is pumped into, or before a pressure is applied on it. One fluid of constant density on the way and one
// formation: all else (a second surface or formation in the body, a port open above the
// level, a device that opens or shuts while it moves, shutting in or displacing what has
// fallen) is refused with a line that says so. In a compartment that is closed at its
// top, less than a vacuum is a finding: what comes out of solution there isn't computed.
//
// # Trapped bodies
//
// A compartment whose bores have walls gives way as fluid/confined has it: liquid of the
// plan's compressibility and expansion between pipes of steel, held at both ends, that
// feel the pressure of this compartment alone. Where nothing fixes a body all of which
// is known so, its pressure changes with the step's temperature,
//
//	Δp = Σ ∫ A·(α - β)·ΔT dz / Σ V·(c + C)
//
// with strokes of actions and volumes pressed in by what all of it gives, and bodies that
// meet share their pressure by that. It is straight, so that temperatures' errors count
// exactly; of the mass that confined.Trapped conserves it leaves out squares of relative
// changes of volume, a thousandth or so. Fresh water between walls keeps its mass by its own
// density where it is heated, and gives way by its compressibility as it stands. Neighbours that press on a wall, cement and
// rock aren't in it. A body that is known in part is refused where it would count. A test
// that is held while something warms is judged by the same, with both sides shut in.
//
// # Delays
//
// A metered device moves once it has been at its level for its delay. Time passes where a
// step holds after a ramp or holds a test, before its acts by hand are done, while it pumps
// (where the device moves in the middle of what is pumped, where its time comes),
// and before anything is done in it, by what it says that it takes; it adds up from one to
// the next, over steps too. Of a ramp's own time, by how fast the plan changes pressures,
// anything from nothing to all counts where a device comes to its level or leaves it (all
// where it stays there), and so does that of a test that is held where its differential is
// greatest, at each place where the step stands still: what hangs on that, or on where a
// device lies in its band of delays, isn't decided. What may be at its level while nobody
// knows for how long is refused with a line that says what to write: between steps that
// don't say what they take, in a displacement, a pressure change, a pull, while zones flow or
// levels move, as the programme ends, and as it begins, unless it is stated (Plan.Begin).
//
// # By hand, beginnings and branches
//
// A step may do things by hand before its ramps: drop or pull a plug, shift a device by
// a tool, turn the string, move a valve at surface, vent. The way down must be open,
// there must be something to move, and what opens must bear what stands across it.
//
// A programme begins as its things were run, or as Plan.Begin states: what has happened,
// or may have, in which case each possibility is a world of its own; how far rows have
// come; what is applied, shut in and trapped; where gas ends and down to where columns
// have fallen. Gas that is shut in has the mass that fills its stretch at the pressure of
// its body. Plan.Rest writes the state after a step in
// all choices of the values, with what each pressure moves with. Where worlds differ it
// covers all of them by bands: proved of more than can be, never of less. What it can't
// write so (devices in states of which none is certain, some conditions of one action
// met, a device that may be stuck) is an error.
//
// A step's branch is walked where a device doesn't move whatever it feels: the step is
// walked in worlds beside each other, with the device as its bands say and stuck. It
// stays stuck until it is moved by hand or a later step expects it, which is assumed and
// not judged; so is that one alone, or all of those that the branch names, are stuck.
// What tells the cases apart at surface is compared with the nominal values.
//
// # What counts
//
// Reaching a level fires it; reaching a limit isn't passing it, both to 1e-7 psi.
// Limits are judged at every moment of a step: just before and just after every
// event, and at the ends of every ramp, displacement, pressure change and pull, between which
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
// edge names the limit that is still in doubt there. Compartments that are brought to
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
// Fluids are at rest at each moment, but for what a step pumps; the time that
// anything takes isn't in the pressures.
// Of a displacement the moving front is walked, its mixing isn't, and where a
// density feels pressure the front's own gain is taken at the pressure that stands
// there before.
//
// A trapped compartment keeps the pressure at its top through a change of
// temperature, unless gas stands in it or its walls are known: else what heat does to
// liquids is for the plan to say, as a squeeze. Gas dissolves in nothing and rises through nothing. Between two
// stations of the hole a level is found along the path itself.
//
// The string's margins and forces are enclosed between loads in the middle of all
// inputs, at both ends of each, and at the corners of all at which each number is
// least and greatest; and, along a stretch on which nothing happens, at its ends and
// halfway, with what a parabola through these three may go beyond them and as much
// again. That is a bound that is evaluated, not proved. Where what a joint feels isn't
// straight along a ramp, the moment at which it parts is enclosed as well, and told to
// some tens of pounds of force.
//
// A joint that has parted leaves what is below it to what holds that there. Set down on
// it again and latched to, the string is as it was before; and where a pull unseats what
// holds, that load is what the string puts on the place, and what it seals and bears in
// itself is not looked at.
//
// Where a plan has an outer string, both are in the hole from the beginning, the inner
// one landed in the outer one. What the one puts on the other where it hangs, is held or
// closes the other's end is found by balance; so is what a seal takes to slide in the outer
// one while the inner one is pulled, but not what the pipe rubs along its bore. What is inside
// the outer string is one compartment down to its end. Devices and pulls say which string
// they are on.
//
// A programme, a plan that isn't written to, and all functions here are safe for
// concurrent use.
package sequence
