// Package choke computes what chokes, sleeves and orifices let through, and
// what they cost in pressure: liquids and gases, choked or not.
//
// Four ways of saying how open something is are one quantity,
// unit.FlowCoefficient: Cv, Kv, the coefficient Av, and an opening with its
// discharge coefficient (Coefficient and Opening).
//
//   - LiquidRate, LiquidDrop, LiquidCoefficient: the plain square law.
//   - Trim: flow by IEC 60534-2-1, with cavitation-choked liquid, critical gas,
//     reducers at both ends and viscous flow; forward and as sizing.
//   - Orifice: the metering orifice of ISO 5167-2.
//   - Nozzle: isentropic gas flow, a second way beside the standard's.
//   - Table: a choke with positions, read from CSV.
//   - ErosionalVelocity: API RP 14E.
//
// Signs: a drop is upstream minus downstream and positive; flow runs from
// upstream to downstream. Pressures are gauge and turned to absolute inside;
// vapour and critical pressures of a fluid are absolute, and say so.
//
// A result outside the range that the standard covers is computed and says so
// in its Outside field. An error means that there is no answer.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package choke
