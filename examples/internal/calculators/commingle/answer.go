package commingle

import (
	"completion.example/hydrostatics/unit/display"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"completion.example/internal/calculator"
	"completion.example/valve/production"
)

func (in inputs) answer() (calculator.Answer, error) {
	var a calculator.Answer
	w, at, err := in.well()
	if err != nil {
		return a, calculator.BadInput{Err: err}
	}
	n, err := w.Prepare()
	if err != nil {
		return a, calculator.BadInput{Err: err}
	}
	f, err := in.flow(&a, n, at)
	if err != nil {
		return a, err
	}
	gas := w.Zones[0].Gas != nil
	in.tell(&a, w, n, &f, gas)
	a.Results = append(a.Results, calculator.Result{Name: "rate to surface", Value: rate(f.Rate, gas)})
	if !gas {
		a.Results = append(a.Results, calculator.Result{Name: "oil", Value: rate(f.Oil(), false)}, calculator.Result{Name: "water cut", Value: f.WaterCut})
	}
	a.Results = append(a.Results, calculator.Result{Name: "crossflow", Value: rate(f.Crossflow, gas)},
		calculator.Result{Name: "tubing pressure at the topmost zone", Value: f.Pressure})
	a.Steps = n.Steps(&f)
	a.Draw = in.picture(w, f, gas)
	return a, nil
}

// flow is that of the positions asked for, or of those that the search finds.
func (in inputs) flow(a *calculator.Answer, n *production.Network, at []int) (f production.Flow, err error) {
	if in.search == "" {
		err = n.Solve(at, &f)
		return f, err
	}
	c, err := in.find(n, len(at))
	if err != nil {
		return f, err
	}
	a.Notes = append(a.Notes, fmt.Sprintf("%d settings tried, %d flow, %d are within the limits", c.Tried, c.Solved, c.Allowed))
	if in.search == "split" {
		a.Results = append(a.Results, calculator.Result{Name: "greatest difference from the wanted share", Value: c.Deviation})
	}
	return c.Flow, nil
}

// tell adds what every zone gives or takes.
func (in inputs) tell(a *calculator.Answer, w production.Well, n *production.Network, f *production.Flow, gas bool) {
	positions := make([]int, len(f.Zones))
	for i, z := range f.Zones {
		positions[i] = z.Position
	}
	names := n.Names(positions)
	t := calculator.Table{Name: "Zones, from the bottom up", Header: []string{"zone", "choke", "rate", "share", "water in it", "in front of it", "across the choke", "in the tubing", "passing above it"}}
	for i, z := range f.Zones {
		t.Rows = append(t.Rows, []any{w.Zones[i].Name, names[i], rate(z.Rate, gas), f.Share(i), rate(z.Water, gas), z.Sandface, z.Drop, z.Tubing, rate(z.Passing, gas)})
		if z.Takes {
			a.Notes = append(a.Notes, fmt.Sprintf("crossflow: %s takes %s from the others", w.Zones[i].Name, in.units.Format(-z.Rate, purpose(gas))))
		}
		if z.Shut {
			a.Notes = append(a.Notes, fmt.Sprintf("%s is shut; its choke holds %s", w.Zones[i].Name, in.units.Format(z.Drop, display.Usual)))
		}
	}
	a.Tables = append(a.Tables, t)
}

// find searches the positions that exist.
func (in inputs) find(n *production.Network, zones int) (production.Choice, error) {
	limits := production.Limits{NoCrossflow: in.noCrossflow}
	var c production.Choice
	var err error
	switch in.search {
	case "most":
		c, err = n.MostRate(limits)
	case "water":
		c, err = n.LimitWater(in.water, limits)
	case "split":
		var targets []float64
		if targets, err = in.shares(zones); err == nil {
			c, err = n.MatchSplit(targets, limits)
		}
	default:
		err = fmt.Errorf("-search is %q; it must be most, split or water", in.search)
	}
	if err != nil && !errors.Is(err, production.ErrNoSetting) && !errors.Is(err, production.ErrTooMany) {
		return production.Choice{}, calculator.BadInput{Err: err}
	}
	return c, err
}

// shares reads the wanted split.
func (in inputs) shares(zones int) ([]float64, error) {
	var targets []float64
	for part := range strings.SplitSeq(in.split, ":") {
		x, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
		if err != nil {
			return nil, fmt.Errorf("-split is %q; write one number per zone, such as %s", in.split, strings.TrimSuffix(strings.Repeat("1:", zones), ":"))
		}
		targets = append(targets, x)
	}
	return targets, nil
}
