package flow

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/optimize"
	"gonum.org/v1/gonum/stat"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Fitted is a rheology fitted to viscometer readings, with what it is worth.
type Fitted struct {
	Rheology  Rheology        `json:"rheology"`
	Model     Model           `json:"model"`
	RMS       unit.Pressure   `json:"rms"`       // root mean square of the residuals
	Worst     unit.Pressure   `json:"worst"`     // largest residual, with its sign: reading less fit
	WorstAt   float64         `json:"worst_at"`  // speed of that reading, rev/min
	Residuals []unit.Pressure `json:"residuals"` // reading less fit, in the order given
	R2        float64         `json:"r2"`        // share of the variance explained; 0 where the readings don't vary
	Freedom   int             `json:"freedom"`   // readings less constants: 0 is a curve through every point, no test of the law
	AtBound   bool            `json:"at_bound"`  // a physical bound holds a constant: the law doesn't suit
}

// Bounds of the flow index in a fit. Drilling and completion fluids have n from
// about 0.2 to 1; a little above one is left for scatter of thin ones.
const (
	leastFitIndex = 0.1
	mostFitIndex  = 1.2
)

// Fit fits a law to viscometer readings by least squares in the stress, with
// a yield stress that isn't negative, n between 0.1 and 1.2 and K above zero.
// For every n the best yield stress and K follow by linear regression, and n
// itself by gonum's Nelder–Mead search. Needs at least as many different speeds
// as the law has constants; readings are 0.01 to 10,000 degrees at 0.01 to 10,000
// rev/min. Says in Fitted what the fit is worth: there is always a fit.
//
// Errors: faults of the readings; too few different speeds; a model that there isn't.
//
// Source: ordinary least squares.
func Fit(model Model, readings []Reading) (Fitted, error) {
	f := fault.In("flow")
	if model.parameters() == 0 {
		f.New("model", "is %v; must be a rheological model", model)
	}
	speeds := map[float64]bool{}
	for i, r := range readings {
		f.At(fault.Index("readings", i), r.Validate())
		speeds[r.Speed] = true
	}
	if len(speeds) < model.parameters() {
		f.New("readings", "have %d different speeds; must have, for a %v fluid, at least %d", len(speeds), model, model.parameters())
	}
	if err := f.Err(); err != nil {
		return Fitted{}, err
	}
	rate, stress := make([]float64, len(readings)), make([]float64, len(readings))
	for i, r := range readings {
		rate[i], stress[i] = float64(r.Rate()), float64(r.Stress())
	}
	n, held := 1.0, false
	if model == ModelPowerLaw || model == ModelHerschelBulkley {
		var err error
		if n, held, err = bestIndex(model, rate, stress); err != nil {
			return Fitted{}, err
		}
	}
	τ0, k, sum, pinned := linear(model, n, rate, stress)
	fit := Fitted{
		Rheology: Rheology{unit.Pressure(τ0), unit.Consistency(k), n},
		Model:    model, AtBound: held || pinned,
		RMS:     unit.Pressure(math.Sqrt(sum / float64(len(rate)))),
		Freedom: len(speeds) - model.parameters(),
	}
	fit.judge(readings)
	return fit, fit.Rheology.Validate()
}

func (f *Fitted) judge(readings []Reading) {
	stress, fitted := make([]float64, len(readings)), make([]float64, len(readings))
	for i, r := range readings {
		stress[i], fitted[i] = float64(r.Stress()), float64(f.Rheology.Stress(r.Rate()))
		d := unit.Pressure(stress[i] - fitted[i])
		f.Residuals = append(f.Residuals, d)
		if math.Abs(float64(d)) >= math.Abs(float64(f.Worst)) {
			f.Worst, f.WorstAt = d, r.Speed
		}
	}
	if slices.Max(stress) > slices.Min(stress) {
		f.R2 = stat.RSquaredFrom(fitted, stress, nil)
	}
}

// bestIndex searches n. A logistic keeps it inside its bounds, and the bounds
// themselves are tried afterwards.
func bestIndex(model Model, rate, stress []float64) (n float64, held bool, err error) {
	index := func(z float64) float64 {
		return leastFitIndex + (mostFitIndex-leastFitIndex)/(1+math.Exp(-z))
	}
	cost := func(n float64) float64 {
		_, _, sum, _ := linear(model, n, rate, stress)
		return sum
	}
	result, err := optimize.Minimize(
		optimize.Problem{Func: func(z []float64) float64 { return cost(index(z[0])) }},
		[]float64{0}, &optimize.Settings{MajorIterations: 500, Converger: &optimize.FunctionConverge{Absolute: 1e-16, Relative: 1e-14, Iterations: 40}},
		&optimize.NelderMead{})
	if err != nil {
		return 0, false, fmt.Errorf("flow: no fit of a %v fluid: %w", model, err)
	}
	n = index(result.X[0])
	for _, bound := range []float64{leastFitIndex, mostFitIndex} {
		if cost(bound) <= cost(n) || math.Abs(n-bound) < 1e-4 {
			n, held = bound, true
		}
	}
	return n, held, nil
}

// linear returns the best yield stress and K for a given n, the sum of squares,
// and whether a bound holds one of them.
func linear(model Model, n float64, rate, stress []float64) (τ0, k, sum float64, held bool) {
	x := make([]float64, len(rate))
	for i, γ := range rate {
		x[i] = math.Pow(γ, n)
	}
	τ0, k = stat.LinearRegression(x, stress, nil, model == ModelNewtonian || model == ModelPowerLaw)
	if τ0 < float64(leastYield) {
		held = τ0 < -float64(leastYield)
		_, k = stat.LinearRegression(x, stress, nil, true)
		τ0 = 0
	}
	if least := float64(leastK); !(k >= least) {
		held, k = true, least
		τ0 = 0
		if model == ModelBingham || model == ModelHerschelBulkley {
			τ0 = stat.Mean(stress, nil)
		}
	}
	for i := range x {
		d := stress[i] - τ0 - k*x[i]
		sum += d * d
	}
	return τ0, k, sum, held
}
