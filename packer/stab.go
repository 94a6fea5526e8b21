package packer

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/fault"
	"completion.example/tubular/movement"
)

// Stab is a string about to be stabbed into a seal bore, or pulled out of it.
type Stab struct {
	// Down and Up are the weight-indicator readings just above the bore, with
	// the end open: running in, and pulling out.
	Down unit.Force `json:"down"`
	Up   unit.Force `json:"up"`

	End      movement.End          `json:"end"`      // once the seals are in
	Friction unit.Band[unit.Force] `json:"friction"` // of all seals together; the maker's to say
	Latch    unit.Band[unit.Force] `json:"latch"`    // that a latch adds to the pull, zero for none
}

// StabWeights are what the weight indicator shows.
type StabWeights struct {
	// Open and Sealed are the forces of the pressures on the string's end before
	// and after the seals are in, tension positive. Piston is the change.
	Open   unit.Force `json:"open"`
	Sealed unit.Force `json:"sealed"`
	Piston unit.Force `json:"piston"`

	In  unit.Band[unit.Force] `json:"in"`  // reading while the seals go in
	Out unit.Band[unit.Force] `json:"out"` // reading that pulls them out

	SetDown  unit.Band[unit.Force] `json:"set_down"` // weight set down while they go in
	Overpull unit.Band[unit.Force] `json:"overpull"` // pull above the free weight up that takes them out

	in Stab
}

// Weights returns the readings at which seals go in and come out.
//
//	F(open)   = -(Ao - Ai) po
//	F(sealed) = Ai pi - Ap pb + (Ap - Ao) po
//	piston    = F(sealed) - F(open)
//	in        = down weight + piston - friction
//	out       = up weight + piston + friction + latch
//
// Ap, Ai and Ao are the areas of seal bore, pipe bore and pipe outside, pi, po
// and pb the pressures inside, outside and below. With one pressure all round the
// piston term is zero: sealing changes nothing until a differential comes. A
// negative reading is one that the weight doesn't reach: the seals won't go in
// without more weight or less pressure below.
//
// Errors name every field out of range. Source: balance of the string's end;
// movement.End.
func (s Stab) Weights() (StabWeights, error) {
	f := fault.In(scope)
	f.Add(fault.Finite("Down", s.Down))
	f.Add(fault.Finite("Up", s.Up))
	if s.Up < s.Down {
		f.New("Up", "is %v; must be no less than the weight going down, %v", s.Up, s.Down)
	}
	checkEnd(&f, "End", s.End)
	for name, band := range map[string]unit.Band[unit.Force]{"Friction": s.Friction, "Latch": s.Latch} {
		f.At(""+name, band.Validate())
		if band.Least < 0 {
			f.New(name, "begins at %v; must be 0 or more", band.Least)
		}
	}
	if err := f.Err(); err != nil {
		return StabWeights{}, err
	}
	open := s.End
	open.Inside, open.Below, open.Bore = s.End.Outside, s.End.Outside, s.End.OD
	w := StabWeights{Open: open.Force(), Sealed: s.End.Force(), in: s}
	w.Piston = w.Sealed - w.Open
	w.In = s.Friction.Times(-1).Shift(s.Down + w.Piston)
	resistance := unit.Band[unit.Force]{
		Least: s.Friction.Least + s.Latch.Least, Nominal: s.Friction.Nominal + s.Latch.Nominal, Greatest: s.Friction.Greatest + s.Latch.Greatest,
	}
	w.Out = resistance.Shift(s.Up + w.Piston)
	w.SetDown = w.In.Times(-1).Shift(s.Down)
	w.Overpull = w.Out.Shift(-s.Up)
	return w, finiteResult("stab-in weight", float64(w.In.Least), float64(w.Out.Greatest))
}

func checkEnd(f *fault.Faults, field string, e movement.End) {
	f.Add(fault.Above(field+".OD", e.OD, 0))
	if !finite(e.ID) || e.ID <= 0 || e.ID >= e.OD {
		f.New(field+".ID", "is %v; must be above 0 and below the OD of %v", e.ID, e.OD)
	}
	f.Add(fault.Above(field+".Bore", e.Bore, 0))
	f.Add(fault.AtLeast(field+".Inside", e.Inside, 0))
	f.Add(fault.AtLeast(field+".Outside", e.Outside, 0))
	f.Add(fault.AtLeast(field+".Below", e.Below, 0))
}

// Steps works the piston term and the nominal readings.
func (w StabWeights) Steps() []working.Step {
	e := w.in.End
	in := func(symbol string, v working.Value) working.Input { return working.Input{Symbol: symbol, Value: v} }
	D, d, B := in("D", working.Of(e.OD)), in("d", working.Of(e.ID)), in("B", working.Of(e.Bore))
	po := in("p_o", working.Of(e.Outside))
	return []working.Step{{
		Name: "end force, open", Symbol: "F0", Equation: "-pi/4*(D*D - d*d)*p_o",
		Inputs: []working.Input{D, d, po}, Value: working.Of(w.Open), Source: "pressure on the steel of an open end",
	}, {
		Name: "end force, sealed", Symbol: "F1", Equation: "pi/4*(d*d*p_i - B*B*p_b + (B*B - D*D)*p_o)",
		Inputs: []working.Input{d, in("p_i", working.Of(e.Inside)), B, in("p_b", working.Of(e.Below)), D, po},
		Value:  working.Of(w.Sealed), Source: "Lubinski, Althouse & Logan 1962, actual force at the packer",
	}, {
		Name: "reading going in", Symbol: "Rin", Equation: "down + F1 - F0 - Fs",
		Inputs: []working.Input{in("down", working.Of(w.in.Down)), in("F1", working.Of(w.Sealed)), in("F0", working.Of(w.Open)), in("Fs", working.Of(w.in.Friction.Nominal))},
		Value:  working.Of(w.In.Nominal), Source: "balance",
	}, {
		Name: "reading coming out", Symbol: "Rout", Equation: "up + F1 - F0 + Fs + latch",
		Inputs: []working.Input{in("up", working.Of(w.in.Up)), in("F1", working.Of(w.Sealed)), in("F0", working.Of(w.Open)), in("Fs", working.Of(w.in.Friction.Nominal)), in("latch", working.Of(w.in.Latch.Nominal))},
		Value:  working.Of(w.Out.Nominal), Source: "balance",
	}}
}
