package production

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"

	"gonum.org/v1/gonum/interp"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// OutflowPoint is a rate with the pressure that it takes at the topmost zone.
type OutflowPoint struct {
	Rate     unit.FlowRate `json:"rate"`
	Pressure unit.Pressure `json:"pressure"`
}

// OutflowTable is the pressure at the topmost zone for rates to surface, rising
// in rate, from whatever method or measurement. Between the points it runs
// along a smooth curve that never overshoots them (Fritsch and Butland, 1984).
//
// Such tables often fall first, where gas lifts better with more flow, and
// rise later. Flow on the falling branch is not stable, so that the solver
// looks on the rising one only, from the least pressure on: there is at most one
// answer.
type OutflowTable []OutflowPoint

// Validate reports fewer than two points, rates that are negative or not
// rising, and pressures that fall again after they rose.
func (t OutflowTable) Validate() error {
	if len(t) < 2 {
		return fault.NewIn(scope, "", "outflow table has %d points; must have two or more", len(t))
	}
	f := fault.In(scope)
	rising := false
	for i, p := range t {
		at := fault.Index("", i)
		f.Add(fault.AtLeast(at+".Rate", p.Rate, 0), notVacuum(at+".Pressure", p.Pressure))
		if i > 0 && p.Rate <= t[i-1].Rate {
			f.New(at+".Rate", "is %v; must be above the %v before it", p.Rate, t[i-1].Rate)
		}
		if i > 0 && p.Pressure > t[i-1].Pressure {
			rising = true
		}
		if rising && p.Pressure < t[i-1].Pressure {
			f.New(at+".Pressure", "is %v; must be at least the %v before it, once risen", p.Pressure, t[i-1].Pressure)
		}
	}
	if err := f.Err(); err != nil {
		return err
	}
	if len(t)-t.least() < 2 {
		return fault.NewIn(scope, "", "outflow table only falls; must have two points or more in its stable, rising branch")
	}
	return nil
}

// least is the index of the first point of least pressure: from there on the table doesn't fall.
func (t OutflowTable) least() int {
	k := 0
	for i, p := range t {
		if p.Pressure < t[k].Pressure {
			k = i
		}
	}
	return k
}

// table is the rising branch, carried on straight at both ends so that the
// solver has a value everywhere; an answer out there is refused.
type table struct {
	curve                 interp.FritschButland
	first, last           float64 // rates
	firstP, lastP         float64
	firstSlope, lastSlope float64
}

func (t *table) at(q float64) (p, slope float64) {
	switch {
	case q < t.first:
		return t.firstP + t.firstSlope*(q-t.first), t.firstSlope
	case q > t.last:
		return t.lastP + t.lastSlope*(q-t.last), t.lastSlope
	}
	return t.curve.Predict(q), t.curve.PredictDerivative(q)
}

func (t OutflowTable) prepare() (outflow, error) {
	branch := t[t.least():]
	x, y := make([]float64, len(branch)), make([]float64, len(branch))
	for i, p := range branch {
		x[i], y[i] = float64(p.Rate), float64(p.Pressure)
	}
	r := &table{}
	if err := r.curve.Fit(x, y); err != nil {
		return outflow{}, fmt.Errorf("production: outflow table: %w", err)
	}
	n := len(x) - 1
	r.first, r.firstP, r.firstSlope = x[0], y[0], max(0, r.curve.PredictDerivative(x[0]))
	r.last, r.lastP, r.lastSlope = x[n], y[n], max(0, r.curve.PredictDerivative(x[n]))
	return outflow{kind: tabled, pressure: y[0], table: r}, nil
}

// ReadOutflowTable reads an outflow table as CSV with the columns rate,pressure,
// each value with its unit. Lines that begin with # are left out. The error
// names every faulty line.
func ReadOutflowTable(r io.Reader) (OutflowTable, error) {
	in := csv.NewReader(r)
	in.Comment, in.TrimLeadingSpace = '#', true
	rows, err := in.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("production: outflow table: %w", err)
	}
	if len(rows) == 0 || strings.Join(rows[0], ",") != "rate,pressure" {
		return nil, fault.NewIn(scope, "line 1", "is not rate,pressure; must be")
	}
	var t OutflowTable
	f := fault.In(scope)
	for i, row := range rows[1:] {
		var p OutflowPoint
		f.At(fmt.Sprintf("row %d", i+1), fault.Join("", fault.At("rate", p.Rate.UnmarshalText([]byte(row[0]))), fault.At("pressure", p.Pressure.UnmarshalText([]byte(row[1])))))
		t = append(t, p)
	}
	if err := f.Err(); err != nil {
		return nil, err
	}
	return t, t.Validate()
}
