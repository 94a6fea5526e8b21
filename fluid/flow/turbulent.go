package flow

import (
	"math"

	"completion.example/internal/root"
)

// Turbulent returns Fanning's friction factor of turbulent flow of any fluid,
//
//	1/√f = -4 log10{ (ε/De)/3.7 + 1.255^(n^-1.2) / [Re f^(1-n/2)]^(n^-0.75) }
//
// with the local flow index n, the generalised Reynolds number Re and the
// roughness relative to the effective diameter De. For n = 1 it is Colebrook
// and White's law (to 1e-12); for a smooth wall it is Dodge and Metzner's (with
// 1.255 for their 1.26, so that both limits meet).
//
// Range: Dodge and Metzner's experiments cover n 0.36 to 1 and Re to 36,000, and
// agree within some 4 % for polymer solutions, 10 % and more for clay suspensions
// (range and accuracy from memory). Roughness with n below 1 has no experiments
// behind it.
// Outside (n up to 2, any Re above 100) it extrapolates. NaN where an argument
// is outside n 0.1 to 2, Re 100 to 1e12, ε/De 0 to 1.
//
// Source: Dodge and Metzner, AIChE J. 5 (1959) 189; Reed and Pilehvari, SPE
// 25456 (1993), for the generalised fluid and the roughness.
func Turbulent(index, reynolds, relativeRoughness float64) FanningFactor {
	if index == 1 {
		return Colebrook(reynolds, relativeRoughness).Fanning()
	}
	if !(index >= leastIndex && index <= greatestIndex && reynolds > 100 && reynolds <= 1e12 &&
		relativeRoughness >= 0 && relativeRoughness <= 1) {
		return FanningFactor(math.NaN())
	}
	// In x = 1/√f the bracket is a + c x^q.
	p := math.Pow(index, -0.75)
	a := relativeRoughness / 3.7
	c := math.Pow(1.255, math.Pow(index, -1.2)) * math.Pow(reynolds, -p)
	q := (2 - index) * p
	x, err := root.Find(func(x float64) float64 {
		return x + 4*math.Log10(a+c*math.Pow(x, q))
	}, 1e-3, 1e4, 1e-13)
	if err != nil {
		return FanningFactor(math.NaN())
	}
	return FanningFactor(1 / (x * x))
}

// LaminarReynolds returns the generalised Reynolds number up to which flow is
// taken as laminar, and TurbulentReynolds the one from which it is taken as
// turbulent, for a flow index n:
//
//	3470 - 1370 n    and    4270 - 1370 n
//
// that is 2,100 and 2,900 for a Newtonian liquid. In a smooth, quiet pipe laminar
// flow lives longer; take either for a convention, good to some 10 or 20 %.
//
// Range: n to 2, as a Rheology has it; the lines aren't checked and go on, from
// 2.53 below zero.
//
// Source: API RP 13D (3rd edition, 1995; 2006), after Dodge and Metzner (1959)
// and Schuh (1964).
func LaminarReynolds(index float64) float64 { return 3470 - 1370*index }

// TurbulentReynolds: see LaminarReynolds.
//
//	Re = 4270 − 1370·n
//
// Range: as LaminarReynolds; below zero from n = 3.12.
func TurbulentReynolds(index float64) float64 { return 4270 - 1370*index }

// factor returns the friction factor over all regimes. Turbulent flow is
// never easier than laminar flow would be; between the two limits the factor
// is interpolated in logarithms, so that it is continuous and the pressure loss
// always rises with the rate.
func factor(index, reynolds, relative float64) (f FanningFactor, regime Regime) {
	laminar := FanningFactor(16 / reynolds)
	law := func(reynolds float64) FanningFactor { return Turbulent(held(index, reynolds, relative)) }
	lo, hi := LaminarReynolds(index), TurbulentReynolds(index)
	switch {
	case reynolds <= lo:
		return laminar, FlowLaminar
	case reynolds >= hi:
		return max(laminar, law(reynolds)), FlowTurbulent
	}
	end := max(16/hi, float64(law(hi)))
	share := math.Log(reynolds/lo) / math.Log(hi/lo)
	return FanningFactor(16 / lo * math.Pow(end*lo/16, share)), FlowTransitional
}

// held keeps a stream within what Turbulent takes: a fluid next to its yield
// stress has a local index near zero and an effective diameter to match. Those
// are beyond all experiments, and Friction.Beyond says so.
func held(index, reynolds, relative float64) (n, re, e float64) {
	return max(index, leastIndex), min(reynolds, 1e12), min(relative, 1)
}
