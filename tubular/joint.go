package tubular

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// RoundThread is the tensile strength of an API round-thread casing joint, by
// the way in which it fails.
type RoundThread struct {
	Fracture unit.Force `json:"fracture"` // of the pipe at the last engaged thread
	PullOut  unit.Force `json:"pull_out"` // jump-out of the threads

	pipe    Pipe
	engaged unit.Length
}

// Strength returns the lesser of the two.
func (r RoundThread) Strength() unit.Force { return min(r.Fracture, r.PullOut) }

// RoundThread returns the tensile strength of a short or long round-thread
// casing joint of p with engaged thread length L (total thread length L4 less
// M of API Std 5B; package catalogue has it).
//
//	fracture   0.95 Aj U
//	pull-out   0.95 Aj L (0.74 D^-0.59 U / (0.5 L + 0.14 D) + Y / (L + 0.14 D))
//	Aj = π/4 ((D - 0.1425)² - d²)
//
// in inches and psi; Y and U are the yield and tensile strength. API prints it
// to 1,000 lbf. NaN where Y or U is not given.
//
// Source: API Bul 5C3 (1985), 4.1; API TR 5C3 (2008), clause 9.
func (p Pipe) RoundThread(engaged unit.Length) RoundThread {
	D, d, L := p.OD.In(unit.Inch), p.ID.In(unit.Inch), engaged.In(unit.Inch)
	Y, U := p.Material.known()
	Aj := math.Pi / 4 * ((D-0.1425)*(D-0.1425) - d*d)
	return RoundThread{
		pipe: p, engaged: engaged,
		Fracture: unit.Force(0.95*Aj*U) * unit.PoundForce,
		PullOut:  unit.Force(0.95*Aj*L*(0.74*math.Pow(D, -0.59)*U/(0.5*L+0.14*D)+Y/(L+0.14*D))) * unit.PoundForce,
	}
}

// Steps shows how both strengths come about.
func (r RoundThread) Steps() []working.Step {
	const source = "API Bul 5C3 (1985), 4.1"
	in := func(symbol string, v working.Value) working.Input { return working.Input{Symbol: symbol, Value: v} }
	D, d, L := in("D", working.Of(r.pipe.OD)), in("d", working.Of(r.pipe.ID)), in("L", working.In(r.engaged, unit.Inch, "in"))
	U, Y, inch := in("U", working.Of(r.pipe.Material.Tensile)), in("Y", working.Of(r.pipe.Material.Yield)), in("inch", working.Of(unit.Inch))
	Aj := in("Aj", working.Of(AnnularCapacity(r.pipe.OD-0.1425*unit.Inch, r.pipe.ID)))
	return []working.Step{
		{Name: "steel area under the last perfect thread", Symbol: "Aj", Equation: "pi/4*(pow(D - 0.1425*inch, 2) - d*d)", Value: Aj.Value, Source: source,
			Inputs: []working.Input{D, inch, d}},
		{Name: "round thread, fracture", Symbol: "Fu", Equation: "0.95*Aj*U", Value: working.Of(r.Fracture), Source: source, Inputs: []working.Input{Aj, U}},
		{Name: "round thread, pull-out", Symbol: "Fj", Value: working.Of(r.PullOut), Source: source,
			Equation: "0.95*Aj*L*(0.74*pow(D/inch, -0.59)*U/(0.5*L + 0.14*D) + Y/(L + 0.14*D))", Inputs: []working.Input{Aj, L, D, inch, U, Y}},
	}
}

// Buttress returns the tensile strength of the pipe thread of a buttress casing
// joint.
//
//	F = 0.95 As U (1.008 - 0.0396 (1.083 - Y/U) D)
//
// D in inches. The coupling may be weaker: see CouplingThread. API prints it to
// 1,000 lbf. NaN where Y or U is not given.
//
// Source: API Bul 5C3 (1985), 4.2; API TR 5C3 (2008), clause 9.
func (p Pipe) Buttress() unit.Force {
	D, As := p.OD.In(unit.Inch), p.SteelArea().In(unit.SquareInch)
	Y, U := p.Material.known()
	return unit.Force(0.95*As*U*(1.008-0.0396*(1.083-Y/U)*D)) * unit.PoundForce
}

// CouplingThread returns the tensile strength of a coupling at the root of its
// thread.
//
//	F = 0.95 Ac Uc,  Ac = π/4 (W² - d1²)
//
// od is W, root is d1, the diameter at the root of the coupling thread at the
// end of the pipe when made up, and tensile that of the coupling's steel.
//
// Range: a root below od, not checked: negative beyond.
//
// Source: API Bul 5C3 (1985), 4.2.
func CouplingThread(od, root unit.Length, tensile unit.Pressure) unit.Force {
	return unit.Force(0.95 * float64(AnnularCapacity(od, root)) * float64(tensile))
}

// NonUpset returns the tensile strength of a non-upset API tubing joint: the
// steel left under the threads at the yield strength.
//
//	F = Y π/4 ((D - 2 h)² - d²)
//
// threadHeight is h: 0.0556 in for 10 threads per inch (up to 3-1/2 in), 0.07125
// in for 8 (from memory of API Std 5B). External-upset tubing is rated by its
// body.
//
// Range: a thread height below the wall, not checked: what is left is negative
// from there on.
//
// Source: API Bul 5C3 (1985), 4.3.
func (p Pipe) NonUpset(threadHeight unit.Length) unit.Force {
	return unit.Force(float64(p.Material.Yield) * float64(AnnularCapacity(p.OD-2*threadHeight, p.ID)))
}

// known returns yield and tensile strength in psi, NaN for what isn't given.
func (m Material) known() (yield, tensile float64) {
	yield, tensile = m.Yield.In(unit.PSI), m.Tensile.In(unit.PSI)
	if m.Yield == 0 {
		yield = math.NaN()
	}
	if m.Tensile == 0 {
		tensile = math.NaN()
	}
	return yield, tensile
}
