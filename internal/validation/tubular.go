package validation

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
)

// pipeOf reads a pipe: from the catalogue by od and weight, or from od with wall
// or id.
func pipeOf(in *published.Inputs) (tubular.Pipe, catalogue.Entry, error) {
	p := tubular.Pipe{Material: tubular.Steel()}
	var e catalogue.Entry
	in.Read("od", &p.OD)
	switch {
	case in.Has("id"):
		in.Read("id", &p.ID)
	case in.Has("wall"):
		var t unit.Length
		in.Read("wall", &t)
		p.ID = p.OD - 2*t
	default:
		var w unit.WeightPerLength
		in.Read("weight", &w)
		all, err := catalogue.Standard()
		if err != nil {
			return p, e, err
		}
		if e, err = all.Find(p.OD, w); err != nil {
			return p, e, err
		}
		p = e.Pipe(catalogue.Grade{})
	}
	if in.Has("grade") {
		var g catalogue.Grade
		in.Read("grade", &g)
		p.Material = g.Material()
	}
	in.Optional("yield", &p.Material.Yield)
	in.Optional("tensile", &p.Material.Tensile)
	in.Optional("young", &p.Material.Young)
	in.Optional("density", &p.Material.Density)
	return p, e, nil
}

// ofPipe makes an evaluator of something that needs nothing but the pipe.
func ofPipe[Q any](f func(tubular.Pipe, catalogue.Entry) (Q, error)) Evaluator {
	return func(in *published.Inputs) (any, error) {
		p, e, err := pipeOf(in)
		if err != nil {
			return nil, err
		}
		q, err := f(p, e)
		return q, err
	}
}

func ofPipeAlone[Q any](f func(tubular.Pipe) Q) Evaluator {
	return ofPipe(func(p tubular.Pipe, _ catalogue.Entry) (Q, error) { return f(p), nil })
}

func ofEntry[Q any](f func(catalogue.Entry) Q) Evaluator {
	return ofPipe(func(_ tubular.Pipe, e catalogue.Entry) (Q, error) {
		if e.OD == 0 {
			var none Q
			return none, fmt.Errorf("validation: the row must name a pipe of the catalogue")
		}
		return f(e), nil
	})
}

var tubularRatingsSuite = Suite{
	File: "tubular-ratings.csv",
	Quantities: map[string]Evaluator{
		"collapse":       ofPipe(collapse),
		"internal yield": ofPipeAlone(tubular.Pipe.InternalYield),
		"body yield":     ofPipeAlone(tubular.Pipe.BodyYield),
		"joint strength, short round thread": ofPipe(func(p tubular.Pipe, e catalogue.Entry) (unit.Force, error) {
			return p.RoundThread(e.ShortThread).Strength(), nil
		}),
		"joint strength, long round thread": ofPipe(func(p tubular.Pipe, e catalogue.Entry) (unit.Force, error) {
			return p.RoundThread(e.LongThread).Strength(), nil
		}),
		"joint strength, buttress": ofPipeAlone(tubular.Pipe.Buttress),
		"bore":                     ofEntry(func(e catalogue.Entry) unit.Length { return e.ID }),
		"drift":                    ofEntry(func(e catalogue.Entry) unit.Length { return e.Drift }),
	},
}

func collapse(p tubular.Pipe, _ catalogue.Entry) (unit.Pressure, error) {
	r, err := p.Collapse()
	return r.Pressure, err
}

var tubularCollapseSuite = Suite{
	File: "tubular-collapse.csv",
	Quantities: map[string]Evaluator{
		"A":                          ofCurve(func(c tubular.CollapseCurve) float64 { return c.A }),
		"B":                          ofCurve(func(c tubular.CollapseCurve) float64 { return c.B }),
		"C":                          ofCurve(func(c tubular.CollapseCurve) unit.Pressure { return c.C }),
		"F":                          ofCurve(func(c tubular.CollapseCurve) float64 { return c.F }),
		"G":                          ofCurve(func(c tubular.CollapseCurve) float64 { return c.G }),
		"D/t, yield to plastic":      ofCurve(func(c tubular.CollapseCurve) float64 { return c.YieldPlastic }),
		"D/t, plastic to transition": ofCurve(func(c tubular.CollapseCurve) float64 { return c.PlasticTransition }),
		"D/t, transition to elastic": ofCurve(func(c tubular.CollapseCurve) float64 { return c.TransitionElastic }),
		"collapse":                   ofPipe(collapse),
		"equivalent yield under load": func(in *published.Inputs) (any, error) {
			r, err := collapseUnderLoad(in)
			return r.Equivalent, err
		},
		"collapse under load": func(in *published.Inputs) (any, error) {
			r, err := collapseUnderLoad(in)
			return r.Pressure, err
		},
	},
}

func ofCurve[Q any](f func(tubular.CollapseCurve) Q) Evaluator {
	return func(in *published.Inputs) (any, error) {
		var yield unit.Pressure
		in.Read("yield", &yield)
		c, err := tubular.PrepareCollapse(yield)
		return f(c), err
	}
}

func collapseUnderLoad(in *published.Inputs) (tubular.CollapseRating, error) {
	p, _, err := pipeOf(in)
	if err != nil {
		return tubular.CollapseRating{}, err
	}
	var axial, inside unit.Pressure
	in.Read("axial", &axial)
	in.Read("inside", &inside)
	return p.CollapseUnderLoad(axial, inside)
}

var tubularDimensionsSuite = Suite{
	File: "tubular-dimensions.csv",
	Quantities: map[string]Evaluator{
		"wall":               ofEntry(func(e catalogue.Entry) unit.Length { return e.Wall }),
		"bore":               ofEntry(func(e catalogue.Entry) unit.Length { return e.ID }),
		"drift":              ofEntry(func(e catalogue.Entry) unit.Length { return e.Drift }),
		"bore of a wall":     ofPipeAlone(func(p tubular.Pipe) unit.Length { return p.ID }),
		"plain-end weight":   ofPipeAlone(tubular.Pipe.PlainEndWeight),
		"steel area":         ofPipeAlone(tubular.Pipe.SteelArea),
		"second moment":      ofPipeAlone(tubular.Pipe.SecondMoment),
		"capacity of a pipe": ofPipeAlone(tubular.Pipe.Capacity),
		"capacity": func(in *published.Inputs) (any, error) {
			var bore unit.Length
			in.Read("bore", &bore)
			return tubular.AnnularCapacity(bore, 0), nil
		},
		"annular capacity": func(in *published.Inputs) (any, error) {
			var bore, od unit.Length
			in.Read("bore", &bore)
			in.Read("od", &od)
			return tubular.AnnularCapacity(bore, od), nil
		},
		"drift by size": func(in *published.Inputs) (any, error) {
			var kind string
			var od, id unit.Length
			in.Read("kind", &kind)
			in.Read("od", &od)
			in.Read("id", &id)
			return catalogue.Drift(catalogue.Kind(kind), od, id), nil
		},
		"displacement by weight": func(in *published.Inputs) (any, error) {
			p := tubular.Pipe{Material: tubular.Steel()}
			in.Read("weight", &p.Weight)
			return p.Displacement(), nil
		},
		"volume to depth": func(in *published.Inputs) (any, error) {
			p, _, err := pipeOf(in)
			var depth unit.Length
			in.Read("depth", &depth)
			return unit.Volume(float64(p.Capacity()) * float64(depth)), err
		},
	},
}

var tubularStressSuite = Suite{
	File: "tubular-stress.csv",
	Quantities: map[string]Evaluator{
		"axial stress, closed ends":    ofStress(func(s tubular.Stresses) unit.Pressure { return s.Inner.Axial }),
		"hoop stress, inner wall":      ofStress(func(s tubular.Stresses) unit.Pressure { return s.Inner.Hoop }),
		"hoop stress, outer wall":      ofStress(func(s tubular.Stresses) unit.Pressure { return s.Outer.Hoop }),
		"radial stress, inner wall":    ofStress(func(s tubular.Stresses) unit.Pressure { return s.Inner.Radial }),
		"radial stress, outer wall":    ofStress(func(s tubular.Stresses) unit.Pressure { return s.Outer.Radial }),
		"axial stress, inner wall":     ofStress(func(s tubular.Stresses) unit.Pressure { return s.Inner.Axial }),
		"von Mises stress, inner wall": ofStress(func(s tubular.Stresses) unit.Pressure { return s.Inner.VonMises }),
	},
}

// ofStress reads a pipe by its radii with closed ends, or by its size with an
// axial force.
func ofStress(f func(tubular.Stresses) unit.Pressure) Evaluator {
	return func(in *published.Inputs) (any, error) {
		var l tubular.Load
		in.Read("inside", &l.Inside)
		in.Read("outside", &l.Outside)
		if in.Has("ri") {
			var ri, ro unit.Length
			in.Read("ri", &ri)
			in.Read("ro", &ro)
			p := tubular.Pipe{OD: 2 * ro, ID: 2 * ri, Material: tubular.Steel()}
			// Capped ends: the pressures on the caps are the only axial load.
			l.Axial = -p.EffectiveForce(l)
			return f(p.Stresses(l)), nil
		}
		p, _, err := pipeOf(in)
		in.Read("axial", &l.Axial)
		return f(p.Stresses(l)), err
	}
}
