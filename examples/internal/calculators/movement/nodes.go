package movement

import (
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

// nodes is the same case node by node, as a programme computes its string: with
// nothing restrained, and as it is. A nil path is vertical.
func nodes(w movement.Vertical, design tubular.DesignFactors, path *hydrostatics.Path) (free, held movement.Loading, notChecked []string, err error) {
	end := w.Sections[len(w.Sections)-1].BottomMD
	if path == nil {
		if path, err = hydrostatics.Vertical(end); err != nil {
			return free, held, nil, err
		}
	}
	tvd, err := path.TVD(end)
	if err != nil {
		return free, held, nil, err
	}
	a := movement.Assembly{Sections: w.Sections, Path: path, Design: design, Seals: []movement.Seal{{MD: end, Bore: w.Seals.Bore}}}
	before, after := conditions(w.Initial, 0, end, tvd), conditions(w.Final, w.Warming, end, tvd)
	m, err := a.MakeUp()
	if err != nil {
		return free, held, nil, err
	}
	s, err := m.Land(before)
	if err == nil {
		free, err = m.Load(s, after)
	}
	if err != nil || w.Seals.Restraint == movement.Free {
		return free, free, m.NotChecked(), err
	}
	if w.Seals.Restraint == movement.Anchored {
		a.Holds, a.Seals = []movement.Hold{{MD: end, Bore: w.Seals.Bore}}, nil
	} else {
		a.Seals[0].Up, a.Seals[0].Down, a.Seals[0].Latch, a.Seals[0].Locator = w.Seals.Up, w.Seals.Down, true, true
	}
	if m, err = a.MakeUp(); err != nil {
		return free, held, nil, err
	}
	if s, err = setDown(m, before, w.SlackOff); err != nil {
		return free, held, nil, err
	}
	held, err = m.Load(s, after)
	return free, held, m.NotChecked(), err
}

// setDown lands a string and sets weight down: on its anchor, or by slacking off
// onto its stop and hanging off there.
func setDown(m *movement.MadeUp, c movement.Conditions, weight unit.Force) (movement.Standing, error) {
	s, err := m.Land(c)
	if err != nil {
		return s, err
	}
	l, err := m.Load(s, c)
	if err != nil {
		return s, err
	}
	if len(l.Holds) > 0 {
		return m.SetDown(s, 0, c, weight)
	}
	if weight == 0 {
		return s, nil
	}
	c.Top, c.Reading = movement.OnHookOpen, l.HangerLoad-weight
	return m.HangOff(s, c)
}

// conditions are a state of the fluids, open below the seals. What flow loses it loses
// along the string.
func conditions(c movement.WellFluids, warming unit.TemperatureDifference, end, tvd unit.Length) movement.Conditions {
	friction := c.Friction
	c.Friction = 0
	below := c.Inside(tvd) - unit.Pressure(float64(friction)*float64(end))
	return movement.Conditions{
		Inside: func(_ int, tvd unit.Length) unit.Pressure { return c.Inside(tvd) },
		Outside: func(part int, tvd unit.Length) unit.Pressure {
			if part > 0 {
				return below
			}
			return c.Outside(tvd)
		},
		// The base doesn't matter: only the change does.
		Temperature: func(unit.Length) unit.Temperature { return unit.Fahrenheit(150).Add(warming) },
		Friction:    []unit.Gradient{friction},
	}
}

// onPacker is what the string puts on its packer, up positive.
func onPacker(l movement.Loading) unit.Force {
	if len(l.Holds) > 0 {
		return l.Holds[0].Load
	}
	return l.Seals[0].Load
}
