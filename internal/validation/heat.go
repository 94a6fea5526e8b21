package validation

import (
	"math"
	"time"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
)

var flowingSuite = Suite{
	File: "hydrostatics-flowing.csv",
	Quantities: map[string]Evaluator{
		"Reynolds number in a pipe": func(in *published.Inputs) (any, error) {
			var μ unit.Viscosity
			s := flow.Stream{Conduit: conduit(in)}
			in.Read("rate", &s.Rate)
			in.Read("viscosity", &μ)
			in.Read("rho", &s.Density)
			s.Rheology = flow.Newtonian(μ)
			f, err := s.Friction()
			return f.Reynolds, err
		},
		"relaxation distance": func(in *published.Inputs) (any, error) {
			return heatBenchmark(in).exchange.RelaxationDistance()
		},
		"temperature of injected water": func(in *published.Inputs) (any, error) {
			h := heatBenchmark(in)
			var z unit.Length
			in.Read("z", &z)
			a, err := h.exchange.RelaxationDistance()
			if err != nil {
				return nil, err
			}
			return injected(a, z)
		},
		// The relaxation distance as the source has it: its coefficient is referred to
		// one radius and counted on another, and the ground takes no part at the start.
		"outlet temperature at the source's relaxation distance": func(in *published.Inputs) (any, error) {
			h := heatBenchmark(in)
			x := h.exchange
			ri, U, k := float64(h.bore), float64(x.Transfer), float64(x.Conductivity)
			f := 0.0
			if t := x.Time.Seconds(); t > 0 {
				f = hydrostatics.ThermalTime(float64(x.Diffusivity) * t / float64(x.Hole*x.Hole))
			}
			return injected(unit.Length(float64(x.Rate)*float64(x.SpecificHeat)*(k+ri*U*f)/(2*math.Pi*ri*U*k)), 30)
		},
	},
}

// heatBench is cold water pumped down a grouted pipe in warm rock.
type heatBench struct {
	exchange hydrostatics.HeatExchange
	bore     unit.Length // radius
}

// heatBenchmark reads one: radii, conductivities in W/(m·K), water and rock as the
// benchmark has them.
func heatBenchmark(in *published.Inputs) heatBench {
	var nusselt, water, pipe, grout, days float64
	var bore, wall, hole unit.Length
	var rate unit.FlowRate
	for name, to := range map[string]*float64{"nusselt": &nusselt, "conductivity": &water, "pipe": &pipe, "grout": &grout, "days": &days} {
		in.Read(name, to)
	}
	in.Read("bore", &bore)
	in.Read("wall", &wall)
	in.Read("hole", &hole)
	in.Read("rate", &rate)
	const density, rock = 1000, 2.78018
	ri, rp, rh := float64(bore), float64(wall), float64(hole)
	film := nusselt * water / (2 * ri)
	resistance := rp/(ri*film) + rp*math.Log(rp/ri)/pipe + rp*math.Log(rh/rp)/grout
	return heatBench{bore: bore, exchange: hydrostatics.HeatExchange{
		Rate: unit.MassRate(density * float64(rate)), SpecificHeat: 4190, Radius: wall, Transfer: unit.HeatTransfer(1 / resistance),
		Hole: hole, Conductivity: rock, Diffusivity: rock / (1800 * 1778), Time: time.Duration(days * 24 * float64(time.Hour)),
	}}
}

// injected is water of 20 °C after some way down rock of 55 °C.
func injected(relaxing, z unit.Length) (any, error) {
	ground, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{Temperature: unit.Celsius(55)}})
	if err != nil {
		return nil, err
	}
	p, err := hydrostatics.Flowing{Ground: ground, Inlet: unit.Celsius(20), BottomTVD: z, Relaxing: relaxing}.Injecting(1e-3)
	if err != nil {
		return nil, err
	}
	return p.At(z), nil
}
