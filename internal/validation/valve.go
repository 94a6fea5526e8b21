package validation

import (
	"errors"
	"fmt"
	"time"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
	"completion.example/valve"
	"completion.example/valve/controlline"
	"completion.example/valve/sleeve"
)

var valveSuite = Suite{
	File: "valve.csv",
	Quantities: map[string]Evaluator{
		"panel pressure that shifts a sleeve": sleevePressure,
		"working pressure": func(in *published.Inputs) (any, error) {
			r, err := lineRatings(in)
			return r.Working, err
		},
		"collapse pressure": func(in *published.Inputs) (any, error) {
			r, err := lineRatings(in)
			return r.Collapse, err
		},
		"line volume": func(in *published.Inputs) (any, error) { return controlLine(in).Volume(), nil },
		"storage of the liquid": func(in *published.Inputs) (any, error) {
			var bulk, rise unit.Pressure
			in.Read("bulk", &bulk)
			in.Read("rise", &rise)
			q := controlLiquid()
			q.Compressibility = unit.Compressibility(1 / float64(bulk))
			s, err := controlLine(in).Storage(q, rise)
			return s.Fluid, err
		},
		"minutes to move a volume": func(in *published.Inputs) (any, error) {
			q := controlLiquid()
			var drive unit.Pressure
			var swept unit.Volume
			in.Read("viscosity", &q.Viscosity)
			in.Read("drive", &drive)
			in.Read("swept", &swept)
			rate, err := controlLine(in).RateAt(q, drive)
			return float64(swept) / float64(rate) / time.Minute.Seconds(), err
		},

		"least shear differential":    func(in *published.Inputs) (any, error) { b, err := shear(in); return b.Least, err },
		"nominal shear differential":  func(in *published.Inputs) (any, error) { b, err := shear(in); return b.Nominal, err },
		"greatest shear differential": func(in *published.Inputs) (any, error) { b, err := shear(in); return b.Greatest, err },
		"least likely shear differential": func(in *published.Inputs) (any, error) {
			b, err := likelyShear(in)
			return b.Least, err
		},
		"greatest likely shear differential": func(in *published.Inputs) (any, error) {
			b, err := likelyShear(in)
			return b.Greatest, err
		},
		"least surface pressure to shear":    func(in *published.Inputs) (any, error) { b, err := surfaceShear(in); return b.Least, err },
		"nominal surface pressure to shear":  func(in *published.Inputs) (any, error) { b, err := surfaceShear(in); return b.Nominal, err },
		"greatest surface pressure to shear": func(in *published.Inputs) (any, error) { b, err := surfaceShear(in); return b.Greatest, err },

		"gas leak limit in ft3 per hour": func(*published.Inputs) (any, error) {
			return float64(valve.LeakLimitGas) * time.Hour.Seconds() / float64(unit.CubicFoot), nil
		},
		"liquid leak limit in gal per hour": func(*published.Inputs) (any, error) {
			return float64(valve.LeakLimitLiquid) * time.Hour.Seconds() / float64(unit.Gallon), nil
		},
		"leak constant in degR per psi": func(in *published.Inputs) (any, error) {
			s := standardState(in)
			return s.Constant() * 1.8 * float64(unit.PSI), nil
		},
		"leak constant in K per MPa": func(in *published.Inputs) (any, error) {
			s := standardState(in)
			return s.Constant() * float64(unit.Megapascal), nil
		},
		"leak constant over gas temperature": func(in *published.Inputs) (any, error) {
			var t unit.Temperature
			in.Read("gas", &t)
			return unit.Compressibility(valve.StandardUS().Constant() / t.Kelvin()), nil
		},
		"gas leak rate":                             gasLeakRate,
		"greatest rise of p/Z":                      greatestRise,
		"fail-safe depth":                           failSafeDepth,
		"margin over the recorded opening pressure": func(*published.Inputs) (any, error) { return valve.ReopenMargin, nil },
		"surface opening pressure": func(in *published.Inputs) (any, error) {
			var opens, tubing unit.Pressure
			var g unit.Gradient
			var s valve.ControlState
			in.Read("opens", &opens)
			in.Read("tubing", &tubing)
			in.Read("gradient", &g)
			in.Read("depth", &s.TVD)
			s.Density, s.Backing = hydrostatics.Density(g), unit.Exactly(tubing)
			p, err := valve.SafetyValve{Opens: unit.Exactly(opens)}.Pressures(s)
			return p.Open.Nominal, err
		},
	},
}

func controlLine(in *published.Inputs) controlline.Line {
	l := controlline.Line{Length: unit.Metre}
	in.Read("od", &l.OD)
	in.Read("wall", &l.Wall)
	in.Optional("length", &l.Length)
	return l
}

// controlLiquid stands in where a case doesn't depend on the liquid: in laminar
// flow the density has no part.
func controlLiquid() controlline.LineFluid {
	return controlline.LineFluid{Density: 870 * unit.KilogramPerCubicMetre, Viscosity: 10 * unit.Centipoise}
}

func lineRatings(in *published.Inputs) (controlline.Ratings, error) {
	l := controlLine(in)
	in.Read("yield", &l.Yield)
	in.Read("tolerance", &l.WallTolerance)
	return l.Ratings()
}

func pins(in *published.Inputs) (p valve.Pins, area unit.Area) {
	in.Read("count", &p.Count)
	in.Read("strength", &p.Strength)
	in.Read("tolerance", &p.Tolerance)
	in.Read("area", &area)
	return p, area
}

func shear(in *published.Inputs) (unit.Band[unit.Pressure], error) {
	p, area := pins(in)
	return p.PressureOn(area)
}

func likelyShear(in *published.Inputs) (unit.Band[unit.Pressure], error) {
	p, area := pins(in)
	p.Correlation = valve.Independent
	return p.LikelyPressureOn(area)
}

// surfaceShear goes by the valve's own bounds: what holds, and what fires.
func surfaceShear(in *published.Inputs) (unit.Band[unit.Pressure], error) {
	var tubing, annulus unit.Density
	var depth unit.Length
	in.Read("tubing", &tubing)
	in.Read("annulus", &annulus)
	in.Read("depth", &depth)
	band, err := shear(in)
	columns := valve.Columns{
		Applied:  unit.Exactly(hydrostatics.Pressure(tubing, depth)),
		Opposing: unit.Exactly(hydrostatics.Pressure(annulus, depth)),
	}
	bound := func(b unit.Band[unit.Pressure], fire bool) unit.Pressure {
		return valve.Demand{Trigger: valve.Trigger{Threshold: b}, Columns: columns, Fire: fire}.Bound().Surface
	}
	return unit.Band[unit.Pressure]{Least: bound(band, false), Nominal: bound(unit.Exactly(band.Nominal), true), Greatest: bound(band, true)}, err
}

func standardState(in *published.Inputs) (s valve.StandardState) {
	in.Read("temperature", &s.Temperature)
	in.Read("pressure", &s.Pressure)
	return s
}

func gasLeak(in *published.Inputs) valve.GasLeak {
	g := valve.GasLeak{Standard: valve.StandardUS()}
	var minutes float64
	in.Read("minutes", &minutes)
	in.Read("volume", &g.Volume)
	in.Read("gas", &g.Temperature)
	g.Duration = time.Duration(minutes * float64(time.Minute))
	return g
}

func gasLeakRate(in *published.Inputs) (any, error) {
	g := gasLeak(in)
	var form string
	in.Read("start", &g.Start)
	in.Read("end", &g.End)
	in.Read("start factor", &g.StartFactor)
	in.Read("end factor", &g.EndFactor)
	in.Read("form", &form)
	// The case's pressures are absolute.
	g.Start -= unit.Atmosphere
	g.End -= unit.Atmosphere
	switch form {
	case "US":
	case "SI":
		g.Standard = valve.StandardSI()
	default:
		return nil, fmt.Errorf("no form %q", form)
	}
	r, err := g.Rate()
	return r.Rate, err
}

func greatestRise(in *published.Inputs) (any, error) {
	g := gasLeak(in)
	var rate unit.FlowRate
	in.Read("rate", &rate)
	return g.RiseAt(rate)
}

func failSafeDepth(in *published.Inputs) (any, error) {
	var closes, margin unit.Pressure
	var g unit.Gradient
	in.Read("closes", &closes)
	in.Read("margin", &margin)
	in.Read("gradient", &g)
	v := valve.SafetyValve{Opens: unit.Exactly(closes), Closes: unit.Exactly(closes)}
	f, err := v.FailSafe(margin, v.FailSafeCases(valve.FailSafeColumns{Annulus: hydrostatics.Density(g)}))
	if err == nil && f.Governing.Anywhere {
		err = errors.New("no limit")
	}
	return f.Governing.TVD, err
}

// sleevePressure is what the panel holds on one line to shift a sleeve, the other
// line vented.
func sleevePressure(in *published.Inputs) (any, error) {
	var v sleeve.Sleeve
	var way string
	line := controlline.Line{OD: 0.25 * unit.Inch, Wall: 0.049 * unit.Inch}
	q := controlline.LineFluid{Viscosity: 10 * unit.Centipoise}
	in.Read("open", &v.OpenArea)
	in.Read("close", &v.CloseArea)
	in.Read("friction", &v.Friction)
	in.Read("across", &v.Across)
	in.Read("per", &v.PerDifferential)
	in.Read("depth", &v.TVD)
	in.Read("liquid", &q.Density)
	in.Read("way", &way)
	line.Length, line.TVD = v.TVD, v.TVD
	v.Name, v.Stroke, v.Inside, v.Outside = "sleeve", unit.Foot, "tubing", "annulus"
	s, err := sleeve.System{Sleeves: []sleeve.Sleeve{v}, OpenLines: []controlline.Line{line}, CloseLine: line, Liquid: q}.Shifting(0)
	if way == "open" {
		return s.Open.Nominal, err
	}
	return s.Close.Nominal, err
}
