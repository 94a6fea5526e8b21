package movement

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
)

// Landed is a string landed at its hanger and sealed in its packer. It
// remembers the state in which the packer was set or the seals were stabbed:
// weights, pressures, temperatures, and the weight set down or pulled. It
// never changes, so it is safe for concurrent use.
type Landed struct {
	line
	seals Seals

	reference totals   // without slack-off
	setDown   SlackOff // shortening by the slack-off
	thermal   bool
	asSet     Case
}

// totals are the lengths that the axial forces, pressures and temperatures of
// one state add to the string, in m, by cause. Weight is left out: it is the
// same in every state.
type totals struct{ piston, ballooning, buckling, thermal, friction float64 }

func (t totals) minus(u totals) Movement {
	return Movement{
		Piston: unit.Length(t.piston - u.piston), Ballooning: unit.Length(t.ballooning - u.ballooning),
		Buckling: unit.Length(t.buckling - u.buckling), Thermal: unit.Length(t.thermal - u.thermal),
		Friction: unit.Length(t.friction - u.friction),
	}
}

// Land hangs the string off in the reference state, in which the packer takes
// hold, with a weight set down on it; negative is a pull. What the string is
// like then is locked in: a packer set by pressure in tubing that is plugged
// below and then bled off keeps (1 - 2ν)*p*Ai of tension in a uniform vertical
// string, because the pressure had made the string longer.
//
// It checks the string and the state first and reports all faults.
func (s String) Land(reference State, slackOff unit.Force) (*Landed, error) {
	l, err := s.prepare(nil)
	if err == nil {
		err = s.Seals.slackOff(slackOff)
	}
	if err != nil {
		return nil, err
	}
	l.thermal = reference.Temperature != nil
	c := &l.asSet
	if err := l.forces(reference, c); err != nil {
		return nil, fmt.Errorf("movement: reference state: %w", err)
	}
	c.buckled = l.buckled(c.Nodes, 0, len(l.elements), 0).shortening
	l.reference = c.totals
	l.reference.buckling = c.buckled
	down := -float64(slackOff)
	l.setDown = SlackOff{Stretch: unit.Length(l.compliance() * down), Buckling: unit.Length(l.buckled(c.Nodes, 0, len(l.elements), down).shortening - c.buckled)}
	c.SlackOff = l.setDown
	c.PackerForce, c.BuckledShortening = -slackOff, unit.Length(c.buckled)+l.setDown.Buckling
	if err := l.finish(c); err != nil {
		return nil, err
	}
	return l, nil
}

// AsSet returns the string in the reference state, with the slack-off.
func (l *Landed) AsSet() Case {
	c := l.asSet
	c.Nodes = slices.Clone(c.Nodes)
	return c
}

// Size returns the number of nodes of the string.
func (l *Landed) Size() int { return len(l.points) }

// Load computes the string in another state.
func (l *Landed) Load(state State) (Case, error) {
	var c Case
	err := l.LoadInto(&c, state)
	return c, err
}

// LoadInto is Load into a case that is used again: it then allocates nothing.
// After an error the case holds nothing of use.
func (l *Landed) LoadInto(c *Case, state State) error {
	if (state.Temperature != nil) != l.thermal {
		return errors.New("movement: Temperature is given in one of the states only: permitted in the reference and this one, or in none")
	}
	if err := l.forces(state, c); err != nil {
		return fmt.Errorf("movement: %w", err)
	}
	free := l.buckled(c.Nodes, 0, len(l.elements), 0)
	c.buckled = free.shortening
	c.totals.buckling = c.buckled
	c.Movement = c.totals.minus(l.reference)
	c.SlackOff = l.setDown

	compliance := l.compliance()
	start := float64(c.Movement.Total() - l.setDown.Total())
	up, down := l.seals.travel()
	at, held := 0.0, free // the force tried last, and what it does
	change := func(f float64) (length, slope float64) {
		if f != at {
			at, held = f, l.buckled(c.Nodes, 0, len(l.elements), f)
		}
		return start + compliance*f + held.shortening - c.buckled, compliance + held.slope
	}
	force, motion, err := hold(start, change, up, down, compliance)
	if err != nil {
		return err
	}
	change(force)
	c.BuckledShortening = unit.Length(held.shortening)
	// A length under the same force all along snaps into a helix at once: then
	// no force gives just that length, and the root stands at the snap.
	rest := start + compliance*force + float64(c.BuckledShortening) - c.buckled
	c.Snapping = force != 0 && math.Abs(rest-motion) > 1e-9*l.bars[len(l.bars)-1].bottom
	c.PackerForce, c.SealMovement = unit.Force(force), unit.Length(motion)
	return l.finish(c)
}
