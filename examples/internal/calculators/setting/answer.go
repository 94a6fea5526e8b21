package setting

import (
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator"
	"completion.example/packer"
	"completion.example/valve"
)

func (in inputs) answer() (calculator.Answer, error) {
	s, err := in.setting()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	p, err := s.Pressures()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	applied, err := s.Apply(in.surface)
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	a := calculator.Answer{Steps: p.Steps(), Tables: []calculator.Table{stages(p, applied)}}
	in.window(&a, s)
	a.Draw = in.picture(p, s)
	a.Results = append(a.Results, []calculator.Result{
		{Name: "surface pressure to start", Value: p.Start},
		{Name: "surface pressure to set fully", Value: p.Complete},
		{Name: "differential on the plug, at the pressure applied", Value: applied.Plug},
		{Name: "share of the plug's rating", Value: applied.PlugUsed},
		{Name: "setting force, at the pressure applied", Value: applied.Force},
		{Name: "force kept by the lock", Value: applied.Kept},
	}...)
	if err := in.lockIn(&a, p); err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	judge(&a, applied)
	return a, nil
}

// lockIn adds what stays in the string from the pressure at which the slips bite,
// which is not the pressure applied in the end.
func (in inputs) lockIn(a *calculator.Answer, p packer.Pressures) error {
	l := packer.LockIn{Pipe: in.pipe, Length: in.length, Outside: in.held, Chamber: in.chamber}
	bite, ok := p.Bite(in.surface)
	if !ok {
		a.Notes = append(a.Notes, "at the pressure applied the slips may not bite: nothing is said about what they would lock in")
		_, err := l.Bitten(unit.Exactly(in.surface))
		return err
	}
	locked, err := l.Bitten(bite)
	if err != nil {
		return err
	}
	a.Steps = append(a.Steps, locked.Nominal.Steps()...)
	a.Results = append(a.Results,
		calculator.Result{Name: "surface pressure at which the slips bite", Value: locked.Inside},
		calculator.Result{Name: "stretch of the free string then", Value: locked.Stretch, For: display.Stroke},
		calculator.Result{Name: "tension locked in when bled off, hanger landed", Value: locked.Tension})
	return nil
}

// setting is the packer under the two columns, and its plug.
func (in inputs) setting() (packer.Setting, error) {
	first, err := packer.PinnedStage("screws part", in.pins, in.area)
	if err != nil {
		return packer.Setting{}, err
	}
	at := unit.Exactly(hydrostatics.Pressure(in.tubing, in.depth))
	return packer.Setting{
		Stages:  []packer.Stage{first, {Name: "fully set", Acts: in.complete}},
		Columns: valve.Columns{Applied: at, Opposing: unit.Exactly(hydrostatics.Pressure(in.annulus, in.depth) + in.held)},
		Piston:  in.area, Kept: in.kept,
		Plug: packer.Plug{Columns: valve.Columns{Applied: at, Opposing: unit.Exactly(in.below)}, Rating: in.rating},
	}, nil
}

// stages shows what every stage needs, and what it has come to.
func stages(p packer.Pressures, applied packer.Applied) calculator.Table {
	t := calculator.Table{Name: "Stages", Header: []string{"stage", "at the piston", "at surface", "seen by itself", "columns alone may do it", "after the pressure applied"}}
	for i, st := range p.Stages {
		t.Rows = append(t.Rows, []any{st.Name, st.Differential, st.Surface, st.Distinct, st.Unaided, applied.Stages[i].State.String()})
	}
	return t
}

// judge says where the pressure applied is not enough, or too much for the plug.
func judge(a *calculator.Answer, applied packer.Applied) {
	if applied.State != packer.Acted {
		a.Notes, a.Failed = append(a.Notes, "at the pressure applied the packer is not set for certain: "+applied.State.String()), true
	}
	if applied.PlugUsed > 1 {
		a.Notes, a.Failed = append(a.Notes, "the pressure applied passes the plug's rating"), true
	}
}

// window adds the surface window, or why there is none.
func (in inputs) window(a *calculator.Answer, s packer.Setting) {
	other := valve.Demand{Name: "other device", Trigger: valve.Trigger{Threshold: in.other}, Columns: s.Columns}
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
