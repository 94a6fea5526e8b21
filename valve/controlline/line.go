package controlline

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Line is a control line from the panel to a device.
//
// Range: a bore within the OD, and what else Validate asks for; whatever
// returns an error checks it, and ID, Capacity, Volume and LaminarLoss don't.
type Line struct {
	OD     unit.Length `json:"od"`
	Wall   unit.Length `json:"wall"`
	Length unit.Length `json:"length"` // measured, from the panel
	TVD    unit.Length `json:"tvd"`    // true vertical, of the device under the panel; at most Length

	Yield   unit.Pressure `json:"yield"` // of the line's metal; only the ratings need it
	Young   unit.Pressure `json:"young"` // zero stands for a wall that doesn't give
	Poisson float64       `json:"poisson"`

	// WallTolerance is the share by which the wall may be thinner, such as 0.10.
	WallTolerance float64 `json:"wall_tolerance"`

	Roughness unit.Length `json:"roughness"` // of the bore; zero is smooth
}

// LineFluid is what fills a line.
type LineFluid struct {
	Density         unit.Density         `json:"density"` // at no pressure
	Viscosity       unit.Viscosity       `json:"viscosity"`
	Compressibility unit.Compressibility `json:"compressibility"`
	Expansivity     unit.Expansivity     `json:"expansivity"` // of volume; only Warming needs it
}

// ID returns the nominal inside diameter.
//
//	d = D − 2t
//
// Source: geometry.
func (l Line) ID() unit.Length { return l.OD - 2*l.Wall }

// Capacity returns the nominal bore area, which is the volume per length.
//
//	A = π/4·d²
//
// Source: geometry.
func (l Line) Capacity() unit.Area {
	d := float64(l.ID())
	return unit.Area(math.Pi / 4 * d * d)
}

// Volume returns what the line holds at no pressure, A·L.
//
// Source: geometry.
func (l Line) Volume() unit.Volume { return unit.Volume(float64(l.Capacity()) * float64(l.Length)) }

// Limits of what is taken for a control line.
const (
	minOD              = 0.1 * unit.Millimetre
	maxOD              = 100 * unit.Millimetre
	mostSlender        = 1000 // OD over wall
	maxLength          = 20 * unit.Kilometre
	minModulus         = 0.01 * unit.Megapascal
	maxModulus         = 1000 * 1000 * unit.Megapascal
	maxDensity         = 3000 * unit.KilogramPerCubicMetre
	minViscosity       = 1e-9 * unit.PascalSecond
	maxViscosity       = 100 * unit.PascalSecond
	maxCompressibility = 0.01 * unit.PerMegapascal
	maxExpansivity     = 0.01 * unit.PerKelvin
)

// Validate reports everything that is wrong with l. Young's modulus and yield
// strength may be zero here; what needs them says so.
func (l Line) Validate() error {
	f := fault.In(scope)
	f.Add(l.checkWall(), fault.AboveTo("Length", l.Length, 0, maxLength), fault.Between("TVD", l.TVD, 0, l.Length))
	if l.Young != 0 {
		f.Add(fault.Between("Young", l.Young, minModulus, maxModulus))
	}
	f.Add(fault.Between("Poisson", l.Poisson, 0, 0.5))
	if !(l.Roughness >= 0 && (l.Roughness < l.ID()/2 || l.ID() <= 0)) {
		f.New("Roughness", "is %v; must be at least 0 and below the bore's radius", l.Roughness)
	}
	return f.Err()
}

// checkWall reports what is wrong with the wall and its metal: what the ratings need.
func (l Line) checkWall() error {
	f := fault.In(scope)
	f.Add(fault.AboveTo("OD", l.OD, minOD, maxOD), fault.AboveTo("Wall", l.Wall, l.OD/mostSlender, l.OD/2))
	if !(l.ID() > 0) {
		f.New("Wall", "is %v; must leave a bore in an OD of %v", l.Wall, l.OD)
	}
	if l.Yield != 0 {
		f.Add(fault.Between("Yield", l.Yield, minModulus, maxModulus))
	}
	if !(l.WallTolerance >= 0 && l.WallTolerance < 0.5) {
		f.New("WallTolerance", "is %v; must be at least 0 and below 0.5", l.WallTolerance)
	}
	return f.Err()
}

// Validate reports everything that is wrong with a liquid.
func (q LineFluid) Validate() error {
	return fault.Join(scope, fault.AboveTo("Density", q.Density, 0, maxDensity), fault.Between("Viscosity", q.Viscosity, minViscosity, maxViscosity),
		fault.Between("Compressibility", q.Compressibility, 0, maxCompressibility), fault.Between("Expansivity", q.Expansivity, 0, maxExpansivity))
}

// scope stands before every fault of this package.
const scope = "controlline"
