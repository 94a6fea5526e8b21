package accuracy

import (
	"completion.example/fluid"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
	"completion.example/valve/production/choke"
)

var gasFormulas = []Formula{
	{Name: "fluid.ZFactor", Range: "Tpr 1.05 to 3, ppr 0 to 30", Limit: 30, answer: "Z", equation: `c1 = 0.3265 - 1.0700/T - 0.5339/pow(T, 3) + 0.01569/pow(T, 4) - 0.05165/pow(T, 5)
b = -0.7361/T + 0.1844/(T*T)
ρ = 0.27*p/(Z*T)
x = 0.7210*ρ*ρ
1 + c1*ρ + (0.5475 + b)*ρ*ρ - 0.1056*b*pow(ρ, 5) + 0.6134*(1 + x)*ρ*ρ/pow(T, 3)*exp(-x) - Z`,
		draw: func(d draw) sample {
			ppr, tpr := d.over(1e-3, 30), d.between(1.05, 3)
			z, err := fluid.ZFactor(ppr, tpr)
			return sample{got: z, of: precise.Values{"p": ppr, "T": tpr}, err: err}
		}},
	{Name: "fluid.AverageGasColumn.Factor", Range: "heights to 8,000 m", Limit: 8, equation: "exp(γ*0.0289625*9.80665*H/(Z*8.31446261815324*T))",
		draw: func(d draw) sample {
			c := fluid.AverageGasColumn{Gravity: d.between(0.55, 1.5), Z: d.between(0.7, 1.3), Temperature: unit.Kelvin(d.between(280, 450)), Height: unit.Length(d.between(1, 8000))}
			return sample{got: c.Factor(), of: precise.Values{"γ": c.Gravity, "Z": c.Z, "T": c.Temperature.Kelvin(), "H": float64(c.Height)}}
		}},
	{Name: "valve/production/choke.Nozzle", Range: "γ 1.05 to 1.67, p2/p1 from 0.6 to 1 - 1e-9; against what a last place of the pressures is worth", Limit: 15,
		equation: `r = (p2 + 101325)/(p1 + 101325)
0.9*a*sqrt(2*k/(k - 1)*(p1 + 101325)*ρ*(pow(r, 2/k) - pow(r, (k + 1)/k)))`,
		draw: func(d draw) sample {
			γ, p1, share := d.between(1.05, 1.67), d.between(1e5, 5e7), d.over(1e-9, 0.4)
			p2 := (p1+101325)*(1-share) - 101325
			g := choke.UpstreamGas{Density: unit.Density(d.between(0.5, 300)), HeatRatio: γ}
			f, err := choke.Nozzle(g, 0.9, 1e-3, unit.Pressure(p1), unit.Pressure(p2))
			return sample{got: float64(f.Mass), scale: float64(f.Mass) * (1 + 1/share/8), err: err,
				of: precise.Values{"k": γ, "p1": p1, "p2": p2, "ρ": float64(g.Density), "a": 1e-3}}
		}},
}
