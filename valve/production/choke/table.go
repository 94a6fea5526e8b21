package choke

import (
	"errors"
	"fmt"

	"completion.example/hydrostatics/unit"
	"gonum.org/v1/gonum/interp"
)

// ErrOutsideTable says that a travel lies beyond the table's ends.
var ErrOutsideTable = errors.New("choke: outside the table")

// Position is one opening of a choke.
type Position struct {
	Name        string               // such as "shut", "3" or "open"
	Travel      float64              // share of the stroke, 0 to 1
	Coefficient unit.FlowCoefficient // zero is shut
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
	if len(t) == 0 {
		return errors.New("choke: the table has no position")
	}
	var faults []error
	names := map[string]int{}
	for i, p := range t {
		fault := func(format string, args ...any) {
			faults = append(faults, fmt.Errorf("choke: position %d (%q): %s", i+1, p.Name, fmt.Sprintf(format, args...)))
		}
		if p.Name == "" {
			fault("it must have a name")
		}
		if j, twice := names[p.Name]; twice {
			fault("has the name of position %d", j)
		}
		names[p.Name] = i + 1
		if !(p.Travel >= 0 && p.Travel <= 1) {
			fault("travel is %v; it must be 0 to 1", p.Travel)
		}
		if !finite(float64(p.Coefficient)) || p.Coefficient < 0 {
			fault("coefficient is %v; it must be zero or more", p.Coefficient)
		}
		if i > 0 && p.Travel <= t[i-1].Travel {
			fault("travel is %v; it must be above the %v before it", p.Travel, t[i-1].Travel)
		}
		if i > 0 && p.Coefficient < t[i-1].Coefficient {
			fault("coefficient is %v; it must not be below the %v before it", p.Coefficient, t[i-1].Coefficient)
		}
	}
	return errors.Join(faults...)
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
		return nil, errors.New("choke: the table has one position; a curve needs two")
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
