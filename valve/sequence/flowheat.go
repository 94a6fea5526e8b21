package sequence

import (
	"errors"
	"fmt"
	"maps"
	"slices"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/clock"
	"completion.example/internal/fault"
)

// Flowing is the temperature of a well whose tubing has flowed for a while, by
// hydrostatics.Flowing: a liquid, at a steady rate; or some time after it was shut in.
type Flowing struct {
	Flow         FlowWay           `json:"flow,omitzero"`
	Inlet        unit.Temperature  `json:"inlet,omitzero"`  // of the fluid where it enters; producing: the ground's there where left out
	BottomMD     unit.Length       `json:"bottom,omitzero"` // measured depth down to which it flows
	Rate         unit.MassRate     `json:"rate,omitzero"`
	SpecificHeat unit.SpecificHeat `json:"specific_heat,omitzero"`
	Bore         unit.Length       `json:"bore,omitzero"`     // diameter that the heat transfer is counted on
	Transfer     unit.HeatTransfer `json:"transfer,omitzero"` // overall, from the fluid to the wall of the hole
	Hole         unit.Length       `json:"hole,omitzero"`     // diameter
	Conductivity unit.Conductivity `json:"conductivity,omitzero"`
	Diffusivity  unit.Diffusivity  `json:"diffusivity,omitzero"`
	After        string            `json:"after,omitzero"` // time since flow began, such as "36h"
	// ShutIn is for how long the well has been shut in after it had flowed for that time,
	// such as "12h", at least 10 minutes: see hydrostatics.HeatExchange.LeftAfterShutIn. It
	// flows where left out.
	ShutIn string `json:"shut_in,omitzero"`
}

// FlowWay is the way in which a fluid flows in the tubing.
type FlowWay string

// The ways.
const (
	Producing FlowWay = "producing" // up
	Injecting FlowWay = "injecting" // down
)

// closely is how near straight lines between the points come to the temperature.
const closely = 0.2 * unit.KelvinDifference

// heated is the plan with its flowing temperatures written out, p itself where it has
// none.
func (p *Plan) heated() (*Plan, error) {
	if len(p.Well.Flowing) == 0 {
		return p, nil
	}
	q := *p
	q.Well.Temperatures = maps.Clone(p.Well.Temperatures)
	var faults []error
	add := func(path string, err error) {
		if err != nil {
			faults = append(faults, fault.Fault{Path: path, Err: err})
		}
	}
	ground, err := profileOf(p.Well.Temperatures[Undisturbed])
	if err != nil {
		add(`well.flowing_temperatures`, fmt.Errorf("want well.temperatures.%s, which the ground has: %w", Undisturbed, err))
		return nil, errors.Join(faults...)
	}
	path, err := p.Well.path()
	if err != nil {
		add("well.path", err)
		return nil, errors.Join(faults...)
	}
	for _, name := range slices.Sorted(maps.Keys(p.Well.Flowing)) {
		at := `well.flowing_temperatures.` + name
		if _, twice := p.Well.Temperatures[name]; twice {
			add(at, errors.New("stands in well.temperatures too; one of them will do"))
			continue
		}
		points, err := p.Well.Flowing[name].points(ground, path)
		add(at, err)
		q.Well.Temperatures[name] = points
	}
	return &q, errors.Join(faults...)
}

func (w Well) path() (*hydrostatics.Path, error) {
	if len(w.Path) == 0 {
		return hydrostatics.Vertical(w.MD)
	}
	stations := make([]hydrostatics.Station, len(w.Path))
	for i, s := range w.Path {
		stations[i] = hydrostatics.Station(s)
	}
	return hydrostatics.NewPath(stations)
}

func profileOf(points []MarkedTVD) (*hydrostatics.TemperatureProfile, error) {
	all := make([]hydrostatics.TemperaturePoint, len(points))
	for i, m := range points {
		all[i] = hydrostatics.TemperaturePoint(m)
	}
	return hydrostatics.NewTemperatureProfile(all)
}

// points are the temperature by depth; below what flows the ground keeps its own.
func (f Flowing) points(ground *hydrostatics.TemperatureProfile, path *hydrostatics.Path) ([]MarkedTVD, error) {
	after, err := clock.Parse(f.After)
	if err != nil {
		return nil, fmt.Errorf("after is %q; write a time such as 36h", f.After)
	}
	tvd, err := path.TVD(f.BottomMD)
	if err != nil {
		return nil, fmt.Errorf("bottom: %w", err)
	}
	if !(f.BottomMD > 0) || !(tvd > 0) {
		return nil, fmt.Errorf("bottom is %v; it must be below surface", f.BottomMD)
	}
	heat := hydrostatics.HeatExchange{Rate: f.Rate, SpecificHeat: f.SpecificHeat, Radius: f.Bore / 2, Transfer: f.Transfer, Hole: f.Hole / 2,
		Conductivity: f.Conductivity, Diffusivity: f.Diffusivity, Time: after}
	long, err := heat.RelaxationDistance()
	if err != nil {
		return nil, err
	}
	x := hydrostatics.Flowing{Ground: ground, Inlet: f.Inlet, BottomTVD: tvd, Relaxing: long * tvd / f.BottomMD}
	var profile *hydrostatics.TemperatureProfile
	switch f.Flow {
	case Producing:
		if x.Inlet == (unit.Temperature{}) {
			x.Inlet = ground.At(tvd)
		}
		profile, err = x.Producing(closely)
	case Injecting:
		if x.Inlet == (unit.Temperature{}) {
			return nil, errors.New("inlet is missing: the temperature of what is injected")
		}
		profile, err = x.Injecting(closely)
	default:
		return nil, fmt.Errorf("flow is %q; there are %q and %q", f.Flow, Producing, Injecting)
	}
	if err != nil {
		return nil, err
	}
	if f.ShutIn != "" {
		if profile, err = f.cooled(ground, profile, heat); err != nil {
			return nil, err
		}
	}
	var all []MarkedTVD
	for _, m := range profile.Points() {
		all = append(all, MarkedTVD(m))
	}
	const step = unit.Foot / 1000
	for _, m := range ground.Points() {
		if m.TVD <= tvd+step {
			continue
		}
		if all[len(all)-1].TVD == tvd {
			all = append(all, MarkedTVD{TVD: tvd + step, Temperature: ground.At(tvd)})
		}
		all = append(all, MarkedTVD(m))
	}
	return all, nil
}

// cooled is the well some time after what has flowed was shut in.
func (f Flowing) cooled(ground, flowing *hydrostatics.TemperatureProfile, heat hydrostatics.HeatExchange) (*hydrostatics.TemperatureProfile, error) {
	since, err := clock.Parse(f.ShutIn)
	if err != nil {
		return nil, fmt.Errorf("shut_in is %q; write a time such as 12h", f.ShutIn)
	}
	left, err := heat.LeftAfterShutIn(since)
	if err != nil {
		return nil, fmt.Errorf("shut_in: %w", err)
	}
	return hydrostatics.AfterShutIn(ground, flowing, left)
}
