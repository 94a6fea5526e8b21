package fluid

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// WaterViscosity returns the viscosity of water or steam of density ρ at
// temperature t; Water.Viscosity takes it at its own density:
//
//	μ = 1 µPa·s · μ0(T̄)·μ1(T̄, ρ̄),   T̄ = T/647.096 K,  ρ̄ = ρ/322 kg/m³
//	μ0 = 100·√T̄ / Σ Hi/T̄^i
//	μ1 = exp(ρ̄·Σ (1/T̄ − 1)^i · Σ Hij·(ρ̄ − 1)^j)
//
// The critical enhancement μ2 is taken as 1, as the release recommends for
// industrial use.
//
// Range: 273.15 to 1173.15 K, ρ from 0 to 1,300 kg/m³; NaN in, NaN out. Source: IAPWS R12-08, Eqs. 10 to 12, Tables 1
// and 2; check values in Table 4.
func WaterViscosity(rho unit.Density, t unit.Temperature) unit.Viscosity {
	T, r := t.Kelvin()/647.096, float64(rho)/322.0
	mu0 := 100 * math.Sqrt(T) / (1.67752 + (2.20462+(0.6366564-0.241605/T)/T)/T)
	x, y := 1/T-1, r-1
	s0 := 5.20094e-1 + y*(2.22531e-1+y*(-2.81378e-1+y*(1.61913e-1+y*-3.25372e-2)))
	s1 := 8.50895e-2 + y*(9.99115e-1+y*(-9.06851e-1+y*2.57399e-1))
	s2 := -1.08374 + y*(1.88797+y*-7.72479e-1)
	y4 := y * y * y * y
	s3 := -2.89555e-1 + y*(1.26613+y*-4.89837e-1) + y4*(6.98452e-2+y*y*-4.35673e-3)
	s4 := y*y*-2.57040e-1 + y4*y*8.72102e-3
	s5 := y*1.20573e-1 + y4*y*y*-5.93264e-4
	return unit.MicropascalSecond * unit.Viscosity(mu0*math.Exp(r*(s0+x*(s1+x*(s2+x*(s3+x*(s4+x*s5)))))))
}
