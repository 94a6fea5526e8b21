package packer

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/valve"
)

// Purpose says what a surface pressure is for.
type Purpose uint8

// Purposes.
const (
	Set   Purpose = iota // the packer must set, all of its stages
	Spare                // the packer must not begin to set
)

// Demands returns what the packer and its plug ask of the surface pressure.
//
// To set, every stage must act; the plug, where it has a rating, must hold either way. To spare the
// packer its first stage must hold; the later ones can't act before it.
func (s Setting) Demands(p Purpose) ([]valve.Demand, error) {
	if err := s.checkPressures(); err != nil {
		return nil, err
	}
	stages := s.Stages
	if p == Spare {
		stages = stages[:1]
	}
	var d []valve.Demand
	for _, stage := range stages {
		d = append(d, valve.Demand{
			Name: "packer: " + stage.Name, Trigger: valve.Trigger{Threshold: stage.Acts}, Columns: s.Columns, Fire: p == Set,
		})
	}
	if s.Plug.Rating == 0 {
		return d, nil
	}
	return append(d, valve.Demand{
		Name: "plug", Trigger: valve.Trigger{Threshold: unit.Exactly(s.Plug.Rating)}, Columns: s.Plug.Columns,
	}), nil
}

// Window returns the least and the greatest surface pressure that sets, or
// spares, the packer, and with which everything else that feels the pressure
// does what it must: valves, discs, ratings of pipe, each with its own band and
// its own columns. The margin is kept to every device's threshold on both sides.
//
// Where no pressure satisfies all, the error is a *valve.NoSurfacePressureError
// with the two demands that contradict each other. Source: definition of a
// threshold; valve.Demand.
//
//	least = max over what must act, greatest = min over what must not
func (s Setting) Window(p Purpose, surface valve.SurfaceRange, others []valve.Demand, margin unit.Pressure) (valve.SurfaceWindow, error) {
	f := fault.In(scope)
	f.Add(fault.AtLeast("margin", margin, 0))
	own, err := s.Demands(p)
	if err != nil {
		f.Add(err)
	}
	if err := f.Err(); err != nil {
		return valve.SurfaceWindow{}, err
	}
	demands := append(own, others...)
	for i := range demands {
		b := &demands[i].Trigger.Threshold
		b.Least, b.Greatest = b.Least-margin, b.Greatest+margin
	}
	return valve.Window(surface, demands)
}
