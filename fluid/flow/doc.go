// Package flow computes what a moving liquid costs: rheology, friction in pipe
// and annulus, pressure at the pump, surge and swab, and displacing one fluid
// by another.
//
// Signs and conventions. Depth is positive down. Rates, velocities, friction
// gradients and pressure losses are positive numbers; the package's docs say
// which way a loss acts. Pressures are gauge, and everything is steady,
// isothermal and incompressible: densities are plain numbers that the caller
// takes at the pressure and temperature of interest. Friction
// factors are of two types: FanningFactor, which Friction, Turbulent and Blasius
// count with, and DarcyFactor, four times as large, which is what the charts of
// pipe flow and the formulas after them give (Colebrook, Churchill, Haaland,
// SwameeJain, Chen).
//
// One line of thought serves every rheology and both shapes. The laminar
// problem is solved exactly (Rabinowitsch–Mooney integral in the pipe, the
// whole stress field of the concentric annulus), which gives the wall stress
// τw, the wall shear rate γw and the local flow index n' = d ln τw / d ln V.
// From these follow
//
//	Re = 8 ρ V² / τw        generalised Reynolds number, so that f = 16/Re
//	De = 8 V / γw           effective diameter, for the relative roughness
//
// and a turbulent factor from (n', Re, ε/De). For a Newtonian liquid in a
// pipe that is Colebrook and White's law as it stands, and in an annulus it is
// White's effective-diameter method.
//
// Eccentric annuli, rotation, moving temperature and gas (but for the bubble of
// Kill and BubbleRise) are outside this package. An eccentric pipe has less friction than a concentric one, so that
// the numbers here are on the high side for pump pressure and for equivalent
// density.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package flow
