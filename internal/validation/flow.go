package validation

import (
	"math"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
)

var flowFrictionSuite = Suite{
	File: "flow-friction.csv",
	Quantities: map[string]Evaluator{
		"Darcy factor, Colebrook":   factor(flow.Colebrook),
		"Darcy factor, Haaland":     factor(flow.Haaland),
		"Darcy factor, Churchill":   factor(flow.Churchill),
		"Darcy factor, Swamee-Jain": factor(flow.SwameeJain),
		"Darcy factor, Chen":        factor(flow.Chen),
		"Darcy factor, laminar": func(in *published.Inputs) (any, error) {
			var re, roughness float64
			in.Read("Re", &re)
			in.Read("roughness", &roughness)
			c := flow.Conduit{Outer: 1 * unit.Metre, Roughness: unit.Length(roughness)}
			f, err := newtonian(c, re).Friction()
			return float64(f.Darcy()), err
		},
		"f Re, laminar annulus": func(in *published.Inputs) (any, error) {
			f, re, err := laminarAnnulus(in)
			return float64(f.Darcy()) * re, err
		},
		"effective over hydraulic diameter": func(in *published.Inputs) (any, error) {
			f, _, err := laminarAnnulus(in)
			return float64(f.EffectiveDiameter / f.HydraulicDiameter), err
		},
		"coefficient a of the power form": func(in *published.Inputs) (any, error) {
			var n float64
			in.Read("n", &n)
			return float64(flow.Blasius(1, n)), nil
		},
		"exponent b of the power form": func(in *published.Inputs) (any, error) {
			var n float64
			in.Read("n", &n)
			return math.Log10(float64(flow.Blasius(1, n) / flow.Blasius(10, n))), nil
		},
		"constant of the nozzle equation": func(in *published.Inputs) (any, error) {
			var rho unit.Density
			var rate unit.FlowRate
			var area unit.Area
			var cd float64
			in.Read("rho", &rho)
			in.Read("rate", &rate)
			in.Read("area", &area)
			in.Read("discharge", &cd)
			return 1 / flow.OrificeLoss(rho, rate, area, cd).In(unit.PSI), nil
		},
		"nozzle velocity": func(in *published.Inputs) (any, error) {
			var rate unit.FlowRate
			var area unit.Area
			in.Read("rate", &rate)
			in.Read("area", &area)
			d := unit.Length(math.Sqrt(4 / math.Pi * float64(area)))
			return flow.Orifices{Count: 1, Diameter: d, Discharge: 1}.Velocity(rate), nil
		},
	},
}

func factor(f func(reynolds, roughness float64) flow.DarcyFactor) Evaluator {
	return func(in *published.Inputs) (any, error) {
		var re, roughness float64
		in.Read("Re", &re)
		in.Read("roughness", &roughness)
		return float64(f(re, roughness)), nil
	}
}

// newtonian is a stream of 1 mPa·s and 1,000 kg/m³ with a Reynolds number on the
// hydraulic diameter.
func newtonian(c flow.Conduit, reynolds float64) flow.Stream {
	v := unit.Velocity(reynolds * 1e-6 / float64(c.HydraulicDiameter()))
	return flow.Stream{
		Conduit: c, Rheology: flow.Newtonian(1 * unit.Centipoise), Density: 1000 * unit.KilogramPerCubicMetre, Rate: c.Rate(v),
	}
}

func laminarAnnulus(in *published.Inputs) (f flow.Friction, reynolds float64, err error) {
	var ratio float64
	in.Read("ratio", &ratio)
	reynolds = 100
	f, err = newtonian(flow.Conduit{Outer: 0.2 * unit.Metre, Inner: unit.Length(ratio) * 0.2 * unit.Metre}, reynolds).Friction()
	return f, reynolds, err
}

var flowLaminarSuite = Suite{
	File: "flow-laminar.csv",
	Quantities: map[string]Evaluator{
		"laminar rate": func(in *published.Inputs) (any, error) {
			c, r := conduit(in), rheology(in)
			var g unit.Gradient
			in.Read("gradient", &g)
			if in.Err() != nil {
				return nil, nil
			}
			return c.LaminarRate(r, g)
		},
		"gradient of the slot": func(in *published.Inputs) (any, error) {
			c, r := conduit(in), rheology(in)
			var q unit.FlowRate
			in.Read("rate", &q)
			d := c.HydraulicDiameter()
			// The slot has the area of the annulus.
			l, err := r.SlotLaminar(unit.ShearRate(12 * float64(c.Velocity(q)) / float64(d)))
			return l.Gradient(d), err
		},
	},
}

func conduit(in *published.Inputs) (c flow.Conduit) {
	in.Read("outer", &c.Outer)
	in.Optional("inner", &c.Inner)
	return c
}

func rheology(in *published.Inputs) (r flow.Rheology) {
	in.Optional("yield", &r.Yield)
	in.Read("K", &r.Consistency)
	in.Read("n", &r.Index)
	return r
}

var flowVolumesSuite = Suite{
	File: "flow-volumes.csv",
	Quantities: map[string]Evaluator{
		"linear capacity":       func(in *published.Inputs) (any, error) { return conduit(in).Area(), nil },
		"length per barrel":     func(in *published.Inputs) (any, error) { return conduit(in).Length(1 * unit.Barrel), nil },
		"length per gallon":     func(in *published.Inputs) (any, error) { return conduit(in).Length(1 * unit.Gallon), nil },
		"length per cubic foot": func(in *published.Inputs) (any, error) { return conduit(in).Length(1 * unit.CubicFoot), nil },
		"length of a volume": func(in *published.Inputs) (any, error) {
			var v unit.Volume
			in.Read("volume", &v)
			return conduit(in).Length(v), nil
		},
		"volume of one foot": func(in *published.Inputs) (any, error) { return conduit(in).Volume(1 * unit.Foot), nil },
		"volume of a length": func(in *published.Inputs) (any, error) {
			var l unit.Length
			in.Read("length", &l)
			return conduit(in).Volume(l), nil
		},
		"pump output": func(in *published.Inputs) (any, error) {
			var p flow.Pump
			in.Read("cylinders", &p.Cylinders)
			in.Read("liner", &p.Liner)
			in.Read("stroke", &p.Stroke)
			in.Optional("rod", &p.Rod)
			in.Read("efficiency", &p.Efficiency)
			p.DoubleActing = in.Has("rod")
			return p.Output(), nil
		},
	},
}
