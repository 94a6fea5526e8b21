package choke

import "math"

// n4 is sqrt(4·√2/π): the valve Reynolds number is that of a jet with the area
// of the vena contracta, Av·FL/√2, and the hydraulic diameter Fd times its
// diameter. The standard prints 7.07e-2 for Kv and m³/h.
const n4 = 1.3418765339308278

// reynolds is the valve Reynolds number at a rate:
//
//	Rev = N4·Fd·q/(ν·sqrt(C·FL))·(FL²·C²/(N2·D⁴) + 1)^¼
//
// q rate at inlet conditions (m³/s), ν kinematic viscosity (m²/s), C flow
// coefficient Av (m²), D inside diameter of the upstream pipe (m), N4 =
// sqrt(4√2/π) in SI. Source: IEC 60534-2-1, valve Reynolds number.
func (t Trim) reynolds(q, nu float64) float64 {
	c := float64(t.Coefficient)
	d, _ := t.pipes()
	d *= d
	approach := t.Recovery * c / d
	return n4 * t.Style * q / (nu * math.Sqrt(c*t.Recovery)) * math.Sqrt(math.Sqrt(approach*approach/n2+1))
}

// ReynoldsFactor is FR, the ratio of viscous to turbulent flow:
//
//	transitional  FR = 1 + 0.33·sqrt(FL)/n^¼·log10(Rev/10000)
//	laminar       FR = 0.026/FL·sqrt(n·Rev)
//	full trim     n = N2/(C/d²)²
//	reduced trim  n = 1 + N32·(C/d²)^⅔        (N32 = 140 for Kv and mm)
//
// From Rev = 10,000 it is one; between 10 and 10,000 the lesser of the two
// holds and never more than one; below 10 the laminar form. Source: IEC
// 60534-2-1, Reynolds number factor.
//
// Range: Rev from zero up, NaN below; the trim isn't checked here.
func (t Trim) ReynoldsFactor(reynolds float64) float64 {
	if reynolds >= turbulent {
		return 1
	}
	n := n2 / t.size()
	if t.Reduced {
		n = 1 + 140*math.Cbrt(t.ratio()*t.ratio())
	}
	laminar := min(1, 0.026/t.Recovery*math.Sqrt(n*reynolds))
	if reynolds < 10 {
		return laminar
	}
	return min(laminar, 1+0.33*math.Sqrt(t.Recovery)/math.Sqrt(math.Sqrt(n))*math.Log10(reynolds/turbulent))
}
