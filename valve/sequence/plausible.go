package sequence

import "completion.example/hydrostatics/unit"

// What lies beyond these is a slip of the pen: more than any well has, with
// room to spare.
const (
	mostDensity  = 30 * unit.PoundPerGallon
	mostForce    = 10_000_000 * unit.PoundForce
	mostPressure = 100_000 * unit.PSI
	mostHeat     = 200 * unit.FahrenheitDifference // that a temperature may be off
)

func (v *validation) density(path string, d unit.Density) {
	if !(d > 0 && d <= mostDensity) {
		v.fault(path, "is %v; it must be above zero and no more than %v", d, mostDensity)
	}
}

func (v *validation) force(path string, f unit.Force) {
	if !(f >= 0 && f <= mostForce) {
		v.fault(path, "is %v; it must be from 0 lbf to %v", f, mostForce)
	}
}
