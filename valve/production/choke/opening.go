package choke

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// Practice for the discharge coefficient of round, well-rounded openings such
// as bit nozzles: 0.95 is the usual figure; carefully measured ones reach 0.98
// to 1.03. Source: Robinson, AADE-10-DF-HO-26, 2010. Sharp-edged holes are
// nearer 0.6 to 0.65 (ISO 5167-2).
const NozzleDischarge = 0.95

// Coefficient is the flow coefficient of an opening of area a with discharge
// coefficient cd:
//
//	Av = √2·Cd·A          (m²)
//	Cv = 37.98·Cd·A[in²] = 29.83·Cd·d²[in]
//
// which follows from q = Cd·A·sqrt(2Δp/ρ) and q = Av·sqrt(Δp/ρ). The speed of
// approach is neglected, which overstates the drop by less than 1 % where the
// opening is under a tenth of the pipe's area. Source: IEC 60534-1 (definition
// of Av); Bourgoyne et al., Applied Drilling Engineering, 1986, nozzle flow.
//
// Range: any numbers; nothing is checked.
func Coefficient(cd float64, a unit.Area) unit.FlowCoefficient {
	return unit.FlowCoefficient(math.Sqrt2 * cd * float64(a))
}

// Opening is the inverse of Coefficient: the area that a flow coefficient
// stands for at a discharge coefficient.
//
//	A = Av/(√2·Cd)
//
// Range: any coefficient; infinite, or NaN for none, where cd is zero.
func Opening(c unit.FlowCoefficient, cd float64) unit.Area {
	return unit.Area(float64(c) / (math.Sqrt2 * cd))
}

// Hole is the area of n equal round holes of diameter d.
//
//	A = n·π/4·d²
//
// Range: any numbers; nothing is checked.
//
// Source: geometry.
func Hole(n int, d unit.Length) unit.Area {
	return unit.Area(float64(n) * math.Pi / 4 * float64(d) * float64(d))
}

// Series is the flow coefficient of chokes one after another, for liquid below
// choking, whose drops add up:
//
//	1/C² = Σ 1/Ci²
//
// One that is shut shuts them all; no choke at all returns +Inf.
//
// Source: drops add up.
func Series(c ...unit.FlowCoefficient) unit.FlowCoefficient {
	sum := 0.0
	for _, ci := range c {
		sum += 1 / (float64(ci) * float64(ci))
	}
	return unit.FlowCoefficient(1 / math.Sqrt(sum))
}

// Parallel is the flow coefficient of openings side by side, whose rates add
// up: C = Σ Ci.
func Parallel(c ...unit.FlowCoefficient) unit.FlowCoefficient {
	var sum unit.FlowCoefficient
	for _, ci := range c {
		sum += ci
	}
	return sum
}
