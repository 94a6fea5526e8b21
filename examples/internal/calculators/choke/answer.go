package choke

import (
	"completion.example/hydrostatics/unit/display"
	"errors"
	"fmt"
	"math"
	"os"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/valve/production/choke"
)

func (in inputs) ofLiquid() (calculator.Answer, error) {
	var f choke.LiquidFlow
	var err error
	switch in.solve {
	case "coefficient":
		f, err = in.trim.SizeLiquid(in.liquid, in.upstream, in.downstream, in.rate)
	case "rate":
		f, err = in.trim.Liquid(in.liquid, in.upstream, in.downstream)
	case "drop":
		f, err = in.trim.LiquidDrop(in.liquid, in.upstream, in.rate)
	default:
		return calculator.Answer{}, in.wrong("coefficient, rate, drop")
	}
	if err != nil {
		return calculator.Answer{}, sort(err)
	}
	a := calculator.Answer{Steps: f.Steps(), Notes: f.Outside, Results: []calculator.Result{
		{Name: "rate", Value: f.Rate, For: display.ProductionRate},
		{Name: "drop", Value: f.Drop},
		{Name: "drop at which it chokes", Value: f.ChokedDrop},
		{Name: "choked", Value: f.Choked},
	}}
	if f.Reynolds > 0 {
		a.Results = append(a.Results, calculator.Result{Name: "valve Reynolds number", Value: f.Reynolds}, calculator.Result{Name: "Reynolds factor", Value: f.ReynoldsFactor})
	}
	a.Results = append(a.Results, in.opening(f.Coefficient)...)
	a.Results = append(a.Results, in.speed(f.Rate, f.Liquid.Density, &a)...)
	if in.solve == "coefficient" && in.rate == 360*unit.CubicMetrePerHour && in.liquid.Density == 965.4 && in.trim.Recovery == 0.9 && in.liquid.Viscosity == 0 && in.upstream == 680*unit.Kilopascal-unit.Atmosphere && in.downstream == 220*unit.Kilopascal-unit.Atmosphere &&
		in.liquid.VapourPressure == 70.1*unit.Kilopascal && in.liquid.CriticalPressure == 22120*unit.Kilopascal && in.trim.Upstream == 0 && in.trim.Downstream == 0 {
		a.Published = &calculator.Published{Name: "Kv of a globe valve for hot water", Printed: "164.995 Kv",
			Ours: working.In(f.Coefficient, unit.Kv, "Kv").String(), Source: source}
	}
	return a, in.position(&a, f.Coefficient)
}

func (in inputs) ofGas() (calculator.Answer, error) {
	in.gas.Density, in.gas.Viscosity = in.liquid.Density, in.liquid.Viscosity
	var f choke.GasFlow
	var err error
	switch in.solve {
	case "coefficient":
		f, err = in.trim.SizeGas(in.gas, in.upstream, in.downstream, unit.MassRate(float64(in.rate)*float64(in.gas.Density)))
	case "rate":
		f, err = in.trim.Gas(in.gas, in.upstream, in.downstream)
	case "drop":
		f, err = in.trim.GasDrop(in.gas, in.upstream, unit.MassRate(float64(in.rate)*float64(in.gas.Density)))
	default:
		return calculator.Answer{}, in.wrong("coefficient, rate, drop")
	}
	if err != nil {
		return calculator.Answer{}, sort(err)
	}
	a := calculator.Answer{Steps: f.Steps(), Notes: f.Outside, Results: []calculator.Result{
		{Name: "mass rate", Value: f.Mass},
		{Name: "rate at inlet conditions", Value: f.Rate, For: display.ProductionRate},
		{Name: "drop", Value: f.Drop},
		{Name: "drop over inlet pressure, absolute", Value: f.Ratio},
		{Name: "ratio at which it is critical", Value: f.ChokedRatio},
		{Name: "critical", Value: f.Critical},
		{Name: "expansion factor", Value: f.Expansion},
	}}
	a.Results = append(a.Results, in.opening(f.Coefficient)...)
	a.Results = append(a.Results, in.speed(f.Rate, f.Density, &a)...)
	return a, in.position(&a, f.Coefficient)
}

// sort tells a flow that can't be from flags that can't be.
func sort(err error) error {
	for _, none := range []error{choke.ErrNoFlow, choke.ErrChoked, choke.ErrNoSize} {
		if errors.Is(err, none) {
			return err
		}
	}
	return calculator.BadInput{Err: err}
}

// opening tells a coefficient in the ways it is told.
func (in inputs) opening(c unit.FlowCoefficient) []calculator.Result {
	r := []calculator.Result{{Name: "coefficient", Value: c}, {Name: "as Cv", Value: c.In(unit.Cv)}, {Name: "as Kv", Value: c.In(unit.Kv)}}
	if in.discharge > 0 {
		a := choke.Opening(c, in.discharge)
		d := unit.Length(math.Sqrt(4 / math.Pi * float64(a)))
		r = append(r, calculator.Result{Name: "opening at the discharge coefficient", Value: a}, calculator.Result{Name: "diameter of one round hole", Value: d, For: display.Diameter})
	}
	return r
}

// speed holds the velocity in the bore against API RP 14E.
func (in inputs) speed(q unit.FlowRate, rho unit.Density, a *calculator.Answer) []calculator.Result {
	if !(in.trim.Bore > 0) || !(in.erosion > 0) {
		return nil
	}
	v := unit.Velocity(float64(q) / float64(choke.Hole(1, in.trim.Bore)))
	limit := choke.ErosionalVelocity(in.erosion, rho)
	if v > limit {
		a.Notes = append(a.Notes, "the velocity in the bore is above the erosional velocity")
	}
	return []calculator.Result{{Name: "velocity in the bore, inlet conditions", Value: v}, {Name: "erosional velocity", Value: limit}}
}

// position names the least position of a table that passes the rate.
func (in inputs) position(a *calculator.Answer, c unit.FlowCoefficient) error {
	if in.table == "" {
		return nil
	}
	file, err := os.Open(in.table)
	if err != nil {
		return calculator.BadInput{Err: err}
	}
	defer file.Close()
	table, err := choke.ReadTable(file)
	if err != nil {
		return calculator.BadInput{Err: err}
	}
	i := table.Least(c)
	if i < 0 {
		a.Failed = true
		a.Notes = append(a.Notes, fmt.Sprintf("no position passes it; the widest, %q, has %s", table[len(table)-1].Name, in.units.Format(table[len(table)-1].Coefficient, display.Usual)))
		return nil
	}
	a.Results = append(a.Results, calculator.Result{Name: "least position that passes it", Value: table[i].Name})
	return nil
}
