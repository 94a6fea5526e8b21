package seals

import (
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular/movement"
)

// travel is how far the seals move in a case if they are free: by the closed form in a
// vertical well, node by node along a survey.
func (in inputs) travel(c packer.Case) (packer.Travel, error) {
	if in.survey.Path() == nil {
		m, err := c.String.Analyse()
		return packer.TravelOf(c.Name, m.Movement), err
	}
	p := in.along(c)
	p.String.Seals = movement.SealBore{Bore: in.seat.Bore}
	landed, err := p.String.Land(p.Reference, 0)
	if err != nil {
		return packer.Travel{}, err
	}
	a, err := landed.Load(p.State)
	return packer.TravelOf(c.Name, a.Movement), err
}

// connections are what each way of joining string and packer does in a case.
func (in inputs) connections(c packer.Case) ([]packer.Connected, error) {
	c.String.Seals = packer.Restraint(in.seat.Bore, 0)
	if in.survey.Path() == nil {
		c.Below = c.String.Final.Inside(in.section.BottomMD)
		return in.seat.Connections(c)
	}
	p := in.along(c)
	depth, err := in.survey.Path().TVD(in.section.BottomMD)
	if err != nil {
		return nil, err
	}
	p.Below = c.String.Final.Inside(depth)
	return in.seat.ConnectionsAlong(p)
}

// along is a case of the vertical well as one along the survey, its depth measured.
func (in inputs) along(c packer.Case) packer.PathCase {
	// The base of the temperatures doesn't matter: only the change does.
	state := func(f movement.WellFluids, warming unit.TemperatureDifference) movement.WellProfiles {
		return movement.WellProfiles{Inside: f.Inside, Outside: f.Outside, Temperature: func(unit.Length) unit.Temperature { return unit.Fahrenheit(150).Add(warming) }}
	}
	return packer.PathCase{Name: c.Name, Reference: state(c.String.Initial, 0), State: state(c.String.Final, c.String.Warming),
		String: movement.String{Sections: c.String.Sections, Path: in.survey.Path(), Seals: c.String.Seals}}
}
