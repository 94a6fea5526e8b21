package validation

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
	"completion.example/valve/production/choke"
)

var productionSuite = Suite{
	File: "production.csv",
	Quantities: map[string]Evaluator{
		"liquid coefficient":                           liquidCoefficient,
		"critical pressure ratio FF":                   criticalPressureRatio,
		"gas coefficient":                              gasCoefficient,
		"first trial of a small-flow gas coefficient":  firstTrial,
		"reciprocal of the drop in 1/psi":              reciprocalDrop,
		"jet velocity":                                 jetVelocity,
		"drop over density and velocity squared":       dropOverVelocity,
		"coefficient of a round hole":                  holeCoefficient,
		"perforation friction":                         perforationFriction,
		"drop from the jet's kinetic energy":           dropFromEnergy,
		"liquid rate of a hole":                        holeRate,
		"erosional velocity":                           erosionalVelocity,
		"orifice discharge coefficient":                orificeDischarge,
		"orifice mass flow":                            orificeMass,
		"orifice discharge with expansion":             orificeDischargeExpansion,
		"Vogel's share of open flow":                   vogelShare,
		"open flow from a test":                        openFlow,
		"rate of a saturated zone through the network": saturatedZone,
		"Hawkins skin":                                 hawkinsSkin,
		"pressure of two layers without well flow":     func(in *published.Inputs) (any, error) { f, err := twoLayers(in); return f.Pressure, err },
		"closed form of the same":                      equivalent,
		"crossflow of two layers without well flow":    func(in *published.Inputs) (any, error) { f, err := twoLayers(in); return f.Crossflow, err },
		"first rate of two layers":                     func(in *published.Inputs) (any, error) { return layerRate(in, 0) },
		"second rate of two layers":                    func(in *published.Inputs) (any, error) { return layerRate(in, 1) },
		"total rate of two layers":                     func(in *published.Inputs) (any, error) { f, err := twoLayers(in); return f.Rate, err },
		"drop to choke away":                           dropToChoke,
		"coefficient for a drop":                       coefficientForDrop,
		"opening for a drop":                           openingForDrop,
		"diameter for a drop":                          diameterForDrop,
	},
}

// gaugeOf reads a pressure that the source prints absolute.
func gaugeOf(in *published.Inputs, name string) unit.Pressure {
	var p unit.Pressure
	in.Read(name, &p)
	return p - unit.Atmosphere
}

func hotLiquid(in *published.Inputs) choke.UpstreamLiquid {
	var l choke.UpstreamLiquid
	in.Read("rho", &l.Density)
	in.Read("pv", &l.VapourPressure)
	in.Read("pc", &l.CriticalPressure)
	return l
}

func liquidCoefficient(in *published.Inputs) (any, error) {
	var t choke.Trim
	var q unit.FlowRate
	in.Read("d", &t.Bore)
	in.Read("FL", &t.Recovery)
	in.Read("q", &q)
	f, err := t.SizeLiquid(hotLiquid(in), gaugeOf(in, "p1"), gaugeOf(in, "p2"), q)
	return f.Coefficient, err
}

func criticalPressureRatio(in *published.Inputs) (any, error) {
	gaugeOf(in, "p1") // printed with the case; the ratio doesn't need them
	gaugeOf(in, "p2")
	l := hotLiquid(in)
	return choke.CriticalPressureRatio(l.VapourPressure, l.CriticalPressure), nil
}

func gasCoefficient(in *published.Inputs) (any, error) {
	const molarGas = 8.314462618 // J/(mol·K), exact in the SI of 2019 to these digits
	var t choke.Trim
	var g choke.UpstreamGas
	var molar, z float64
	var temperature unit.Temperature
	var q unit.FlowRate
	in.Read("M", &molar)
	in.Read("T", &temperature)
	in.Read("Z", &z)
	in.Read("gamma", &g.HeatRatio)
	in.Read("q", &q)
	in.Read("d", &t.Bore)
	in.Optional("D1", &t.Upstream)
	in.Optional("D2", &t.Downstream)
	in.Read("xT", &t.GasRatio)
	p1, p2 := gaugeOf(in, "p1"), gaugeOf(in, "p2")
	perPressure := molar / 1000 / molarGas // ρ/p·Z·T
	g.Density = unit.Density(float64(p1+unit.Atmosphere) * perPressure / (z * temperature.Kelvin()))
	// The example's rates count volumes at 0 °C and one atmosphere.
	mass := unit.MassRate(float64(q) * float64(unit.Atmosphere) * perPressure / unit.Celsius(0).Kelvin())
	f, err := t.SizeGas(g, p1, p2, mass)
	return f.Coefficient, err
}

func firstTrial(in *published.Inputs) (any, error) {
	c, err := gasCoefficient(in)
	if err != nil {
		return nil, err
	}
	return 1.3 * c.(unit.FlowCoefficient), nil
}

func reciprocalDrop(in *published.Inputs) (any, error) {
	return 1 / nozzleDrop(in).In(unit.PSI), nil
}

func nozzleDrop(in *published.Inputs) unit.Pressure {
	var rho unit.Density
	var q unit.FlowRate
	var a unit.Area
	var cd float64
	in.Read("rho", &rho)
	in.Read("q", &q)
	in.Read("A", &a)
	in.Read("Cd", &cd)
	return choke.LiquidDrop(choke.Coefficient(cd, a), rho, q)
}

func jetVelocity(in *published.Inputs) (any, error) {
	var rho unit.Density
	var cd float64
	drop := nozzleDrop(in)
	in.Read("rho", &rho)
	in.Read("Cd", &cd)
	return choke.JetVelocity(cd, rho, drop), nil
}

func dropOverVelocity(in *published.Inputs) (any, error) {
	var rho unit.Density
	var dp unit.Pressure
	var cd float64
	in.Read("rho", &rho)
	in.Read("dp", &dp)
	in.Read("Cd", &cd)
	v := choke.JetVelocity(cd, rho, dp).In(unit.FootPerSecond)
	return dp.In(unit.PSI) / (rho.In(unit.PoundPerGallon) * v * v), nil
}

func hole(in *published.Inputs) unit.FlowCoefficient {
	var d unit.Length
	cd, n := 1.0, 1
	in.Read("d", &d)
	in.Read("Cd", &cd)
	in.Optional("n", &n)
	return choke.Coefficient(cd, choke.Hole(n, d))
}

func holeCoefficient(in *published.Inputs) (any, error) { return hole(in), nil }

func perforationFriction(in *published.Inputs) (any, error) {
	var rho unit.Density
	var q unit.FlowRate
	in.Read("rho", &rho)
	in.Read("q", &q)
	return choke.LiquidDrop(hole(in), rho, q), nil
}

func dropFromEnergy(in *published.Inputs) (any, error) {
	var energy unit.Pressure // per volume
	var rho unit.Density
	var d unit.Length
	in.Read("KE", &energy)
	in.Read("rho", &rho)
	in.Read("d", &d)
	q := unit.FlowRate(float64(choke.Hole(1, d)) * math.Sqrt(2*float64(energy)/float64(rho)))
	return choke.LiquidDrop(hole(in), rho, q), nil
}

func holeRate(in *published.Inputs) (any, error) {
	var rho unit.Density
	var dp unit.Pressure
	in.Read("rho", &rho)
	in.Read("dp", &dp)
	return choke.LiquidRate(hole(in), rho, dp), nil
}

func erosionalVelocity(in *published.Inputs) (any, error) {
	var c float64
	var rho unit.Density
	in.Read("C", &c)
	in.Read("rho", &rho)
	return choke.ErosionalVelocity(c, rho), nil
}

func orifice(in *published.Inputs) choke.Orifice {
	var o choke.Orifice
	in.Read("D", &o.Pipe)
	in.Read("d", &o.Bore)
	in.Read("taps", &o.Taps)
	return o
}

func orificeDischarge(in *published.Inputs) (any, error) {
	var mu unit.Viscosity
	var w unit.MassRate
	o := orifice(in)
	in.Read("mu", &mu)
	in.Read("w", &w)
	return o.Discharge(4 * float64(w) / (math.Pi * float64(o.Pipe) * float64(mu))), nil
}

func orificeFlow(in *published.Inputs) (choke.OrificeFlow, error) {
	var m choke.Metered
	in.Read("rho", &m.Density)
	in.Read("mu", &m.Viscosity)
	in.Read("k", &m.Exponent)
	m.Upstream, m.Downstream = gaugeOf(in, "p1"), gaugeOf(in, "p2")
	return orifice(in).Rate(m)
}

func orificeMass(in *published.Inputs) (any, error) { f, err := orificeFlow(in); return f.Mass, err }

func orificeDischargeExpansion(in *published.Inputs) (any, error) {
	f, err := orificeFlow(in)
	return f.Discharge * f.Expansion, err
}

func forDrop(in *published.Inputs) unit.FlowCoefficient {
	var rho unit.Density
	var q unit.FlowRate
	var dp unit.Pressure
	in.Read("rho", &rho)
	in.Read("q", &q)
	in.Read("dp", &dp)
	return choke.LiquidCoefficient(q, rho, dp)
}

func coefficientForDrop(in *published.Inputs) (any, error) { return forDrop(in), nil }

func openingForDrop(in *published.Inputs) (any, error) {
	var cd float64
	in.Read("Cd", &cd)
	return choke.Opening(forDrop(in), cd), nil
}

func diameterForDrop(in *published.Inputs) (any, error) {
	a, err := openingForDrop(in)
	if err != nil {
		return nil, err
	}
	return unit.Length(math.Sqrt(4 / math.Pi * float64(a.(unit.Area)))), nil
}
