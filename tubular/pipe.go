package tubular

import "completion.example/hydrostatics/unit"

// Pipe is the body of one pipe: its size, its weight in air and its steel.
type Pipe struct {
	OD, ID   unit.Length
	Weight   unit.WeightPerLength // in air, couplings included; zero stands for the plain-end weight
	Material Material
}

// Material is what a pipe is made of.
type Material struct {
	Young     unit.Pressure    // Young's modulus
	Poisson   float64          // Poisson's ratio
	Expansion unit.Expansivity // linear, per temperature difference
	Density   unit.Density
	Yield     unit.Pressure // specified minimum yield strength
	Tensile   unit.Pressure // specified minimum tensile strength
}
