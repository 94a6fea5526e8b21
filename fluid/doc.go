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
//	Solution     brine of one salt by its composition
//	Oil          crude, diesel, base oil, API MPMS 11.1
//	Gas          natural gas by gravity and contaminants
//	GasMixture   natural gas by its composition
//	Nitrogen     reference equation of state
//	Methane      reference equation of state
//	ControlFluid a table of points by temperature
//	Measured     a table by pressure and temperature, such as a base oil's
//
// Around them: Blend, Adjust and Treat mix brines, weight them up and cut them
// back; Crystallisation says where they turn solid; KrookBoyce, Bridges and Osif
// have coefficients; SurfaceWeight what to mix for a well; AverageGasColumn is the
// gas column by hand.
//
// Pressures are gauge; each property formula that needs absolute pressure adds
// one standard atmosphere in one place. Compressibility is isothermal,
// −(1/V)·(∂V/∂p); expansivity is of volume at constant pressure,
// (1/V)·(∂V/∂T), and so positive where heating makes a fluid lighter.
//
// A state outside a correlation's published range is a *RangeError; nothing is
// extrapolated in silence. No result is NaN or infinite where the error is nil.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package fluid
