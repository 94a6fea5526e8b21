// Setting tells what sets a hydraulic packer, what else feels it, and what the
// string keeps.
package main

import (
	"flag"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/valve"
)

var command = calculator.Command{
	Name:     "setting",
	Question: "what surface pressure sets the packer, what else moves at it, and what stays in the string when it is bled off?",
	Setup:    setup,
}

func main() { calculator.Main(command) }

// inputs are the flags.
type inputs struct {
	pins                  valve.Pins
	area                  unit.Area
	complete, other       unit.Band[unit.Pressure]
	depth                 unit.Length
	tubing, annulus       unit.Density
	held, below, rating   unit.Pressure
	margin, surface, pump unit.Pressure
	kept                  float64
	pipe                  tubular.Pipe
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := inputs{pipe: tubular.Pipe{Material: tubular.Steel()}}
	flags.IntVar(&in.pins.Count, "pins", 6, "shear screws that hold the setting piston")
	flags.TextVar(&in.pins.Strength, "strength", 4500*unit.PoundForce, "strength of one screw")
	flags.Float64Var(&in.pins.Tolerance, "tolerance", 0.05, "tolerance of a screw, as a fraction")
	flags.TextVar(&in.area, "piston", 8*unit.SquareInch, "area of the setting piston")
	flags.TextVar(&in.complete, "complete", unit.Within(4000*unit.PSI, 0.05), "differential at the piston at which the packer is fully set")
	flags.TextVar(&in.depth, "depth", 9000*unit.Foot, "true vertical depth of piston, plug and other device, and length of the string")
	flags.TextVar(&in.tubing, "tubing", 9.5*unit.PoundPerGallon, "density of what stands in the tubing")
	flags.TextVar(&in.annulus, "annulus", 8.8*unit.PoundPerGallon, "density of what stands in the annulus")
	flags.TextVar(&in.held, "held", unit.Pressure(0), "pressure held on the annulus at surface")
	flags.TextVar(&in.below, "below", 4000*unit.PSI, "pressure under the plug")
	flags.TextVar(&in.rating, "plug", 7500*unit.PSI, "differential that the plug holds from above")
	flags.TextVar(&in.other, "other", unit.Within(5500*unit.PSI, 0.05), "differential, tubing over annulus, at which another device moves that must not")
	flags.TextVar(&in.margin, "margin", 200*unit.PSI, "kept to every threshold")
	flags.TextVar(&in.pump, "limit", 10000*unit.PSI, "greatest pressure of pump, lines and wellhead")
	flags.TextVar(&in.surface, "surface", 4200*unit.PSI, "surface pressure to be applied")
	flags.Float64Var(&in.kept, "kept", 0.8, "share of the setting force that the lock keeps")
	flags.TextVar(&in.pipe.OD, "od", 3.5*unit.Inch, "outside diameter of the tubing")
	flags.TextVar(&in.pipe.ID, "id", 2.992*unit.Inch, "inside diameter of the tubing")
	return func() (calculator.Answer, error) { return in.answer() }
}

func (in inputs) answer() (calculator.Answer, error) {
	first, err := packer.PinnedStage("screws part", in.pins, in.area)
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	at := unit.Exactly(hydrostatics.Pressure(in.tubing, in.depth))
	columns := valve.Columns{Applied: at, Opposing: unit.Exactly(hydrostatics.Pressure(in.annulus, in.depth) + in.held)}
	s := packer.Setting{
		Stages: []packer.Stage{first, {Name: "fully set", Acts: in.complete}}, Columns: columns, Piston: in.area, Kept: in.kept,
		Plug: packer.Plug{Columns: valve.Columns{Applied: at, Opposing: unit.Exactly(in.below)}, Rating: in.rating},
	}
	p, err := s.Pressures()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	applied, err := s.Apply(in.surface)
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	locked, err := packer.LockIn{Pipe: in.pipe, Length: in.depth, Inside: in.surface, Outside: in.held}.Locked()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	a := calculator.Answer{Steps: append(p.Steps(), locked.Steps()...)}
	stages := calculator.Table{Name: "Stages", Header: []string{"stage", "at the piston", "at surface", "seen by itself", "columns alone may do it", "after the pressure applied"}}
	for i, st := range p.Stages {
		stages.Rows = append(stages.Rows, []any{st.Name, st.Differential, st.Surface, st.Distinct, st.Unaided, applied.Stages[i].State.String()})
	}
	a.Tables = append(a.Tables, stages)
	in.window(&a, s, columns)
	a.Results = append(a.Results, []calculator.Result{
		{Name: "surface pressure to start", Value: p.Start},
		{Name: "surface pressure to set fully", Value: p.Complete},
		{Name: "differential on the plug, at the pressure applied", Value: applied.Plug},
		{Name: "share of the plug's rating", Value: applied.PlugUsed},
		{Name: "setting force, at the pressure applied", Value: applied.Force},
		{Name: "force kept by the lock", Value: applied.Kept},
		{Name: "stretch of the free string while it sets", Value: locked.Stretch},
		{Name: "tension locked in when bled off, hanger landed", Value: locked.Tension},
	}...)
	if applied.State != packer.Acted {
		a.Notes, a.Failed = append(a.Notes, "at the pressure applied the packer is not set for certain: "+applied.State.String()), true
	}
	if applied.PlugUsed > 1 {
		a.Notes, a.Failed = append(a.Notes, "the pressure applied passes the plug's rating"), true
	}
	return a, nil
}

// window adds the surface window, or why there is none.
func (in inputs) window(a *calculator.Answer, s packer.Setting, columns valve.Columns) {
	other := valve.Demand{Name: "other device", Trigger: valve.Trigger{Threshold: in.other}, Columns: columns}
	w, err := s.Window(packer.Set, valve.SurfaceRange{Greatest: in.pump}, []valve.Demand{other}, in.margin)
	if err != nil {
		a.Notes, a.Failed = append(a.Notes, err.Error()), true
		return
	}
	bounds := calculator.Table{Name: "Demands, margin kept", Header: []string{"device", "surface pressure", ""}}
	for _, b := range w.Bounds {
		word := "at least"
		if b.Upper {
			word = "at most"
		}
		bounds.Rows = append(bounds.Rows, []any{b.Name, b.Surface, word})
	}
	a.Tables = append(a.Tables, bounds)
	a.Results = append(a.Results,
		calculator.Result{Name: "least surface pressure, by " + w.Floor.Name, Value: w.Least},
		calculator.Result{Name: "greatest surface pressure, by " + w.Ceiling.Name, Value: w.Greatest})
	if in.surface < w.Least || in.surface > w.Greatest {
		a.Notes, a.Failed = append(a.Notes, "the pressure applied is outside the window"), true
	}
}
