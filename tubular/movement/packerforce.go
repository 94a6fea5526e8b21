package movement

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// restrain fills in what slack-off and the packer do to the free movement.
func (a *Analysis) restrain(slackOff unit.Force) error {
	a.SlackOff = a.setDown(slackOff)
	compliance := 0.0
	for _, s := range a.Sections {
		compliance += float64(s.Section.Pipe.Stretch(1, s.Length))
	}
	// The hanger came down by the slack-off, so the free end would stand
	// lower by as much.
	start := float64(a.Movement.Total() - a.SlackOff.Total())
	up, down := a.seals.travel()
	force, motion, err := hold(start, func(f float64) (length, slope float64) {
		return start + compliance*f + a.rebuckled(f), math.NaN()
	}, up, down, compliance)
	if err != nil {
		return err
	}
	a.PackerForce, a.SealMovement = unit.Force(force), unit.Length(motion)
	a.TrueForce, a.EffectiveForce = a.EndForce+a.PackerForce, a.EndEffective+a.PackerForce
	return nil
}

// setDown returns the shortening by a weight set down in the initial condition.
func (a *Analysis) setDown(weight unit.Force) Shortening {
	var d Shortening
	for _, s := range a.Sections {
		d.Stretch += s.Section.Pipe.Stretch(-weight, s.Length)
		d.Buckling += s.shortening(s.Initial, -weight) - s.Initial.Shortening
	}
	return d
}

// rebuckled returns the change of length by buckling that a force at the end
// adds in the final condition.
func (a *Analysis) rebuckled(f float64) float64 {
	change := 0.0
	for k := range a.Sections {
		s := &a.Sections[k]
		change += float64(s.shortening(s.Final, unit.Force(f)) - s.Final.Shortening)
	}
	return change
}

// shortening is that of a buckling state with a force added.
func (s *SectionMovement) shortening(b SectionBuckling, f unit.Force) unit.Length {
	return HelicalShortening(s.Section.Pipe, s.Length, (s.Section.Hole-s.Section.Pipe.OD)/2, b.Top+f, b.Bottom+f)
}
