package packer

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// Unseating is a packer, or a joint, that is about to let go while pressure may
// be trapped under it.
//
// Pull is the string above with Seal as the diameter that the trapped pressure
// pushes on: the bore of the casing for a packer that is unseated, the seal bore
// for a string that is pulled out of one. Its Plugged and Below are not used.
type Unseating struct {
	Pull    Pull                     `json:"pull"`
	Trapped unit.Band[unit.Pressure] `json:"trapped"` // under it; a band, since it is seldom known
	Reserve unit.Force               `json:"reserve"` // least weight that must stay on the hook
}

// Freed is what hangs on the hook at the moment of letting go.
type Freed struct {
	Differential unit.Band[unit.Pressure] `json:"differential"` // trapped less what stands above

	// Weight is what the string weighs on the hook then, block and drag left
	// out. Negative is pipe light: the well lifts the string.
	Weight unit.Band[unit.Force] `json:"weight"`

	// Light says whether the reserve is gone: not, unknown, or for certain.
	Light Outcome `json:"light"`

	// BleedTo is the greatest trapped pressure that leaves the reserve; where
	// Hopeless is set, the string alone is too light for it even with none.
	BleedTo  unit.Pressure `json:"bleed_to"`
	Hopeless bool          `json:"hopeless"`

	area    unit.Area
	reserve unit.Force
	trapped unit.Pressure
}

// Freed returns the weight on the hook when the packer or joint lets go.
//
//	W       = Balance(0) - block, with the trapped pressure under the seal
//	bleed to  p = trapped + (W - reserve) / Ap
//
// Drag is left out: it holds the string down only until it doesn't. The trapped
// pressure expands as the string rises, so the force falls off with liquid and
// hardly at all with gas.
//
// Errors name every field out of range. Source: Balance.
func (u Unseating) Freed() (Freed, error) {
	p := u.Pull
	p.Plugged, p.Below = true, 0
	f := fault.In(scope)
	pull := p.faults()
	f.At("Pull", pull.Err())
	f.At("Trapped", u.Trapped.Validate())
	if u.Trapped.Least < 0 {
		f.New("Trapped", "begins at %v; must be 0 or more", u.Trapped.Least)
	}
	f.Add(fault.AtLeast("Reserve", u.Reserve, 0))
	if err := f.Err(); err != nil {
		return Freed{}, err
	}
	h, err := p.hang()
	if err != nil {
		return Freed{}, err
	}
	none := h.balance(0)
	area := tubular.AnnularCapacity(p.Seal, 0)
	bare := none.Reading - none.Block
	above := h.joint().Outside
	r := Freed{
		Differential: u.Trapped.Shift(-above),
		Weight:       onArea(u.Trapped, area).Times(-1).Shift(bare),
		BleedTo:      unit.Pressure(float64(bare-u.Reserve) / float64(area)),
		area:         area, reserve: u.Reserve, trapped: u.Trapped.Nominal,
	}
	switch {
	case r.Weight.Greatest < u.Reserve:
		r.Light = Acted
	case r.Weight.Least < u.Reserve:
		r.Light = Unknown
	}
	if r.BleedTo < 0 {
		r.BleedTo, r.Hopeless = 0, true
	}
	return r, finiteResult("weight on the hook", float64(r.Weight.Least), float64(r.Weight.Greatest), float64(r.BleedTo))
}

// String says it in words.
func (r Freed) String() string {
	text := map[Outcome]string{NotActed: "not pipe light", Unknown: "may be pipe light", Acted: "pipe light"}[r.Light]
	text = fmt.Sprintf("%s: %s on the hook against a reserve of %s", text, r.Weight.Rounded(4), r.reserve.Rounded(4))
	switch {
	case r.Hopeless:
		return text + "; too light even with nothing trapped"
	case r.Light != NotActed:
		return text + "; bleed to " + r.BleedTo.Rounded(4) + " first"
	}
	return text
}

// Steps works the pressure to bleed to.
func (r Freed) Steps() []working.Step {
	if r.Hopeless {
		return nil
	}
	in := func(symbol string, v working.Value) working.Input { return working.Input{Symbol: symbol, Value: v} }
	return []working.Step{{
		Name: "pressure under it that leaves the reserve", Symbol: "p", Equation: "pt + (W - Wr)/Ap",
		Inputs: []working.Input{in("pt", working.Of(r.trapped)), in("W", working.Of(r.Weight.Nominal)), in("Wr", working.Of(r.reserve)), in("Ap", working.Of(r.area))},
		Value:  working.Of(r.BleedTo), Source: "balance of the string",
	}}
}
