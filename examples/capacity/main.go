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
		v := unit.Volume(float64(inside) * float64(length))
		a := calculator.Answer{
			Results: []calculator.Result{
				{Name: "capacity of the pipe", Value: working.In(inside, unit.BarrelPerFoot, "bbl/ft")},
				{Name: "capacity of the annulus", Value: working.In(outside, unit.BarrelPerFoot, "bbl/ft")},
				{Name: "displacement of the metal", Value: working.In(metal, unit.BarrelPerFoot, "bbl/ft")},
				{Name: "volume in the pipe", Value: v},
				{Name: "volume in the annulus", Value: unit.Volume(float64(outside) * float64(length))},
				{Name: "volume displaced, open end", Value: unit.Volume(float64(metal) * float64(length))},
			},
			Steps: []working.Step{
				{Name: "capacity of the pipe", Symbol: "Ci", Equation: "pi/4*d*d", Source: "geometry",
					Inputs: []working.Input{{Symbol: "d", Value: working.Of(id)}}, Value: working.In(inside, unit.BarrelPerFoot, "bbl/ft")},
				{Name: "capacity of the annulus", Symbol: "Ca", Equation: "pi/4*(H*H-D*D)", Source: "geometry",
					Inputs: []working.Input{{Symbol: "H", Value: working.Of(hole)}, {Symbol: "D", Value: working.Of(od)}}, Value: working.In(outside, unit.BarrelPerFoot, "bbl/ft")},
				{Name: "volume in the pipe", Symbol: "V", Equation: "Ci*L", Source: "geometry",
					Inputs: []working.Input{{Symbol: "Ci", Value: working.In(inside, unit.BarrelPerFoot, "bbl/ft")}, {Symbol: "L", Value: working.Of(length)}}, Value: working.Of(v)},
			},
		}
		if od == 7*unit.Inch && id == 5.920*unit.Inch && length == 10685*unit.Foot {
			a.Published = &calculator.Published{Name: "displacement volume of 7 in 38 lb/ft casing to its landing collar",
				Printed: "364 bbl", Ours: v, Source: "Utah FORGE well 16A(78)-32, daily reports of 3 and 6 January 2021"}
		}
		return a, nil
	}
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
