package sequence

import (
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/assembly"
)

// bores gives a compartment those of its space, with the walls of their pipes, where the
// assembly asks for them. The walls are known of all of it or of none: beside open hole
// they are left out.
func (d *deriver) bores(c *Compartment, s *assembly.Space) {
	if !d.a.Walls {
		return
	}
	all := d.Bores(s)
	if len(all) == 0 {
		c.Note += "; it has no bores: gravel is in it"
		return
	}
	open := slices.ContainsFunc(all, func(b assembly.Conduit) bool { return b.OuterWall == 0 })
	for _, b := range all {
		x := Bore{To: unit.Length(b.Bottom), Outer: unit.Length(b.Outer), Inner: unit.Length(b.Inner)}
		if !open {
			x.OuterWall, x.InnerWall = thickness(b.OuterWall), thickness(b.InnerWall)
		}
		c.Bores = append(c.Bores, x)
	}
	c.Capacity = 0
	c.Capacity = c.capacity() // over its length, also where its top is taken as surface
	if open {
		c.Note += "; its bores, without walls: it has open hole"
	} else {
		c.Note += "; its bores and their walls are those of the pipes, each taken by itself, of steel"
	}
}

// thickness is a wall as its table has it, where half the difference of two diameters is
// that but for rounding.
func thickness(wall float64) unit.Length {
	x := unit.Length(math.Round(unit.Length(wall).In(unit.Inch)*1e4)/1e4) * unit.Inch
	if math.Abs(float64(x)-wall) < 1e-9 {
		return x
	}
	return unit.Length(wall)
}
