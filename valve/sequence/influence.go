package sequence

import (
	"cmp"
	"math"
	"slices"

	"completion.example/valve/sequence/internal/proof"
	"gonum.org/v1/gonum/stat/distuv"
)

// Influence is the share of the variance of failing that an input makes by itself,
// whichever way it works: at one end of its band, at both, or in the middle.
type Influence struct {
	Input string  `json:"input"`
	Share float64 `json:"share"`
	Error float64 `json:"error"` // standard error of the share
}

// bins into which an input's band is parted.
const bins = 12

// influence is the first-order share of the variance of failing: that of the mean
// in bins of the input, less what chance alone would make of it.
//
//	S = (Σ n_b·(m_b - m)²/n - (B - 1)/n·v) / V,  v within the bins, V in all
//
// The error is that of ten parts of the draws (jackknife). False where it can't be
// told from chance.
//
// Source: first-order index, Sobol', Mathematical Modelling and Computational
// Experiments 1, 1993, 407-414; given-data estimate by bins as in Plischke,
// Borgonovo and Smith, European Journal of Operational Research 226, 2013, 536-550.
func influence(draws []proof.Drawn, inputs [][]float64, k int) (Influence, bool) {
	const parts = 10
	n := len(draws)
	if n < 20*bins {
		return Influence{}, false
	}
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(inputs[a][k], inputs[b][k]) })
	bin := make([]int, n)
	for at, i := range order {
		bin[i] = at * bins / n
	}
	share := func(leave int) float64 {
		var count, failed [bins]float64
		total, sum := 0.0, 0.0
		for i := range draws {
			if leave >= 0 && i*parts/n == leave {
				continue
			}
			b := bin[i]
			count[b]++
			total++
			if draws[i].Fails {
				failed[b]++
				sum++
			}
		}
		m := sum / total
		between, within := 0.0, 0.0
		for b := range bins {
			if count[b] == 0 {
				continue
			}
			mb := failed[b] / count[b]
			between += count[b] * (mb - m) * (mb - m)
			within += count[b] * mb * (1 - mb)
		}
		v := m * (1 - m)
		if v == 0 {
			return 0
		}
		return (between/total - (bins-1)/total*within/total) / v
	}
	s := share(-1)
	var mean, square float64
	for p := range parts {
		x := share(p)
		mean += x / parts
		square += x * x / parts
	}
	e := math.Sqrt(max(square-mean*mean, 0) * (parts - 1))
	x := Influence{Share: min(max(s, 0), 1), Error: e}
	return x, s > 2*e && s > 2*float64(bins)/float64(n)
}

// wilson is the 95 % interval of a share.
//
//	(p̂ + z²/2n ± z·sqrt(p̂(1−p̂)/n + z²/4n²)) / (1 + z²/n)
//
// Source: Wilson, Journal of the American Statistical Association 22, 1927,
// 209-212; z is the 97.5 % quantile of the normal distribution.
func wilson(count, samples int) Share {
	n := float64(samples)
	p := float64(count) / n
	z := distuv.UnitNormal.Quantile(0.975)
	middle := p + z*z/(2*n)
	half := z * math.Sqrt(p*(1-p)/n+z*z/(4*n*n))
	d := 1 + z*z/n
	s := Share{Value: p, Least: max((middle-half)/d, 0), Greatest: min((middle+half)/d, 1)}
	if count == 0 {
		s.Least = 0
	}
	if count == samples {
		s.Greatest = 1
	}
	return s
}
