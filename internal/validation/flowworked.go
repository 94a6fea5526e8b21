package validation

import (
	"math"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
)

var flowWorkedSuite = Suite{
	File: "flow-worked.csv",
	Quantities: map[string]Evaluator{
		"flow index, two readings": func(in *published.Inputs) (any, error) {
			r, err := twoReadings(in)
			return r.Index, err
		},
		"consistency index, two readings": func(in *published.Inputs) (any, error) {
			r, err := twoReadings(in)
			return r.Consistency, err
		},
		"consistency index at a point": func(in *published.Inputs) (any, error) {
			var τ unit.Pressure
			var γ unit.ShearRate
			var n float64
			in.Read("stress", &τ)
			in.Read("rate", &γ)
			in.Read("n", &n)
			return unit.Consistency(τ / flow.PowerLaw(1*unit.PascalSecondN, n).Stress(γ)), nil
		},
		"velocity": func(in *published.Inputs) (any, error) {
			var q unit.FlowRate
			in.Read("rate", &q)
			return conduit(in).Velocity(q), nil
		},
		"effective viscosity": figures(func(f flow.APIFigures, _ flow.Stream) any { return f.EffectiveViscosity }),
		"Reynolds number":     figures(func(f flow.APIFigures, _ flow.Stream) any { return f.Reynolds }),
		"Fanning factor":      figures(func(f flow.APIFigures, _ flow.Stream) any { return float64(f.Factor) }),
		"Fanning factor, power form": figures(func(f flow.APIFigures, s flow.Stream) any {
			return float64(flow.Blasius(f.Reynolds, s.Rheology.Index))
		}),
		"pressure loss": func(in *published.Inputs) (any, error) {
			var l unit.Length
			in.Read("length", &l)
			return figures(func(f flow.APIFigures, _ flow.Stream) any {
				return unit.Pressure(float64(f.Gradient) * float64(l))
			})(in)
		},
		// The source takes the turbulent form below the limit of its own edition.
		"pressure loss, power form": func(in *published.Inputs) (any, error) {
			var l unit.Length
			in.Read("length", &l)
			return figures(func(f flow.APIFigures, s flow.Stream) any {
				g := flow.FanningGradient(flow.Blasius(f.Reynolds, s.Rheology.Index), s.Density, f.Velocity, s.Conduit.HydraulicDiameter())
				return unit.Pressure(float64(g) * float64(l))
			})(in)
		},
		"velocity past a closed pipe": func(in *published.Inputs) (any, error) {
			c, speed, cling := moving(in)
			var peak float64
			in.Read("peak", &peak)
			return flow.ClosedPipeVelocity(c, speed*unit.Velocity(peak), cling), nil
		},
		"velocity past an open pipe": func(in *published.Inputs) (any, error) {
			c, speed, cling := moving(in)
			var bore unit.Length
			in.Read("bore", &bore)
			return flow.OpenPipeVelocity(c, bore, speed, cling), nil
		},
		"pressure that breaks a gel": func(in *published.Inputs) (any, error) {
			var gel unit.Pressure
			var l unit.Length
			in.Read("gel", &gel)
			in.Read("length", &l)
			return flow.GelPressure(conduit(in), gel, l), nil
		},
		"surge pressure, slot": func(in *published.Inputs) (any, error) {
			c, r := conduit(in), rheology(in)
			var v unit.Velocity
			var l unit.Length
			in.Read("velocity", &v)
			in.Read("length", &l)
			d := c.HydraulicDiameter()
			s, err := r.SlotLaminar(unit.ShearRate(12 * float64(v) / math.Max(float64(d), 1e-9)))
			return unit.Pressure(float64(s.Gradient(d)) * float64(l)), err
		},
	},
}

func twoReadings(in *published.Inputs) (flow.Rheology, error) {
	var fast, slow flow.Reading
	in.Read("fast", &fast.Speed)
	in.Read("theta fast", &fast.Dial)
	in.Read("slow", &slow.Speed)
	in.Read("theta slow", &slow.Dial)
	return flow.TwoPointPowerLaw(fast, slow)
}

// figures evaluates the third edition's figures of a fluid given by n and K or
// by two readings.
func figures(of func(flow.APIFigures, flow.Stream) any) Evaluator {
	return func(in *published.Inputs) (any, error) {
		s := flow.Stream{Conduit: conduit(in)}
		in.Read("rho", &s.Density)
		in.Read("rate", &s.Rate)
		if in.Has("n") {
			s.Rheology = rheology(in)
		} else {
			var err error
			if s.Rheology, err = twoReadings(in); err != nil {
				return nil, err
			}
		}
		f, err := s.APIFigures()
		return of(f, s), err
	}
}

func moving(in *published.Inputs) (c flow.Conduit, speed unit.Velocity, cling float64) {
	in.Read("speed", &speed)
	in.Read("cling", &cling)
	return conduit(in), speed, cling
}
