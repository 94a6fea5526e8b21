package gascolumn

import (
	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
)

// rows of the table.
const rows = 10

func answer(in input) (calculator.Answer, error) {
	c, profile, err := in.column()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	bottom, err := c.At(in.depth)
	if err != nil {
		return calculator.Answer{}, err
	}
	rho, err := c.EquivalentDensity(in.depth)
	if err != nil {
		return calculator.Answer{}, err
	}
	a := calculator.Answer{Results: []calculator.Result{
		{Name: "pressure at the bottom", Value: bottom},
		{Name: "what the gas column weighs", Value: bottom - in.top},
		{Name: "equivalent mud weight from surface", Value: rho},
	}}
	table, err := in.table(c, profile)
	if err != nil {
		return calculator.Answer{}, err
	}
	a.Tables = []calculator.Table{table}
	a.Draw = in.picture(c)
	if in.kind == "natural" {
		err = in.byHand(&a, profile, bottom)
	}
	return a, err
}

func (in input) table(c *hydrostatics.Column, profile *hydrostatics.TemperatureProfile) (calculator.Table, error) {
	t := calculator.Table{Name: "Down the column", Header: []string{"TVD", "pressure", "temperature", "density"}}
	for i := range rows + 1 {
		z := in.depth * unit.Length(i) / rows
		p, err := c.At(z)
		if err != nil {
			return t, err
		}
		rho, err := c.Density(z)
		if err != nil {
			return t, err
		}
		t.Rows = append(t.Rows, []any{z, p, profile.At(z), rho})
	}
	return t, nil
}

// byHand adds the working with mean values, which a person can follow, beside the
// integrated answer.
func (in input) byHand(a *calculator.Answer, profile *hydrostatics.TemperatureProfile, bottom unit.Pressure) error {
	middle := profile.At(in.depth / 2)
	state, err := in.natural.State((in.top+bottom)/2, middle)
	if err != nil {
		return err
	}
	mean := fluid.AverageGasColumn{Gravity: in.natural.Gravity, Z: state.Z, Temperature: middle, Height: in.depth}
	a.Results = append(a.Results,
		calculator.Result{Name: "mean deviation factor Z", Value: state.Z},
		calculator.Result{Name: "pressure at the bottom by mean Z and temperature", Value: mean.Bottom(in.top)})
	a.Steps = append(state.Steps(), mean.Steps(in.top)...)
	if in.natural == (fluid.Gas{Gravity: 0.8}) && in.top == 2500*unit.PSI && in.depth == 9000*unit.Foot && in.surface == unit.Fahrenheit(190) && in.end == in.surface {
		mean.Z = 0.96
		a.Published = &calculator.Published{Name: "pressure at the bottom by hand with the Z of 0.96 given there, gauge taken for absolute", Printed: "3104.5 psi",
			Ours: in.top * unit.Pressure(mean.Factor()), Source: "Well Control for Completions and Interventions (2018), p. 33"}
		a.Notes = append(a.Notes, "The source's Z of 0.96 is high for this gas: its own Z makes the column heavier.")
	}
	return nil
}
