package packer

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular/movement"
)

// Case is a load case of a string in a vertical well above a set packer.
type Case struct {
	Name   string            `json:"name"`
	String movement.Vertical `json:"string"`
	Below  unit.Pressure     `json:"below"` // under the packer, in the casing
}

// PathCase is a load case of a string on any well path above a set packer, with
// any pressures and temperatures by depth.
type PathCase struct {
	Name      string                `json:"name"`
	String    movement.String       `json:"string"`
	Reference movement.WellProfiles `json:"reference"` // in which the packer was set or the string landed
	SlackOff  unit.Force            `json:"slack_off"` // weight set down then
	State     movement.WellProfiles `json:"state"`
	Below     unit.Pressure         `json:"below"` // under the packer, in the casing
}

// Connected is one case with one way of joining string and packer.
type Connected struct {
	Case      string             `json:"case"`
	Restraint movement.Restraint `json:"restraint"`
	Bearing   Bearing            `json:"bearing"`

	Movement unit.Length `json:"movement"` // of the seals, down positive
	Force    unit.Force  `json:"force"`    // real force in the string just above the packer
}

// Connections returns what a case does to the packer with the seals free, with
// the case's own stops, and anchored. Slack-off counts where the seals can take
// it. The stops of the middle one are those of String.Seals, which must be
// Limited for it to be there.
//
// Errors are those of movement.Vertical.Analyse. Source: movement.Vertical;
// Seat.Bearing.
func (s Seat) Connections(c Case) ([]Connected, error) {
	f := s.faults(c.Below)
	if len(c.String.Sections) == 0 {
		f.New("Case.String.Sections", "is empty; must be one section or more")
	}
	if err := f.Err(); err != nil {
		return nil, err
	}
	above := c.String.Final.Outside(c.String.Sections[len(c.String.Sections)-1].BottomMD)
	return s.connect(c.Name, c.Below, above, c.String.Seals, c.String.SlackOff, func(seals movement.SealBore, slackOff unit.Force) (found, error) {
		v := c.String
		v.Seals, v.SlackOff = seals, slackOff
		a, err := v.Analyse()
		return found{a.PackerForce, a.TrueForce, a.SealMovement}, err
	})
}

// ConnectionsAlong is Connections node by node, on any path.
//
// Errors are those of movement.String.Land and movement.Landed.Load. Source:
// package movement; Seat.Bearing.
func (s Seat) ConnectionsAlong(c PathCase) ([]Connected, error) {
	f := s.faults(c.Below)
	if len(c.String.Sections) == 0 {
		f.New("PathCase.String.Sections", "is empty; must be one section or more")
	}
	if c.String.Path == nil {
		f.New("PathCase.String.Path", "is missing; must be a well path")
	}
	if c.State.Outside == nil {
		f.New("PathCase.State.Outside", "is missing; must be the pressure outside by depth")
	}
	if err := f.Err(); err != nil {
		return nil, err
	}
	depth, err := depthOn(c.String.Path, c.String.Sections[len(c.String.Sections)-1].BottomMD)
	if err != nil {
		return nil, err
	}
	return s.connect(c.Name, c.Below, c.State.Outside(depth), c.String.Seals, c.SlackOff, func(seals movement.SealBore, slackOff unit.Force) (found, error) {
		v := c.String
		v.Seals = seals
		landed, err := v.Land(c.Reference, slackOff)
		if err != nil {
			return found{}, err
		}
		a, err := landed.Load(c.State)
		return found{a.PackerForce, a.TrueForce, a.SealMovement}, err
	})
}

// found is what either movement answers.
type found struct {
	packer, real unit.Force
	motion       unit.Length
}

func (s Seat) connect(name string, below, above unit.Pressure, own movement.SealBore, slackOff unit.Force,
	analyse func(movement.SealBore, unit.Force) (found, error)) ([]Connected, error) {
	var all []Connected
	for _, r := range [...]movement.Restraint{movement.Free, movement.Limited, movement.Anchored} {
		seals, down := movement.SealBore{Bore: s.Bore, Restraint: r}, slackOff
		switch r {
		case movement.Free:
			down = 0
		case movement.Limited:
			if own.Restraint != movement.Limited {
				continue
			}
			seals.Up, seals.Down = own.Up, own.Down
		case movement.Anchored:
		}
		a, err := analyse(seals, down)
		if err != nil {
			f := fault.In(scope)
			f.At("case "+name, err)
			return nil, f.Err()
		}
		bearing := s.Bearing(a.packer, below, above)
		if err := finiteResult("the force on the casing", float64(bearing.Pressure), float64(bearing.Casing)); err != nil {
			return nil, err
		}
		all = append(all, Connected{Case: name, Restraint: r, Movement: a.motion, Force: a.real, Bearing: bearing})
	}
	return all, nil
}

func (s Seat) faults(below unit.Pressure) fault.Faults {
	f := fault.In(scope)
	f.Add(fault.Above("Seat.Bore", s.Bore, 0))
	if !finite(s.Casing) || s.Casing < s.Bore {
		f.New("Seat.Casing", "is %v; must be no less than the seal bore, %v", s.Casing, s.Bore)
	}
	f.Add(fault.AtLeast("Case.Below", below, 0))
	return f
}
