package inflow

import "completion.example/hydrostatics/unit"

// VogelRatio is the share of open flow that a saturated zone gives:
//
//	q/qmax = 1 - 0.2·(p/pr) - 0.8·(p/pr)²
//
// p pressure in front of the zone, pr reservoir pressure, 0 ≤ p ≤ pr, at or
// below the bubble point; no skin.
//
// Range: not checked beyond: the formula goes on, negative above reservoir
// pressure; NaN or infinite without one.
//
// Source: Vogel, JPT, January 1968.
func VogelRatio(flowing, reservoir unit.Pressure) float64 {
	y := float64(flowing / reservoir)
	return float64((reservoir-flowing)/reservoir) * (1 + 0.8*y) // the product keeps its digits near y = 1
}
