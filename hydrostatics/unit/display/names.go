package display

// names of the purposes, in the order of their constants.
var names = [purposes]string{
	"usual", "depth", "pipe length", "stroke", "diameter", "pressure", "stress", "yield stress", "volume", "small volume",
	"pump rate", "production rate", "gas rate", "small rate", "area", "capacity", "velocity", "pipe speed", "angle", "dogleg",
	"mass", "mass rate", "force", "pipe weight", "density", "gradient", "temperature", "temperature difference", "temperature gradient",
	"shear rate", "viscosity", "consistency", "compressibility", "expansivity", "torque", "power", "second moment", "permeability",
	"flow coefficient", "specific heat", "conductivity", "heat transfer", "diffusivity", "productivity index",
}

// String returns what p is called.
func (p Purpose) String() string {
	if p >= purposes {
		return "unknown"
	}
	return names[p]
}
