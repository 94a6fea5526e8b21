package catalogue

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// StandardTest returns the hydrostatic pressure at which the mill tests the pipe
// in a grade, unless the order asks for more.
//
//	P = 2 f Y t / D
//
// f is 0.8, and 0.6 for H40, J55 and K55 above 9-5/8 in; P is rounded to 100 psi
// and at most 3,000 psi for those grades, 10,000 psi for the others. It proves the
// pipe when it leaves the mill; it is no rating.
//
// Range: the catalogue's entries and grades; the pipe isn't checked.
//
// Source: API Spec 5CT, 10.12; API Bul 5C3 (1985), section 5. From memory.
func (e Entry) StandardTest(g Grade) unit.Pressure {
	f, most := 0.8, 10_000*unit.PSI
	if g.Yield < 60*unit.KSI {
		most = 3000 * unit.PSI
		if e.OD > 9.625*unit.Inch+digit {
			f = 0.6
		}
	}
	p := e.Pipe(g).HydrostaticTest(f)
	return min(most, unit.Pressure(math.Round(p.In(100*unit.PSI)))*100*unit.PSI)
}

// ThreadHeight returns the height of the round threads of non-upset tubing, for
// Pipe.NonUpset: 10 threads per inch up to 3-1/2 in, 8 above.
//
// Range: any diameter; NaN in, NaN out.
//
// Source: API Std 5B; from memory.
func (e Entry) ThreadHeight() unit.Length {
	switch {
	case e.OD != e.OD:
		return e.OD
	case e.OD <= 3.5*unit.Inch+digit:
		return 0.0556 * unit.Inch
	}
	return 0.07125 * unit.Inch
}
