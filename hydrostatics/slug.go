package hydrostatics

import (
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
)

// Slug is a pill that is heavier than the mud, pumped into the top of a
// vertical pipe so that it comes out dry. The annulus stays full of mud and
// takes nothing but what the pipe gives.
type Slug struct {
	Mud      unit.Density `json:"mud"`
	Pill     unit.Density `json:"pill"`
	Capacity unit.Area    `json:"capacity"` // of the pipe
}

// Length returns the length of pill that leaves this much of the pipe dry:
//
//	L = d·ρm/(ρs − ρm)
//
// d is the dry length, ρm and ρs the densities of mud and pill; ρs > ρm.
// It follows from (ρs − ρm)·g·L = ρm·g·d.
//
// Range: any dry length; the densities aren't checked: infinite where they are
// alike, negative where the pill is the lighter.
//
// Source: Lapeyrouse, Formulas and Calculations for Drilling, Production and
// Workover, 2nd ed., ch. 2, slug calculations.
func (s Slug) Length(dry unit.Length) unit.Length {
	rm, rs := float64(s.Mud), float64(s.Pill)
	return unit.Length(float64(dry) * rm / (rs - rm))
}

// Volume returns the volume of pill that leaves this much of the pipe dry:
//
//	V = C·d·ρm/(ρs − ρm)
//
// C is the pipe's capacity; the rest as for Length.
//
// Range: as Length.
//
// Source: balance of the columns.
func (s Slug) Volume(dry unit.Length) unit.Volume {
	return unit.Volume(float64(s.Capacity) * float64(s.Length(dry)))
}

// Dry returns the length that a volume of pill leaves dry, the inverse of
// Volume:
//
//	d = (V/C)·(ρs − ρm)/ρm
//
// Range: any volume; capacity and density of the mud aren't zero: infinite
// there.
//
// Source: inverse of Volume.
func (s Slug) Dry(volume unit.Volume) unit.Length {
	rm, rs := float64(s.Mud), float64(s.Pill)
	return unit.Length(float64(volume) / float64(s.Capacity) * (rs - rm) / rm)
}

// Gain returns the mud that the falling slug drives out of the annulus: what
// the dry length held:
//
//	G = C·d
//
// The pill itself adds its own volume to the pits while it is pumped.
//
// Range: any length; it isn't checked.
//
// Source: Lapeyrouse 2nd ed., ch. 2.
func (s Slug) Gain(dry unit.Length) unit.Volume {
	return unit.Volume(float64(s.Capacity) * float64(dry))
}

// SlugDensity returns the density of a pill of this length that leaves this
// much of the pipe dry:
//
//	ρs = ρm·(1 + d/L)
//
// Range: any dry length; infinite, or NaN where nothing is dry, for a pill
// without length.
//
// Source: Lapeyrouse 2nd ed., ch. 2.
func SlugDensity(mud unit.Density, length, dry unit.Length) unit.Density {
	return unit.Density(float64(mud) * (1 + float64(dry)/float64(length)))
}

// Steps shows the working for a dry length.
func (s Slug) Steps(dry unit.Length) []working.Step {
	const source = "Lapeyrouse 2nd ed., ch. 2, slug calculations, in SI"
	inputs := []working.Input{{Symbol: "d", Value: working.Of(dry)}, {Symbol: "rm", Value: working.Of(s.Mud)}, {Symbol: "rs", Value: working.Of(s.Pill)}}
	capacity := working.Input{Symbol: "C", Value: working.In(s.Capacity, unit.BarrelPerFoot, "bbl/ft")}
	return []working.Step{
		{Name: "length of the slug", Symbol: "L", Equation: "d*rm/(rs-rm)", Inputs: inputs, Value: working.Of(s.Length(dry)), Source: source},
		{Name: "volume of the slug", Symbol: "V", Equation: "C*L", Source: source,
			Inputs: []working.Input{capacity, {Symbol: "L", Value: working.Of(s.Length(dry))}}, Value: working.Of(s.Volume(dry))},
		{Name: "mud driven out", Symbol: "G", Equation: "C*d", Source: source,
			Inputs: []working.Input{capacity, {Symbol: "d", Value: working.Of(dry)}}, Value: working.Of(s.Gain(dry))},
	}
}
