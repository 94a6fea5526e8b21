package flow

import (
	"math"

	"completion.example/hydrostatics/unit"
)

// bubbleConstant is Froude's number of a bubble that fills the pipe, where inertia
// rules. Source: White & Beardmore, The velocity of rise of single cylindrical air
// bubbles through liquids contained in vertical tubes, Chem. Eng. Sci. 17, 1962;
// from memory. Theory gives 0.351 (Dumitrescu 1943) and 0.328 (Davies & Taylor
// 1950).
const bubbleConstant = 0.345

// BubbleRise returns how fast a gas bubble that fills the pipe rises in liquid at
// rest:
//
//	v = 0.345·√(g·d·(ρl − ρg)/ρl)
//
// d is the pipe's inside diameter, ρl and ρg the densities of liquid and gas.
// Liquid that is pumped down faster than this takes the gas with it; slower, and
// the gas climbs through it.
//
// For vertical pipes of an inch or more and liquids up to some hundred centipoise;
// in a pipe inclined by 30 to 60 degrees a bubble is up to half as fast again
// (common practice), and small bubbles are slower. Smaller than nought is for a gas
// heavier than the liquid.
//
// Range: any densities, not checked: without liquid it isn't finite.
//
// Source: White & Beardmore 1962.
func BubbleRise(d unit.Length, liquid, gas unit.Density) unit.Velocity {
	rl, rg := float64(liquid), float64(gas)
	share := (rl - rg) / rl
	return unit.Velocity(math.Copysign(bubbleConstant*math.Sqrt(standardGravity*float64(d)*math.Abs(share)), share))
}
