// Capacity tells what a pipe and the annulus around it hold.
package main

import (
	"errors"
	"flag"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/tubular"
)

var command = calculator.Command{
	Name:     "capacity",
	Question: "what do a pipe and the annulus around it hold, and what does the pipe displace?",
	Setup:    setup,
}

func main() { calculator.Main(command) }

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var od, id, hole, length unit.Length
	flags.TextVar(&od, "od", 7*unit.Inch, "outside diameter of the pipe")
	flags.TextVar(&id, "id", 5.920*unit.Inch, "inside diameter of the pipe")
	flags.TextVar(&hole, "hole", 8.5*unit.Inch, "inside diameter of the hole or casing around it")
	flags.TextVar(&length, "length", 10685*unit.Foot, "measured length")
	return func() (calculator.Answer, error) {
		if err := check(od, id, hole, length); err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
		p := tubular.Pipe{OD: od, ID: id, Material: tubular.Steel()}
		inside, outside, metal := p.Capacity(), tubular.AnnularCapacity(hole, od), p.Displacement()
		of := func(a unit.Area) unit.Volume { return unit.Volume(float64(a) * float64(length)) }
		v := of(inside)
		a := calculator.Answer{
			Results: []calculator.Result{
				{Name: "capacity of the pipe", Value: working.In(inside, unit.BarrelPerFoot, "bbl/ft")},
				{Name: "capacity of the annulus", Value: working.In(outside, unit.BarrelPerFoot, "bbl/ft")},
				{Name: "displacement of the metal", Value: working.In(metal, unit.BarrelPerFoot, "bbl/ft")},
				{Name: "volume in the pipe", Value: v},
				{Name: "volume in the annulus", Value: of(outside)},
				{Name: "volume displaced, open end", Value: of(metal)},
				{Name: "volume displaced, closed end", Value: of(p.ClosedDisplacement())},
			},
			Steps: []working.Step{
				{Name: "capacity of the pipe", Symbol: "Ci", Equation: "pi/4*d*d", Source: "geometry",
					Inputs: []working.Input{{Symbol: "d", Value: working.Of(id)}}, Value: working.In(inside, unit.BarrelPerFoot, "bbl/ft")},
				{Name: "capacity of the annulus", Symbol: "Ca", Equation: "pi/4*(H*H-D*D)", Source: "geometry",
					Inputs: []working.Input{{Symbol: "H", Value: working.Of(hole)}, {Symbol: "D", Value: working.Of(od)}}, Value: working.In(outside, unit.BarrelPerFoot, "bbl/ft")},
				{Name: "displacement of the metal, plain ends", Symbol: "Cm", Equation: "pi/4*(D*D-d*d)", Source: "geometry",
					Inputs: []working.Input{{Symbol: "D", Value: working.Of(od)}, {Symbol: "d", Value: working.Of(id)}}, Value: working.In(metal, unit.BarrelPerFoot, "bbl/ft")},
				times("volume in the pipe", "V", "Ci", inside, length, v),
				times("volume in the annulus", "Va", "Ca", outside, length, of(outside)),
				times("volume displaced, open end", "Vm", "Cm", metal, length, of(metal)),
			},
			Notes: []string{"Couplings and upsets are left out: the pipe displaces a little more with them, and the annulus holds as much less."},
		}
		if od == 7*unit.Inch && id == 5.920*unit.Inch && length == 10685*unit.Foot {
			a.Published = &calculator.Published{Name: "displacement volume of 7 in 38 lb/ft casing to its landing collar",
				Printed: "364 bbl", Ours: v, Source: "Utah FORGE well 16A(78)-32, daily reports of 3 and 6 January 2021"}
		}
		return a, nil
	}
}

// times is the step from a capacity to a volume.
func times(name, symbol, capacity string, per unit.Area, length unit.Length, v unit.Volume) working.Step {
	return working.Step{Name: name, Symbol: symbol, Equation: capacity + "*L", Source: "geometry", Value: working.In(v, unit.Barrel, "bbl"),
		Inputs: []working.Input{{Symbol: capacity, Value: working.In(per, unit.BarrelPerFoot, "bbl/ft")}, {Symbol: "L", Value: working.Of(length)}}}
}

func check(od, id, hole, length unit.Length) error {
	var faults []error
	if err := (tubular.Pipe{OD: od, ID: id, Material: tubular.Steel()}).Validate(); err != nil {
		faults = append(faults, err)
	}
	if !(hole > od) {
		faults = append(faults, fmt.Errorf("hole is %v; it must be larger than the pipe's outside diameter of %v", hole, od))
	}
	if !(length > 0) {
		faults = append(faults, fmt.Errorf("length is %v; it must be above 0 ft", length))
	}
	return errors.Join(faults...)
}
