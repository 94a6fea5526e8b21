package flow

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/internal/root"
)

// Critical are the rates between which a fluid in a conduit turns turbulent.
type Critical struct {
	Laminar           unit.FlowRate `json:"laminar"`          // laminar up to here
	Turbulent         unit.FlowRate `json:"turbulent"`        // turbulent from here
	LaminarReynolds   float64       `json:"laminar_reynolds"` // generalised Reynolds numbers there
	TurbulentReynolds float64       `json:"turbulent_reynolds"`
}

// CriticalRates returns the rates at which the generalised Reynolds number
// passes LaminarReynolds and TurbulentReynolds, which themselves depend on the
// rate where the fluid has a yield stress. Solved to 1e-9. An error where no
// velocity up to 1,000 m/s is enough.
//
// Source: see LaminarReynolds.
func CriticalRates(c Conduit, r Rheology, density unit.Density) (Critical, error) {
	f := fault.In("flow")
	f.At("Conduit", c.Validate())
	f.At("Rheology", r.Validate())
	f.Add(fault.Between("density", density, leastDensity, mostDensity))
	if err := f.Err(); err != nil {
		return Critical{}, err
	}
	at := func(bound func(float64) float64) (unit.FlowRate, float64, error) {
		n := r.Index
		u, err := root.Find(func(u float64) float64 {
			v := math.Exp(u)
			l, err := c.laminar(r, v)
			if err != nil {
				return math.NaN()
			}
			n = l.Index
			return math.Log(8 * float64(density) * v * v / float64(l.WallStress) / bound(n))
		}, math.Log(1e-9), math.Log(float64(mostVelocity)), 1e-10)
		return c.Rate(unit.Velocity(math.Exp(u))), bound(n), err
	}
	var k Critical
	var err1, err2 error
	k.Laminar, k.LaminarReynolds, err1 = at(LaminarReynolds)
	k.Turbulent, k.TurbulentReynolds, err2 = at(TurbulentReynolds)
	if err1 != nil || err2 != nil {
		f.New("", "no velocity up to %s makes the fluid turbulent here", mostVelocity.Rounded(6))
		return Critical{}, f.Err()
	}
	return k, nil
}
