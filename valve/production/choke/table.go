package choke

import (
	"errors"
	"fmt"

	"gonum.org/v1/gonum/interp"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// ErrOutsideTable says that a travel lies beyond the table's ends.
var ErrOutsideTable = errors.New("choke: outside the table")

// Position is one opening of a choke.
type Position struct {
	Name        string               `json:"name"`        // such as "shut", "3" or "open"
	Travel      float64              `json:"travel"`      // share of the stroke, 0 to 1
	Coefficient unit.FlowCoefficient `json:"coefficient"` // zero is shut
}

// Shut tells whether nothing flows in this position.
func (p Position) Shut() bool { return p.Coefficient == 0 }

// Table is a choke with positions, in the order of its travel. A stepped choke
// has these openings and no others; of one that stops anywhere, Curve gives
// the openings in between.
type Table []Position

// Validate reports everything that is wrong with a table: no position at all,
// names empty or twice, travels outside 0 to 1 or not rising, coefficients
// negative or falling.
func (t Table) Validate() error {
	f := fault.In(scope)
	if len(t) == 0 {
		f.New("", "table is empty; must be one position or more")
	}
	names := map[string]int{}
	for i, p := range t {
		at := fault.Index("", i)
		f.Add(fault.Given(at+".Name", p.Name))
		if j, twice := names[p.Name]; twice {
			f.New(at+".Name", "is %q like position %d; must differ", p.Name, j)
		}
		names[p.Name] = i + 1
		f.Add(fault.Between(at+".Travel", p.Travel, 0, 1), fault.AtLeast(at+".Coefficient", p.Coefficient, 0))
		if i > 0 && p.Travel <= t[i-1].Travel {
			f.New(at+".Travel", "is %v; must be above the %v before it", p.Travel, t[i-1].Travel)
		}
		if i > 0 && p.Coefficient < t[i-1].Coefficient {
			f.New(at+".Coefficient", "is %v; must be at least the %v before it", p.Coefficient, t[i-1].Coefficient)
		}
	}
	return f.Err()
}

// Index returns the position of a name, or -1.
func (t Table) Index(name string) int {
	for i, p := range t {
		if p.Name == name {
			return i
		}
	}
	return -1
}

// Least returns the index of the least opening that passes at least c, or -1
// where none does.
func (t Table) Least(c unit.FlowCoefficient) int {
	for i, p := range t {
		if p.Coefficient >= c {
			return i
		}
	}
	return -1
}

// Curve is a table made ready for openings in between, along straight lines.
// It is safe for concurrent use.
type Curve struct {
	table Table
	lines interp.PiecewiseLinear
}

// Curve prepares a table of at least two positions.
func (t Table) Curve() (*Curve, error) {
	if err := t.Validate(); err != nil {
		return nil, err
	}
	if len(t) < 2 {
		return nil, fault.NewIn(scope, "", "table has one position; must have two or more for a curve")
	}
	c := &Curve{table: t}
	x, y := make([]float64, len(t)), make([]float64, len(t))
	for i, p := range t {
		x[i], y[i] = p.Travel, float64(p.Coefficient)
	}
	if err := c.lines.Fit(x, y); err != nil {
		return nil, fmt.Errorf("choke: %w", err)
	}
	return c, nil
}

// At returns the coefficient at a travel. Errors: ErrOutsideTable.
func (c *Curve) At(travel float64) (unit.FlowCoefficient, error) {
	if c == nil || len(c.table) == 0 {
		return 0, fmt.Errorf("%w: the curve has no table: make it with Table.Curve", ErrOutsideTable)
	}
	first, last := c.table[0].Travel, c.table[len(c.table)-1].Travel
	if !(travel >= first && travel <= last) {
		return 0, fmt.Errorf("%w: travel is %v; the table runs from %v to %v", ErrOutsideTable, travel, first, last)
	}
	return unit.FlowCoefficient(c.lines.Predict(travel)), nil
}
