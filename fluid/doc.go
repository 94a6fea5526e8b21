// Package fluid holds what a completion's fluids are: their density, viscosity,
// compressibility and thermal expansion by pressure and temperature.
//
// Every fluid has the method
//
//	Density(p unit.Pressure, t unit.Temperature) (unit.Density, error)
//
// so that it can fill a column. Those that have published data for it also
// have Viscosity, Compressibility and Expansivity.
//
//	Constant     a density that doesn't change
//	Water        fresh water, IAPWS-IF97
//	Seawater     TEOS-10
//	Brine        clear brine by its density at 70 °F, API RP 13J
//	Solution     brine by its composition, at atmospheric pressure
//	Oil          crude, diesel, base oil, API MPMS 11.1
//	Gas          natural gas by gravity and contaminants
//	Nitrogen     reference equation of state
//	Methane      reference equation of state
//	ControlFluid a table of points by temperature
//
// Pressures are gauge; each property formula that needs absolute pressure adds
// one standard atmosphere in one place. Compressibility is isothermal,
// −(1/V)·(∂V/∂p); expansivity is of volume at constant pressure,
// (1/V)·(∂V/∂T), and so positive where heating makes a fluid lighter.
//
// A state outside a correlation's published range is a *RangeError; nothing is
// extrapolated in silence. No result is NaN or infinite where the error is nil.
package fluid
