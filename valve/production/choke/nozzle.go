package choke

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// CriticalRatio is the pressure ratio p2/p1 (absolute) at and below which gas
// leaves an isentropic nozzle at the speed of sound:
//
//	rc = (2/(γ+1))^(γ/(γ-1))
//
// γ above 1; 0.5283 for air with γ = 1.4. Source: Saint-Venant and Wantzel, 1839;
// tabulated in NACA Report 1135, 1953.
//
// Range: γ above 1, not checked: at 1 and below it is a number without meaning.
func CriticalRatio(heatRatio float64) float64 {
	return math.Pow(2/(heatRatio+1), heatRatio/(heatRatio-1))
}

// NozzleFlow is the flow of a gas through a nozzle.
type NozzleFlow struct {
	Mass          unit.MassRate `json:"mass"`
	Rate          unit.FlowRate `json:"rate"`  // at inlet conditions
	Ratio         float64       `json:"ratio"` // p2/p1, absolute
	CriticalRatio float64       `json:"critical_ratio"`
	Critical      bool          `json:"critical"` // the rate doesn't grow with a lower downstream pressure
}

// Nozzle computes isentropic flow of a perfect gas through a nozzle of area a
// with discharge coefficient cd:
//
//	W = Cd·A·sqrt(2·γ/(γ-1)·p1·ρ1·(r^(2/γ) - r^((γ+1)/γ)))
//	r = max(p2/p1, rc)
//
// upstream and downstream are gauge; p1 and p2 are they, absolute. It is the second way beside Trim.Gas, which fits a valve's
// test; the two agree within about a tenth over the subcritical range where
// xT suits a nozzle. Errors: ErrNoFlow where downstream is above upstream;
// faults of the inputs. Source: Saint-Venant and Wantzel, 1839; e.g. Streeter,
// Fluid Mechanics, compressible flow in nozzles.
func Nozzle(g UpstreamGas, cd float64, a unit.Area, upstream, downstream unit.Pressure) (NozzleFlow, error) {
	p1, p2, err := pressures(upstream, downstream)
	if err := fault.Join(scope, fault.At("Gas", g.Validate()), fault.AboveTo("cd", cd, 0, 1.1), fault.AtLeast("area", a, 0), err); err != nil {
		return NozzleFlow{}, err
	}
	if p1 == 0 {
		return NozzleFlow{}, ErrNoFlow
	}
	k, rho := g.HeatRatio, float64(g.Density)
	f := NozzleFlow{Ratio: p2 / p1, CriticalRatio: CriticalRatio(k)}
	f.Critical = f.Ratio <= f.CriticalRatio
	r := max(f.Ratio, f.CriticalRatio)
	// r^(2/γ) - r^((γ+1)/γ) = r^(2/γ)·(1 - r^((γ-1)/γ)), the bracket free of cancellation
	head := -math.Pow(r, 2/k) * math.Expm1((k-1)/k*math.Log(r))
	w := cd * float64(a) * math.Sqrt(2*k/(k-1)*p1*rho*head)
	f.Mass, f.Rate = unit.MassRate(w), unit.FlowRate(w/rho)
	return f, nil
}
