package confined

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Fluid is all that a closed space asks of what it is filled with. Density
// takes gauge pressure and returns an error outside the fluid's range.
type Fluid interface {
	Density(p unit.Pressure, t unit.Temperature) (unit.Density, error)
}

// LinearLiquid is a liquid of constant compressibility and expansivity,
//
//	ρ = ρ0 exp[c (p - p0) - α (T - T0)]
//
// for hand figures and for fluids of which no more is known. The zero value is
// an error.
type LinearLiquid struct {
	Reference       unit.Density         `json:"reference"` // at Pressure and Temperature
	Pressure        unit.Pressure        `json:"pressure"`
	Temperature     unit.Temperature     `json:"temperature"`
	Compressibility unit.Compressibility `json:"compressibility"`
	Expansivity     unit.Expansivity     `json:"expansivity"` // of volume
}

// Density returns the density. An error where the liquid's constants are no
// liquid's.
//
//	ρ = ρ0·exp(c·(p − p0) − α·(T − T0))
//
// Source: constant compressibility and expansivity, integrated.
func (l LinearLiquid) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	f := fault.In("confined")
	f.Add(fault.Between("Reference", l.Reference, 1*unit.KilogramPerCubicMetre, 10_000*unit.KilogramPerCubicMetre))
	f.Add(fault.Between("Compressibility", l.Compressibility, 0, 1e-6*unit.PerPascal))
	f.Add(fault.Between("Expansivity", l.Expansivity, -0.01*unit.PerKelvin, 0.01*unit.PerKelvin))
	x := float64(l.Compressibility)*float64(p-l.Pressure) - float64(l.Expansivity)*float64(t.Sub(l.Temperature))
	f.Add(fault.Between("exponent of the density", x, -2, 2))
	if err := f.Err(); err != nil {
		return 0, err
	}
	return l.Reference * unit.Density(math.Exp(x)), nil
}

// Mixed returns the compressibility of parts that share a pressure, each by its
// share of the volume, Σ fi ci. The shares should add up to one; what is
// missing counts as incompressible.
//
// Range: any numbers, not checked; of lists of different lengths the shorter
// one counts.
//
// Source: isothermal volumes add; the usual rule for drilling fluids of water,
// oil and solids.
func Mixed(shares []float64, c []unit.Compressibility) unit.Compressibility {
	var sum unit.Compressibility
	for i := range min(len(shares), len(c)) {
		sum += unit.Compressibility(shares[i]) * c[i]
	}
	return sum
}
