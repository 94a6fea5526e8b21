package validation

import (
	"fmt"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
	"completion.example/packer"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"completion.example/valve"
)

var packerSuite = Suite{
	File: "packer.csv",
	Quantities: map[string]Evaluator{
		"differential that acts on a pinned piston":         pinnedPiston,
		"surface pressure that sets":                        settingPressure,
		"stretch by the end load while setting":             lockIn(func(p tubular.Pipe, l unit.Length, r packer.Locked) unit.Length { return p.Stretch(r.EndLoad, l) }),
		"stretch by ballooning while setting":               lockIn(func(p tubular.Pipe, l unit.Length, r packer.Locked) unit.Length { return p.Stretch(r.Ballooning, l) }),
		"stretch while setting":                             lockIn(func(_ tubular.Pipe, _ unit.Length, r packer.Locked) unit.Length { return r.Stretch }),
		"ring area":                                         ringArea,
		"force on a ring":                                   ringForce,
		"pressure of a column":                              columnPressure,
		"packer on casing, tubing made up into the packer":  madeUpPacker,
		"hook load of a string in a seal bore":              sealedString(func(b packer.Balance) unit.Force { return b.Reading }),
		"weight in air":                                     sealedString(func(b packer.Balance) unit.Force { return b.Weight }),
		"end force in a seal bore":                          sealedString(func(b packer.Balance) unit.Force { return b.End }),
		"seal travel upwards":                               sealTravel,
		"real force above the packer":                       connection(func(c packer.Connected) unit.Force { return c.Force }),
		"tubing on packer":                                  connection(func(c packer.Connected) unit.Force { return c.Bearing.Tubing }),
		"greatest reading when the pins part":               parting(func(p packer.Parting) any { return p.Reading.Greatest }),
		"share of the body at the greatest reading":         parting(func(p packer.Parting) any { return p.Parts[0].Usage }),
		"stretch from no load to parting":                   parting(func(p packer.Parting) any { return p.Stretch.Nominal }),
		"tension on release pins, fixed at both ends":       fixedTension,
		"load over least strength of release pins":          pinShare,
		"greatest differential from below at an axial load": held(func(e *packer.Envelope, l packer.Load) any { _, most, _ := e.DifferentialAt(l.Axial); return most }),
		"greatest differential from above at an axial load": held(func(e *packer.Envelope, l packer.Load) any { least, _, _ := e.DifferentialAt(l.Axial); return -least }),
		"greatest pull at a differential":                   held(func(e *packer.Envelope, l packer.Load) any { _, most, _ := e.AxialAt(l.Differential); return most }),
		"share of the envelope used":                        held(func(e *packer.Envelope, l packer.Load) any { return e.Margin(l).Usage }),
	},
}

func pinned(in *published.Inputs) (packer.Stage, unit.Area, error) {
	var pins valve.Pins
	var area unit.Area
	in.Read("pins", &pins.Count)
	in.Read("strength", &pins.Strength)
	in.Read("tolerance", &pins.Tolerance)
	in.Read("area", &area)
	s, err := packer.PinnedStage("set", pins, area)
	return s, area, err
}

func endOf(in *published.Inputs, b unit.Band[unit.Pressure]) (any, error) {
	var end string
	in.Read("end", &end)
	switch end {
	case "least":
		return b.Least, nil
	case "nominal":
		return b.Nominal, nil
	case "greatest":
		return b.Greatest, nil
	}
	return nil, fmt.Errorf("validation: end %q is none of least, nominal, greatest", end)
}

func pinnedPiston(in *published.Inputs) (any, error) {
	s, _, err := pinned(in)
	if err != nil {
		return nil, err
	}
	return endOf(in, s.Acts)
}

func settingPressure(in *published.Inputs) (any, error) {
	s, area, err := pinned(in)
	if err != nil {
		return nil, err
	}
	var depth unit.Length
	var tubing, annulus unit.Density
	in.Read("depth", &depth)
	in.Read("tubing", &tubing)
	in.Read("annulus", &annulus)
	c := valve.Columns{
		Applied: unit.Exactly(hydrostatics.Pressure(tubing, depth)), Opposing: unit.Exactly(hydrostatics.Pressure(annulus, depth)),
	}
	p, err := packer.Setting{
		Stages: []packer.Stage{s}, Columns: c, Piston: area, Kept: 1,
		Plug: packer.Plug{Columns: c, Rating: 10000 * unit.PSI},
	}.Pressures()
	if err != nil {
		return nil, err
	}
	return endOf(in, p.Complete)
}

// plainPipe reads a steel pipe by its diameters.
func plainPipe(in *published.Inputs) tubular.Pipe {
	p := tubular.Pipe{Material: tubular.Steel()}
	in.Read("od", &p.OD)
	in.Read("id", &p.ID)
	in.Optional("weight", &p.Weight)
	return p
}

func lockIn(of func(tubular.Pipe, unit.Length, packer.Locked) unit.Length) Evaluator {
	return func(in *published.Inputs) (any, error) {
		l := packer.LockIn{Pipe: plainPipe(in)}
		in.Read("length", &l.Length)
		in.Read("inside", &l.Inside)
		r, err := l.Locked()
		return of(l.Pipe, l.Length, r), err
	}
}

func ring(in *published.Inputs) unit.Area {
	var outer, inner unit.Length
	in.Read("outer", &outer)
	in.Read("inner", &inner)
	return tubular.AnnularCapacity(outer, inner)
}

func ringArea(in *published.Inputs) (any, error) { return ring(in), nil }

func ringForce(in *published.Inputs) (any, error) {
	var p unit.Pressure
	in.Read("pressure", &p)
	return packer.Push(p, ring(in)), nil
}

func columnPressure(in *published.Inputs) (any, error) {
	var rho unit.Density
	var depth unit.Length
	in.Read("density", &rho)
	in.Read("depth", &depth)
	return hydrostatics.Pressure(rho, depth), nil
}

// madeUpPacker takes the tubing's wall out of the area that the annulus pushes
// on: that part of the tubing's force is a pull.
func madeUpPacker(in *published.Inputs) (any, error) {
	pipe := plainPipe(in)
	var casing unit.Length
	var below, above unit.Pressure
	var setDown unit.Force
	in.Read("casing", &casing)
	in.Read("below", &below)
	in.Read("above", &above)
	in.Read("setdown", &setDown)
	tubing := packer.Push(above, pipe.SteelArea()) - setDown
	return packer.Seat{Casing: casing, Bore: pipe.ID}.Bearing(tubing, below, above).Casing, nil
}

func fluidColumn(rho unit.Density) func(unit.Length) unit.Pressure {
	return func(tvd unit.Length) unit.Pressure { return hydrostatics.Pressure(rho, tvd) }
}

func sealedString(of func(packer.Balance) unit.Force) Evaluator {
	return func(in *published.Inputs) (any, error) {
		s := movement.StringSection{Pipe: plainPipe(in)}
		var tubing, annulus unit.Density
		p := packer.Pull{}
		in.Read("depth", &s.BottomMD)
		in.Read("bore", &p.Seal)
		in.Read("tubing", &tubing)
		in.Read("annulus", &annulus)
		p.Sections, p.Inside, p.Outside = []movement.StringSection{s}, fluidColumn(tubing), fluidColumn(annulus)
		b, err := p.Balance(0)
		return of(b), err
	}
}

// squeeze reads a string sealed in a packer with its change of condition.
func squeeze(in *published.Inputs) (movement.Vertical, packer.Seat) {
	var seat packer.Seat
	s := movement.StringSection{Pipe: plainPipe(in)}
	v := movement.Vertical{}
	in.Read("casing", &seat.Casing)
	in.Read("bore", &seat.Bore)
	in.Read("depth", &s.BottomMD)
	in.Read("initial", &v.Initial.InsideDensity)
	in.Read("tubing", &v.Final.InsideDensity)
	in.Read("inside", &v.Final.InsideSurface)
	in.Read("outside", &v.Final.OutsideSurface)
	in.Read("warming", &v.Warming)
	v.Initial.OutsideDensity, v.Final.OutsideDensity = v.Initial.InsideDensity, v.Initial.InsideDensity
	s.Hole, v.Seals.Bore = seat.Casing, seat.Bore
	v.Sections = []movement.StringSection{s}
	return v, seat
}

func sealTravel(in *published.Inputs) (any, error) {
	v, _ := squeeze(in)
	a, err := v.Analyse()
	if err != nil {
		return nil, err
	}
	s, err := packer.StrokeOf([]packer.Travel{packer.TravelOf("final", a.Movement)})
	return s.Up, err
}

func connection(of func(packer.Connected) unit.Force) Evaluator {
	return func(in *published.Inputs) (any, error) {
		v, seat := squeeze(in)
		var restraint movement.Restraint
		in.Read("slackoff", &v.SlackOff)
		in.Read("restraint", &restraint)
		v.Seals.Restraint = movement.Anchored // what slack-off needs; the others are worked from it
		all, err := seat.Connections(packer.Case{Name: "final", String: v})
		if err != nil {
			return nil, err
		}
		for _, c := range all {
			if c.Restraint == restraint {
				return of(c), nil
			}
		}
		return nil, fmt.Errorf("validation: no connection %v", restraint)
	}
}

func parting(of func(packer.Parting) any) Evaluator {
	return func(in *published.Inputs) (any, error) {
		s := movement.StringSection{Pipe: plainPipe(in)}
		var fluid unit.Density
		var drag, rating unit.Force
		r := packer.Release{Rig: 1000 * unit.Kilopound, RigShare: 1}
		in.Read("length", &s.BottomMD)
		in.Read("fluid", &fluid)
		in.Read("pins", &r.Pins)
		in.Read("drag", &drag)
		in.Read("rating", &rating)
		r.Pull = packer.Pull{
			Sections: []movement.StringSection{s}, Inside: fluidColumn(fluid), Outside: fluidColumn(fluid),
			Seal: s.Pipe.OD, Drag: unit.Exactly(drag),
		}
		r.Components = []packer.Component{{Name: "body", Rating: rating, Share: 1}}
		p, err := r.Parting()
		if err != nil {
			return nil, err
		}
		return of(p), nil
	}
}

// fixed is the tension that a change leaves in a string fixed at both ends that
// seals on its own bore and has no room to buckle.
func fixed(in *published.Inputs) (unit.Force, error) {
	pipe := plainPipe(in)
	s := movement.StringSection{Pipe: pipe, Hole: pipe.OD}
	v := movement.Vertical{Seals: movement.SealBore{Bore: pipe.ID, Restraint: movement.Anchored}}
	in.Read("length", &s.BottomMD)
	in.Read("warming", &v.Warming)
	in.Read("inside", &v.Final.InsideSurface)
	v.Sections = []movement.StringSection{s}
	a, err := v.Analyse()
	return a.PackerForce, err
}

func fixedTension(in *published.Inputs) (any, error) {
	f, err := fixed(in)
	return f, err
}

func pinShare(in *published.Inputs) (any, error) {
	f, err := fixed(in)
	if err != nil {
		return nil, err
	}
	var pins unit.Band[unit.Force]
	in.Read("pins", &pins)
	m, err := packer.HoldPins(pins, false, []packer.PinCase{{Case: "cold and pressured", Load: f}})
	if err != nil {
		return nil, err
	}
	return m[0].Used, nil
}

// held is what an envelope of a packer's ratings says of a load.
func held(of func(*packer.Envelope, packer.Load) any) Evaluator {
	return func(in *published.Inputs) (any, error) {
		var r packer.Ratings
		var l packer.Load
		in.Read("from_below", &r.FromBelow)
		in.Read("from_above", &r.FromAbove)
		in.Read("tension", &r.Tension)
		in.Read("compression", &r.Compression)
		in.Read("up", &r.Up)
		in.Read("down", &r.Down)
		in.Read("area", &r.Area)
		in.Optional("axial", &l.Axial)
		in.Optional("differential", &l.Differential)
		p, err := r.Polygon()
		if err != nil {
			return nil, err
		}
		e, err := p.Envelope()
		if err != nil {
			return nil, err
		}
		return of(e, l), nil
	}
}
