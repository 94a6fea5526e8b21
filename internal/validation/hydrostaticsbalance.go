package validation

import (
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/published"
)

func readSlug(in *published.Inputs) (s hydrostatics.Slug, dry unit.Length) {
	in.Read("mud", &s.Mud)
	in.Optional("slug", &s.Pill)
	in.Optional("capacity", &s.Capacity)
	in.Read("dry", &dry)
	return s, dry
}

func dryPipe(in *published.Inputs) (any, error) {
	s, dry := readSlug(in)
	return hydrostatics.Pressure(s.Mud, dry), nil
}

func slugVolume(in *published.Inputs) (any, error) {
	s, dry := readSlug(in)
	return s.Volume(dry), nil
}

func slugGain(in *published.Inputs) (any, error) {
	s, dry := readSlug(in)
	return s.Gain(dry), nil
}

// slugUTube lets the slug that the formula asks for fall in a U-tube.
func slugUTube(in *published.Inputs) (any, error) {
	s, dry := readSlug(in)
	var annulus unit.Area
	var port unit.Length
	in.Read("annulus", &annulus)
	in.Read("port", &port)
	r, err := hydrostatics.UTube{
		PortMD: port,
		Tubing: hydrostatics.Leg{
			Sections: []hydrostatics.LegSection{{BottomMD: port, Area: s.Capacity}},
			Fluids:   []hydrostatics.Stretch{{BottomMD: s.Length(dry), Density: s.Pill}, {BottomMD: port, Density: s.Mud}},
		},
		Annulus: hydrostatics.Leg{
			Sections: []hydrostatics.LegSection{{BottomMD: port, Area: annulus}},
			Fluids:   []hydrostatics.Stretch{{BottomMD: port, Density: s.Mud}},
		},
	}.Rest()
	return r.Moved, err
}

func slugDensity(in *published.Inputs) (any, error) {
	s, dry := readSlug(in)
	var length unit.Length
	in.Read("length", &length)
	return hydrostatics.SlugDensity(s.Mud, length, dry), nil
}

func slugDensityByVolume(in *published.Inputs) (any, error) {
	s, dry := readSlug(in)
	var volume unit.Volume
	in.Read("volume", &volume)
	return hydrostatics.SlugDensity(s.Mud, unit.Length(float64(volume)/float64(s.Capacity)), dry), nil
}

func holdingPressure(in *published.Inputs) (any, error) {
	var tubing, annulus stretches
	in.Read("tubing", &tubing)
	in.Read("annulus", &annulus)
	leg := func(s stretches) hydrostatics.Leg {
		return hydrostatics.Leg{Sections: []hydrostatics.LegSection{{BottomMD: s.bottom(), Area: unit.SquareFoot}}, Fluids: s}
	}
	r, err := hydrostatics.UTube{PortMD: tubing.bottom(), Tubing: leg(tubing), Annulus: leg(annulus)}.Rest()
	return r.Holding, err
}

func readShutIn(in *published.Inputs) (s hydrostatics.ShutIn) {
	in.Read("shutin", &s.Pressure)
	in.Read("rho", &s.Density)
	in.Read("depth", &s.TVD)
	return s
}

func shutInFormation(in *published.Inputs) (any, error) {
	return readShutIn(in).FormationPressure(), nil
}

func shutInKill(in *published.Inputs) (any, error) {
	s := readShutIn(in)
	var margin unit.Pressure
	in.Read("margin", &margin)
	return s.KillDensity(margin), nil
}

func formationKill(in *published.Inputs) (any, error) {
	var f hydrostatics.Formation
	var margin unit.Pressure
	in.Read("formation", &f.Pressure)
	in.Read("depth", &f.TVD)
	in.Read("margin", &margin)
	return f.KillDensity(margin), nil
}

func lightLength(in *published.Inputs) (any, error) {
	var c hydrostatics.Cushion
	var light, heavy unit.Density
	in.Read("light", &light)
	in.Read("heavy", &heavy)
	in.Read("loss", &c.Underbalance)
	in.Read("depth", &c.Formation.TVD)
	c.Formation.Pressure = hydrostatics.Pressure(heavy, c.Formation.TVD)
	c.Light, c.Heavy = hydrostatics.Incompressible(light), hydrostatics.Incompressible(heavy)
	a, err := c.Length()
	return a.LevelTVD, err
}

// allowableByMudWeight goes through the weakest point of a column.
func allowableByMudWeight(in *published.Inputs) (any, error) {
	var fracture, rho unit.Density
	var depth unit.Length
	in.Read("fracture", &fracture)
	in.Read("depth", &depth)
	in.Read("rho", &rho)
	return allowableUnder(hydrostatics.Gradient(fracture), rho, depth)
}

// allowableUnder is the surface pressure over a column whose foot bears a gradient.
func allowableUnder(fracture unit.Gradient, rho unit.Density, depth unit.Length) (any, error) {
	column, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: hydrostatics.Incompressible(rho), BottomTVD: depth}}, nil, hydrostatics.Reference{})
	if err != nil {
		return nil, err
	}
	limit, err := hydrostatics.MaximumSurfacePressure(column, []hydrostatics.WeakPoint{
		hydrostatics.FracturePoint("shoe", fracture, depth),
	})
	return limit.Pressure, err
}

// allowableOverColumn is the surface pressure at which what is broken down bears no more, over a column
// of which the pressure at its foot is known.
func allowableOverColumn(in *published.Inputs) (any, error) {
	var fracture, column unit.Pressure
	var depth unit.Length
	in.Read("fracture", &fracture)
	in.Read("column", &column)
	in.Read("depth", &depth)
	return hydrostatics.AllowableSurfacePressure(hydrostatics.GradientOf(fracture, depth), hydrostatics.Density(hydrostatics.GradientOf(column, depth)), depth), nil
}

// costOfLight is what the foot of a column loses where a light fluid takes the place of a heavy one.
func costOfLight(in *published.Inputs) (any, error) {
	var rise unit.Length
	var heavy, light unit.Gradient
	in.Read("rise", &rise)
	in.Read("heavy", &heavy)
	in.Read("light", &light)
	return hydrostatics.PressureOf(heavy, rise) - hydrostatics.PressureOf(light, rise), nil
}

// lossByGain is the head of the mud that a gain in the pits has displaced.
func lossByGain(in *published.Inputs) (any, error) {
	var gain unit.Volume
	var rho unit.Density
	in.Read("gain", &gain)
	in.Read("rho", &rho)
	return hydrostatics.Pressure(rho, conduit(in).Length(gain)), nil
}

func allowableMudWeight(in *published.Inputs) (any, error) {
	var s hydrostatics.ShutIn
	in.Read("leakoff", &s.Pressure)
	in.Read("rho", &s.Density)
	in.Read("depth", &s.TVD)
	return s.KillDensity(0), nil
}

func borneMudWeight(in *published.Inputs) (any, error) {
	var fracture, surface unit.Pressure
	var depth unit.Length
	in.Read("fracture", &fracture)
	in.Read("depth", &depth)
	in.Read("surface", &surface)
	return hydrostatics.AllowableDensity(hydrostatics.GradientOf(fracture, depth), surface, depth), nil
}

func thermalTime(in *published.Inputs) (any, error) {
	var td float64
	in.Read("td", &td)
	return hydrostatics.ThermalTime(td), nil
}
