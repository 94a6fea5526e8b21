package sequence

import "completion.example/hydrostatics/unit"

// What lies beyond these is a slip of the pen: more than any well has, with
// room to spare.
const (
	mostDensity  = 30 * unit.PoundPerGallon
	mostForce    = 10_000_000 * unit.PoundForce
	mostPressure = 100_000 * unit.PSI

	leastStrength = 0.001 * unit.PSI

	mostCapacity    = 100 * unit.BarrelPerFoot
	mostCompression = 1 * unit.PerPSI
	mostHeat        = 200 * unit.FahrenheitDifference // that a temperature may be off
)

func (v *validation) density(path string, d unit.Density) {
	if !(d > 0 && d <= mostDensity) {
		v.fault(path, "is %v; must be above zero and no more than %v", d, mostDensity)
	}
}

func (v *validation) capacity(path string, a unit.Area) {
	if !(a >= 0 && a <= mostCapacity) {
		v.fault(path, "is %v; must be from 0 bbl/ft to %.0f bbl/ft", a, mostCapacity.In(unit.BarrelPerFoot))
	}
}

func (v *validation) compression(path string, c unit.Compressibility) {
	if !(c >= 0 && c <= mostCompression) {
		v.fault(path, "is %v; must not be negative, nor more than %v", c, mostCompression)
	}
}

// strength checks a strength that may be left out.
func (v *validation) strength(path string, p unit.Pressure) {
	if p != 0 && !(p >= leastStrength && p <= mostPressure) {
		v.fault(path, "is %v; must be from %v to %v, or left out", p, leastStrength, mostPressure)
	}
}

// forceOrNone checks a force that may be left out.
func (v *validation) forceOrNone(path string, f unit.Force) {
	if f != 0 && !(f >= unit.PoundForce && f <= mostForce) {
		v.fault(path, "is %v; must be from 1 lbf to %v, or left out", f, mostForce)
	}
}

// chamber checks a pressure that may be below nothing.
func (v *validation) chamber(path string, p unit.Pressure) {
	if !(p >= -mostPressure && p <= mostPressure) {
		v.fault(path, "is %v; must be from %v to %v", p, -mostPressure, mostPressure)
	}
}

func (v *validation) force(path string, f unit.Force) {
	if !(f >= 0 && f <= mostForce) {
		v.fault(path, "is %v; must be from 0 lbf to %v", f, mostForce)
	}
}
