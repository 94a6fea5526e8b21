package release

import (
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator"
	"completion.example/packer"
	"completion.example/tubular/movement"
)

func (in inputs) release() packer.Release {
	column := func(rho unit.Density, surface unit.Pressure) func(unit.Length) unit.Pressure {
		return func(tvd unit.Length) unit.Pressure { return surface + hydrostatics.Pressure(rho, tvd) }
	}
	return packer.Release{
		Pull: packer.Pull{
			Sections: []movement.StringSection{{Pipe: in.pipe, BottomMD: in.depth}}, Path: in.survey,
			Inside: column(in.tubing, in.held), Outside: column(in.annulus, 0),
			Seal: in.seal, Drag: in.drag, Block: in.block, OpenTop: in.openTop,
		},
		Pins: in.pins,
		Components: []packer.Component{
			{Name: "tubing body at surface", Rating: in.pipe.BodyYield(), Share: in.share},
			{Name: "joint at surface", Rating: in.joint, Share: in.share},
		},
		Rig: in.rig, RigShare: in.rigShare,
	}
}

func (in inputs) answer() (calculator.Answer, error) {
	r := in.release()
	p, err := r.Parting()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	a := calculator.Answer{Steps: p.Steps(), Tables: []calculator.Table{bearers(p)}}
	a.Results = []calculator.Result{
		{Name: "reading when the pins part", Value: p.Reading},
		{Name: "reading pulling up with no load on the joint", Value: p.Neutral},
		{Name: "the top comes up meanwhile by", Value: p.Stretch, For: display.Stroke},
		{Name: "greatest reading within the shares", Value: p.MostReading},
		{Name: "that is on the joint", Value: p.Most},
	}
	judge(&a, p)
	a.Draw = in.picture(p)
	for _, more := range []func(*calculator.Answer, packer.Release) error{in.premature, in.unseat, in.parted, in.remedy.notParted} {
		if err := more(&a, r); err != nil {
			return calculator.Answer{}, calculator.BadInput{Err: err}
		}
	}
	return a, nil
}

// bearers shows what the pull does to every part.
func bearers(p packer.Parting) calculator.Table {
	t := calculator.Table{Name: "What bears the pull, strongest pins and greatest drag", Header: []string{"part", "load", "rating", "share used", "share permitted"}}
	for _, u := range p.Parts {
		t.Rows = append(t.Rows, []any{u.Name, u.Load, u.Rating, u.Usage, u.Share})
	}
	return t
}

// judge says where the pull may not part the pins.
func judge(a *calculator.Answer, p packer.Parting) {
	a.Failed = p.State != packer.Acted
	switch p.State {
	case packer.Unknown:
		a.Notes = append(a.Notes, "within the shares only the weaker pins of the band part; what stops the pull is the "+p.Weakest.Name)
	case packer.NotActed:
		a.Notes = append(a.Notes, "within the shares not even the weakest pins part; what stops the pull is the "+p.Weakest.Name)
	case packer.Acted:
	}
}
