package record

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
)

// noise is the standard deviation of readings about a smooth course: of each reading
// against the middle of its neighbours,
//
//	d_i = (y_(i-1) + y_(i+1))/2 - y_i,    σ = median |d| / 0.6745 · √(2/3)
//
// which a straight course of any slope leaves alone and a few corners don't reach.
// Readings in steps (a fifth of all are those before) are no better than a step: σ is at
// least the step's width / √12, but for that no more than half a percent of their range.
// Source: Gasser, Sroka and Jennen-Steinmetz 1986, the median in place of the mean;
// 0.6745 is the quartile of the standard normal distribution.
func noise(y []float64) float64 {
	var d, gaps []float64
	var kept []float64
	for _, v := range y {
		if !math.IsNaN(v) {
			kept = append(kept, v)
		}
	}
	for i := 1; i < len(kept); i++ {
		if g := math.Abs(kept[i] - kept[i-1]); g > 0 {
			gaps = append(gaps, g)
		}
		if i+1 < len(kept) {
			d = append(d, math.Abs((kept[i-1]+kept[i+1])/2-kept[i]))
		}
	}
	if len(d) == 0 {
		return 0
	}
	slices.Sort(d)
	sigma := stat.Quantile(0.5, stat.LinInterp, d, nil) / 0.6745 * math.Sqrt(2./3)
	if same := len(kept) - 1 - len(gaps); len(gaps) > 0 && 5*same >= len(kept) {
		sigma = max(sigma, min(slices.Min(gaps)/math.Sqrt(12), (slices.Max(kept)-slices.Min(kept))/200))
	}
	if math.IsNaN(sigma) || math.IsInf(sigma, 0) {
		return 0
	}
	return sigma
}
