package capacity

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/tubular"
)

func (in inputs) pipe() tubular.Pipe {
	return tubular.Pipe{OD: in.od, ID: in.id, Material: tubular.Steel()}
}

func (in inputs) answer() (calculator.Answer, error) {
	if err := in.check(); err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	p := in.pipe()
	inside, outside, metal := p.Capacity(), tubular.AnnularCapacity(in.hole, in.od), p.Displacement()
	a := calculator.Answer{
		Results: []calculator.Result{
			{Name: "capacity of the pipe", Value: perLength(inside)},
			{Name: "capacity of the annulus", Value: perLength(outside)},
			{Name: "displacement of the metal", Value: perLength(metal)},
			{Name: "volume in the pipe", Value: in.volume(inside)},
			{Name: "volume in the annulus", Value: in.volume(outside)},
			{Name: "volume displaced, open end", Value: in.volume(metal)},
			{Name: "volume displaced, closed end", Value: in.volume(p.ClosedDisplacement())},
		},
		Steps: in.steps(inside, outside, metal),
		Notes: []string{"Couplings and upsets are left out: the pipe displaces a little more with them, and the annulus holds as much less."},
	}
	if in.pipe() == published.pipe() && in.length == published.length {
		a.Published = &calculator.Published{Name: "displacement volume of 7 in 38 lb/ft casing to its landing collar",
			Printed: "364 bbl", Ours: in.volume(inside), Source: "Utah FORGE well 16A(78)-32, daily reports of 3 and 6 January 2021"}
	}
	return a, nil
}

// volume is what a capacity makes over the length.
func (in inputs) volume(capacity unit.Area) unit.Volume {
	return unit.Volume(float64(capacity) * float64(in.length))
}

func perLength(capacity unit.Area) working.Value {
	return working.In(capacity, unit.BarrelPerFoot, "bbl/ft")
}

func (in inputs) steps(inside, outside, metal unit.Area) []working.Step {
	h, od, id := working.Input{Symbol: "H", Value: working.Of(in.hole)}, working.Input{Symbol: "D", Value: working.Of(in.od)}, working.Input{Symbol: "d", Value: working.Of(in.id)}
	return []working.Step{
		{Name: "capacity of the pipe", Symbol: "Ci", Equation: "pi/4*d*d", Source: "geometry", Inputs: []working.Input{id}, Value: perLength(inside)},
		{Name: "capacity of the annulus", Symbol: "Ca", Equation: "pi/4*(H*H-D*D)", Source: "geometry", Inputs: []working.Input{h, od}, Value: perLength(outside)},
		{Name: "displacement of the metal, plain ends", Symbol: "Cm", Equation: "pi/4*(D*D-d*d)", Source: "geometry", Inputs: []working.Input{od, id}, Value: perLength(metal)},
		in.times("volume in the pipe", "V", "Ci", inside),
		in.times("volume in the annulus", "Va", "Ca", outside),
		in.times("volume displaced, open end", "Vm", "Cm", metal),
	}
}

// times is the step from a capacity to a volume.
func (in inputs) times(name, symbol, capacity string, of unit.Area) working.Step {
	return working.Step{Name: name, Symbol: symbol, Equation: capacity + "*L", Source: "geometry", Value: working.In(in.volume(of), unit.Barrel, "bbl"),
		Inputs: []working.Input{{Symbol: capacity, Value: perLength(of)}, {Symbol: "L", Value: working.Of(in.length)}}}
}
