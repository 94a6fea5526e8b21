package movement

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// WellFluids is a state of the fluids in a vertical well.
type WellFluids struct {
	InsideDensity  unit.Density  `json:"inside_density"`
	OutsideDensity unit.Density  `json:"outside_density"`
	InsideSurface  unit.Pressure `json:"inside_surface"` // at the hanger
	OutsideSurface unit.Pressure `json:"outside_surface"`
	Friction       unit.Gradient `json:"friction"` // pressure lost inside per length, positive for flow down
}

// Inside returns the pressure inside the string at a depth.
//
//	p = ps + ρ·g·h
//
// Range: any depth; nothing is checked.
//
// Source: hydrostatics.
func (c WellFluids) Inside(depth unit.Length) unit.Pressure {
	return c.InsideSurface + unit.Pressure((gravity*float64(c.InsideDensity)-float64(c.Friction))*float64(depth))
}

// Outside returns the pressure outside the string at a depth.
//
//	p = ps + ρ·g·h
//
// Range: any depth; nothing is checked.
//
// Source: hydrostatics.
func (c WellFluids) Outside(depth unit.Length) unit.Pressure {
	return c.OutsideSurface + unit.Pressure(gravity*float64(c.OutsideDensity)*float64(depth))
}

// Vertical is a string sealed in a packer in a vertical well with fluids of
// constant density: the classical case in closed form.
//
// Source: Lubinski, Althouse & Logan, "Helical buckling of tubing sealed in
// packers", JPT June 1962, p. 655; Hammerlindl, "Movement, forces, and stresses
// associated with combination tubing strings sealed in packers", JPT February
// 1977, p. 195.
type Vertical struct {
	Sections []StringSection            `json:"sections"`
	Seals    SealBore                   `json:"seals"`
	Initial  WellFluids                 `json:"initial"`
	Final    WellFluids                 `json:"final"`
	Warming  unit.TemperatureDifference `json:"warming"` // mean temperature, final less initial
	// SlackOff is the weight set down on the packer in the initial condition;
	// negative is a pull. Seals that are free can't take any.
	SlackOff unit.Force `json:"slack_off"`
	// Closed says that the string is plugged at its lower end and hangs there
	// clear of any seal. Seals must then be zero.
	Closed bool `json:"closed"`
}

// Analysis is what the change from the initial to the final condition does.
type Analysis struct {
	// Movement is what seals free to move would do, from the initial condition
	// without slack-off.
	Movement Movement `json:"movement"`
	// SlackOff is the shortening by the weight set down.
	SlackOff Shortening `json:"slack_off"`
	// EndForce and EndEffective are the true and the effective axial force
	// above the seals in the final condition with nothing restrained. The
	// negative of EndEffective is the classical fictitious force.
	EndForce     unit.Force `json:"end_force"`
	EndEffective unit.Force `json:"end_effective"`
	// Neutral is the height of the neutral point above the seals with nothing
	// restrained: zero where nothing is buckled, the whole length where all is.
	Neutral unit.Length `json:"neutral"`
	// SealMovement is what the seals really do, down positive.
	SealMovement unit.Length `json:"seal_movement"`
	// PackerForce is the tubing-to-packer force: positive where the packer
	// holds the string in tension, so that the string pulls the packer up;
	// negative where it bears the string's weight. Zero between the stops.
	PackerForce unit.Force `json:"packer_force"`
	// TrueForce and EffectiveForce are the axial forces above the seals in the
	// final condition with the packer's force.
	TrueForce      unit.Force `json:"true_force"`
	EffectiveForce unit.Force `json:"effective_force"`
	// Sections are the shares of the sections in Movement, from the top.
	Sections []SectionMovement `json:"sections"`

	initial unit.Force // effective force above the seals, initial, without slack-off
	seals   SealBore
}

// Shortening is that of the string by weight set down on the packer.
type Shortening struct {
	Stretch  unit.Length `json:"stretch"`
	Buckling unit.Length `json:"buckling"`
}

// Total returns the sum. Its negative is the distance by which the hanger
// comes down after the seals touched.
//
//	sum of its terms
//
// Range: any lengths; they aren't checked.
//
// Source: superposition.
func (s Shortening) Total() unit.Length { return s.Stretch + s.Buckling }

// SectionMovement is the share of one section in the free movement, with the
// terms that it follows from.
type SectionMovement struct {
	Section  StringSection `json:"section"`
	Length   unit.Length   `json:"length"`
	Movement Movement      `json:"movement"`
	// PistonChange is the changed axial force from the end and the shoulders
	// below; DragBelow the drag of flow on the pipe below, changed.
	PistonChange unit.Force `json:"piston_change"`
	DragBelow    unit.Force `json:"drag_below"`
	// InsideChange and OutsideChange are the changes of mean pressure.
	InsideChange   unit.Pressure              `json:"inside_change"`
	OutsideChange  unit.Pressure              `json:"outside_change"`
	FrictionChange unit.Gradient              `json:"friction_change"`
	Warming        unit.TemperatureDifference `json:"warming"`
	// Initial and Final are the buckling states.
	Initial SectionBuckling `json:"initial"`
	Final   SectionBuckling `json:"final"`
}

// SectionBuckling is the buckling of one section in one condition.
type SectionBuckling struct {
	Weight     unit.WeightPerLength `json:"weight"` // effective
	Top        unit.Force           `json:"top"`    // effective axial force
	Bottom     unit.Force           `json:"bottom"`
	Shortening unit.Length          `json:"shortening"`
}

// Analyse computes the movement or the force on the packer. It checks all
// inputs first.
//
//	movement = piston + ballooning + buckling + thermal
//
// Errors: faults of v.
//
// Source: Lubinski, Althouse and Logan 1962; Hammerlindl 1977.
func (v Vertical) Analyse() (Analysis, error) {
	bars, err := v.check()
	if err != nil {
		return Analysis{}, err
	}
	n := len(bars)
	depth := v.Sections[n-1].BottomMD
	initial, final := v.end(v.Initial), v.end(v.Final)
	a := Analysis{EndForce: final.Force(), EndEffective: final.Effective(), Sections: make([]SectionMovement, n), initial: initial.Effective(), seals: v.Seals}

	piston := float64(final.Force() - initial.Force())
	drag := 0.0
	friction := float64(v.Final.Friction - v.Initial.Friction)
	fe0, fe1 := float64(initial.Effective()), float64(final.Effective())
	for k := n - 1; k >= 0; k-- {
		b := &bars[k]
		if k < n-1 {
			piston += v.shoulder(v.Final, k) - v.shoulder(v.Initial, k)
		}
		s := SectionMovement{Section: v.Sections[k], Length: unit.Length(b.length()), PistonChange: unit.Force(piston), DragBelow: unit.Force(drag), FrictionChange: unit.Gradient(friction), Warming: v.Warming}
		middle := unit.Length((b.top + b.bottom) / 2)
		s.InsideChange = v.Final.Inside(middle) - v.Initial.Inside(middle)
		s.OutsideChange = v.Final.Outside(middle) - v.Initial.Outside(middle)
		s.Initial, fe0 = b.buckling(s.Section, v.Initial, fe0)
		s.Final, fe1 = b.buckling(s.Section, v.Final, fe1)
		s.Movement = Movement{
			Piston:     s.Section.Pipe.Stretch(s.PistonChange, s.Length),
			Ballooning: Ballooning(s.Section.Pipe, s.Length, s.InsideChange, s.OutsideChange),
			Buckling:   s.Final.Shortening - s.Initial.Shortening,
			Thermal:    s.Section.Pipe.ThermalStretch(s.Length, v.Warming),
			Friction:   s.Section.Pipe.Stretch(s.DragBelow, s.Length) + FlowDrag(s.Section.Pipe, s.Length, s.FrictionChange),
		}
		a.Movement = a.Movement.plus(s.Movement)
		drag += friction * b.ai * b.length()
		a.Sections[k] = s
	}
	a.Neutral = neutral(a.Sections, depth)
	if err := a.restrain(v.SlackOff); err != nil {
		return Analysis{}, err
	}
	return a, bounded(a.Movement, a.SlackOff, a.SealMovement, a.TrueForce, a.EffectiveForce, a.Sections[0].Initial.Top, a.Sections[0].Final.Top)
}

// neutral returns the height above the end over which the effective force is
// compressive in the final condition with nothing restrained.
func neutral(sections []SectionMovement, depth unit.Length) unit.Length {
	for k := len(sections) - 1; k >= 0; k-- {
		s := sections[k]
		if f := s.Final; f.Top >= 0 || f.Bottom >= 0 {
			if f.Bottom >= 0 {
				return depth - s.Section.BottomMD
			}
			share := float64(f.Bottom) / float64(f.Bottom-f.Top)
			return depth - s.Section.BottomMD + s.Length*unit.Length(share)
		}
	}
	return depth
}

// end is the lower end in a condition.
func (v Vertical) end(c WellFluids) End {
	last := v.Sections[len(v.Sections)-1]
	e := End{
		Bore: v.Seals.Bore, OD: last.Pipe.OD, ID: last.Pipe.ID,
		Inside: c.Inside(last.BottomMD), Outside: c.Outside(last.BottomMD), Below: c.Inside(last.BottomMD),
	}
	if v.Closed {
		e.Bore, e.Below = last.Pipe.OD, e.Outside
	}
	return e
}

// shoulder is the step of force between section k and the one below.
func (v Vertical) shoulder(c WellFluids, k int) float64 {
	up, down := v.Sections[k], v.Sections[k+1]
	return float64(ShoulderForce(c.Inside(up.BottomMD), c.Outside(up.BottomMD), up.Pipe.OD, up.Pipe.ID, down.Pipe.OD, down.Pipe.ID))
}

// buckling returns the section's state from the effective force at its bottom,
// and the force at its top.
func (b *bar) buckling(s StringSection, c WellFluids, bottom float64) (SectionBuckling, float64) {
	w := b.effectiveWeight(float64(c.InsideDensity), float64(c.OutsideDensity))
	top := bottom + w*b.length()
	return SectionBuckling{
		Weight: unit.WeightPerLength(w), Top: unit.Force(top), Bottom: unit.Force(bottom),
		Shortening: HelicalShortening(s.Pipe, unit.Length(b.length()), unit.Length(b.r), unit.Force(top), unit.Force(bottom)),
	}, top
}

func (v Vertical) check() ([]bar, error) {
	bars, err := bars(0, v.Sections)
	faults := []error{err}
	for k, s := range v.Sections {
		at := fault.Index("Sections", k) + ".Wear"
		faults = append(faults, fault.Finite(at+".Inside", s.Wear.Inside), fault.Finite(at+".Outside", s.Wear.Outside))
	}
	for _, c := range []struct {
		name string
		c    WellFluids
	}{{"Initial", v.Initial}, {"Final", v.Final}} {
		faults = append(faults,
			fault.AtLeast(c.name+".InsideDensity", c.c.InsideDensity, 0), fault.AtLeast(c.name+".OutsideDensity", c.c.OutsideDensity, 0),
			fault.Finite(c.name+".InsideSurface", c.c.InsideSurface), fault.Finite(c.name+".OutsideSurface", c.c.OutsideSurface),
			fault.Finite(c.name+".Friction", c.c.Friction))
	}
	faults = append(faults, fault.Finite("Warming", v.Warming))
	if v.Closed {
		if v.Seals != (SealBore{}) {
			faults = append(faults, fault.New("Seals", "are given; must be none where Closed"))
		}
		if v.SlackOff != 0 {
			faults = append(faults, fault.New("SlackOff", "is %v; must be 0 where Closed", v.SlackOff))
		}
	} else {
		faults = append(faults, v.Seals.faults()...)
		faults = append(faults, v.Seals.slackOff(v.SlackOff))
	}
	return bars, fault.Join(scope, faults...)
}
