package packer

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/fault"
	"completion.example/tubular"
	"completion.example/tubular/movement"
)

// Top says how the string was held at surface while the packer was set.
type Top uint8

// Ways to hold the top of the string.
const (
	// Landed is a string in its hanger, in the slips or on a block that stands
	// still: its top doesn't move.
	Landed Top = iota
	// Compensated is a string on a hook that holds its load and lets the top
	// move, and that is landed only after the pressure is off.
	Compensated
)

// LockIn is a string that a packer at its lower end is set on with pressure. Where
// the plug is decides the sign of what stays.
type LockIn struct {
	Pipe    tubular.Pipe  `json:"pipe"`
	Length  unit.Length   `json:"length"`  // from the hanger to the packer
	Inside  unit.Pressure `json:"inside"`  // applied in the tubing when the slips bite, above what stands there
	Outside unit.Pressure `json:"outside"` // applied on the annulus at the same moment
	Top     Top           `json:"top"`
	// Chamber is the bore of the seals that the string stands in where it is open
	// below them, to a chamber that the pressure fills down to a plug beyond. Zero is
	// a plug in the string itself.
	Chamber unit.Length `json:"chamber"`
}

// Locked is what a string keeps when the setting pressure is bled off.
type Locked struct {
	EndLoad    unit.Force `json:"end_load"`   // of the pressures on the end, while they are on
	Ballooning unit.Force `json:"ballooning"` // what the pressures on the wall are worth, as a force
	Tension    unit.Force `json:"tension"`    // locked in after the bleed-off: the packer is pulled up

	Stretch unit.Length `json:"stretch"` // of the free string at the moment of setting

	in LockIn
}

// Locked returns the force that stays between hanger and packer once the
// pressure that set the packer is bled off.
//
//	F(end)  = pi Ai - po Ao                   plug in the string
//	F(end)  = -(Ap - Ai) pi + (Ap - Ao) po    open to a chamber under seals of area Ap
//	F(ball) = -2 ν (pi Ai - po Ao)
//	F       = F(end) + F(ball)                top landed
//	ΔL      = F L / (E As)                    at the moment of setting
//
// With a plug in the string the closed end lengthens the free string, ballooning
// takes a part of it back; the packer sets on the string so stretched, and holds
// it there. So pressure in the tubing leaves tension, which pulls the packer up
// with (1 - 2 ν), 40 % for steel, of p Ai; pressure on the annulus would leave
// compression. Open to a chamber the pressure pushes the string up and shortens it,
// and leaves compression. A string on a compensated hook keeps none of it, because
// its top came down on the way.
//
// The wall stresses are Lamé's, whose sum is the same at every radius, so the
// result is exact for a thick wall. Friction on the way is left out: it keeps a
// part of the stretch from ever reaching the packer. So is buckling, which a
// chamber's push brings about and which is locked in as well:
// movement.MadeUp.TakeHold has it.
//
// Errors name every field out of range. Source: Hooke and Lamé; Lubinski,
// Althouse and Logan 1962 for the two terms.
func (l LockIn) Locked() (Locked, error) {
	f := fault.In(scope)
	f.At("Pipe", l.Pipe.Validate())
	f.Add(fault.Above("Length", l.Length, 0))
	f.Add(fault.AtLeast("Inside", l.Inside, 0))
	f.Add(fault.AtLeast("Outside", l.Outside, 0))
	if l.Chamber != 0 && !(l.Chamber >= l.Pipe.ID && finite(l.Chamber)) {
		f.New("Chamber", "is %v; must be no less than the pipe's bore of %v, or 0 for a plug in the string", l.Chamber, l.Pipe.ID)
	}
	if l.Top > Compensated {
		f.New("Top", "is %d; must be Landed or Compensated", l.Top)
	}
	if err := f.Err(); err != nil {
		return Locked{}, err
	}
	Ai, Ao := float64(l.Pipe.InnerArea()), float64(l.Pipe.OuterArea())
	E, As, ν := float64(l.Pipe.Material.Young), float64(l.Pipe.SteelArea()), l.Pipe.Material.Poisson
	end := float64(l.end().Force())
	ball := -2 * ν * (float64(l.Inside)*Ai - float64(l.Outside)*Ao)
	r := Locked{
		EndLoad:    unit.Force(end),
		Ballooning: unit.Force(ball),
		Stretch:    unit.Length((end + ball) * float64(l.Length) / (E * As)),
		in:         l,
	}
	if l.Top == Landed {
		r.Tension = unit.Force(end + ball)
	}
	return r, finiteResult("locked-in force", end, ball, float64(r.Stretch))
}

// end is the string's lower end while it sets.
func (l LockIn) end() movement.End {
	e := movement.End{Bore: l.Pipe.OD, OD: l.Pipe.OD, ID: l.Pipe.ID, Inside: l.Inside, Outside: l.Outside, Below: l.Outside}
	if l.Chamber != 0 {
		e.Bore, e.Below = l.Chamber, l.Inside
	}
	return e
}

// Bitten is what a string keeps when all that is known is the band of pressures
// over which the slips bite.
type Bitten struct {
	Inside  unit.Band[unit.Pressure] `json:"inside"`  // applied when they bite
	Tension unit.Band[unit.Force]    `json:"tension"` // locked in after the bleed-off; least is the most compressed
	Stretch unit.Band[unit.Length]   `json:"stretch"` // of the free string at that moment
	Nominal Locked                   `json:"nominal"`
}

// Bitten returns what is locked in for slips that bite anywhere in a band of
// pressures: see Locked, and Pressures.Bite for the band. The force goes straight
// with the pressure, so that the ends of the one are the ends of the other.
//
// Errors name every field out of range; Inside itself is not used.
func (l LockIn) Bitten(inside unit.Band[unit.Pressure]) (Bitten, error) {
	f := fault.In(scope)
	f.At("Inside", inside.Validate())
	if err := f.Err(); err != nil {
		return Bitten{}, err
	}
	b := Bitten{Inside: inside}
	var ends [3]Locked
	for i, p := range [...]unit.Pressure{inside.Least, inside.Nominal, inside.Greatest} {
		l.Inside = p
		var err error
		if ends[i], err = l.Locked(); err != nil {
			return Bitten{}, err
		}
	}
	b.Nominal = ends[1]
	b.Tension = unit.Band[unit.Force]{Least: min(ends[0].Tension, ends[2].Tension), Nominal: ends[1].Tension, Greatest: max(ends[0].Tension, ends[2].Tension)}
	b.Stretch = unit.Band[unit.Length]{Least: min(ends[0].Stretch, ends[2].Stretch), Nominal: ends[1].Stretch, Greatest: max(ends[0].Stretch, ends[2].Stretch)}
	return b, nil
}

// Steps works the result.
func (l Locked) Steps() []working.Step {
	pipe := l.in.Pipe
	Ai, Ao := working.Of(pipe.InnerArea()), working.Of(pipe.OuterArea())
	pi, po := working.Input{Symbol: "p_i", Value: working.Of(l.in.Inside)}, working.Input{Symbol: "p_o", Value: working.Of(l.in.Outside)}
	end := working.Step{
		Name: "end load", Symbol: "Fe", Equation: "p_i*Ai - p_o*Ao",
		Inputs: []working.Input{pi, {Symbol: "Ai", Value: Ai}, po, {Symbol: "Ao", Value: Ao}},
		Value:  working.Of(l.EndLoad), Source: "pressure on a closed end",
	}
	if l.in.Chamber != 0 {
		end.Equation, end.Source = "-(Ap - Ai)*p_i + (Ap - Ao)*p_o", "pressure on an end open to a chamber"
		end.Inputs = append(end.Inputs, working.Input{Symbol: "Ap", Value: working.Of(tubular.AnnularCapacity(l.in.Chamber, 0))})
	}
	steps := []working.Step{end, {
		Name: "ballooning", Symbol: "Fb", Equation: "-2*ν*(p_i*Ai - p_o*Ao)",
		Inputs: []working.Input{
			{Symbol: "ν", Value: working.Number(pipe.Material.Poisson)}, pi, {Symbol: "Ai", Value: Ai}, po, {Symbol: "Ao", Value: Ao},
		},
		Value: working.Of(l.Ballooning), Source: "Lamé; Lubinski et al. 1962",
	}, {
		Name: "stretch while setting", Symbol: "dL", Equation: "(Fe + Fb)*L/(E*As)",
		Inputs: []working.Input{
			{Symbol: "Fe", Value: working.Of(l.EndLoad)}, {Symbol: "Fb", Value: working.Of(l.Ballooning)},
			{Symbol: "L", Value: working.Of(l.in.Length)}, {Symbol: "E", Value: working.Of(pipe.Material.Young)},
			{Symbol: "As", Value: working.Of(pipe.SteelArea())},
		},
		Value: working.In(l.Stretch, unit.Inch, "in"), Source: "Hooke",
	}}
	if l.in.Top == Landed {
		steps = append(steps, working.Step{
			Name: "tension locked in", Symbol: "F", Equation: "Fe + Fb",
			Inputs: []working.Input{
				{Symbol: "Fe", Value: working.Of(l.EndLoad)}, {Symbol: "Fb", Value: working.Of(l.Ballooning)},
			},
			Value: working.Of(l.Tension), Source: "same strain before and after the bleed-off",
		})
	}
	return steps
}
