package catalogue

import (
	_ "embed"
	"errors"
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"
	"sync"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

//go:embed pipes.csv
var pipes string

// Catalogue is a list of pipes. The zero value is empty. It is not changed by
// its methods.
type Catalogue struct {
	entries []Entry
}

// Errors to branch on.
var (
	ErrNotFound  = errors.New("not in the catalogue")
	ErrDuplicate = errors.New("already in the catalogue")
)

// NotFoundError says what was looked for and what there is. It wraps
// ErrNotFound.
type NotFoundError struct {
	OD     unit.Length
	Weight unit.WeightPerLength

	Sizes []unit.Length // what there is, where the size isn't
	Have  []Entry       // what there is of this size
}

func (e *NotFoundError) Error() string {
	var have []string
	if len(e.Have) == 0 {
		for _, od := range e.Sizes {
			have = append(have, od.String())
		}
		return fmt.Sprintf("OD %v: %v: there are %s", e.OD, ErrNotFound, strings.Join(have, ", "))
	}
	for _, entry := range e.Have {
		have = append(have, entry.Weight.String())
	}
	return fmt.Sprintf("%v at %v: %v: there are %s", e.OD, e.Weight, ErrNotFound, strings.Join(have, ", "))
}

func (e *NotFoundError) Unwrap() error { return ErrNotFound }

// Standard returns the API sizes.
func Standard() (Catalogue, error) { return standard() }

// standard reads the embedded table once; a Catalogue never changes.
var standard = sync.OnceValues(func() (Catalogue, error) {
	entries, err := Read(strings.NewReader(pipes))
	if err != nil {
		return Catalogue{}, err
	}
	return Catalogue{}.With(entries...)
})

// With returns the catalogue with more pipes in it. It is an error when an entry
// contradicts itself, or when a pipe of its size and weight is there already
// (the error wraps ErrDuplicate).
func (c Catalogue) With(entries ...Entry) (Catalogue, error) {
	all := slices.Clip(c.entries)
	f := fault.In("catalogue")
	for i, e := range entries {
		if err := e.Validate(); err != nil {
			f.At(fault.Index("entries", i), err)
			continue
		}
		if slices.ContainsFunc(all, func(x Entry) bool { return same(x, e.OD, e.Weight) }) {
			f.New(fault.Index("entries", i), "is %v: %w", e, ErrDuplicate)
			continue
		}
		all = append(all, e)
	}
	if err := f.Err(); err != nil {
		return Catalogue{}, err
	}
	return Catalogue{entries: all}, nil
}

// Entries returns all pipes, in the order in which they were added.
func (c Catalogue) Entries() []Entry { return slices.Clone(c.entries) }

// Sizes returns the outside diameters that there are, smallest first.
func (c Catalogue) Sizes() []unit.Length {
	var sizes []unit.Length
	for _, e := range c.entries {
		sizes = append(sizes, e.OD)
	}
	slices.Sort(sizes)
	return slices.Compact(sizes)
}

// OfSize returns the pipes of an outside diameter, lightest first.
func (c Catalogue) OfSize(od unit.Length) []Entry {
	var found []Entry
	for _, e := range c.entries {
		if sameSize(e.OD, od) || metricSize(e.OD, od) {
			found = append(found, e)
		}
	}
	sort.SliceStable(found, func(a, b int) bool { return found[a].Weight < found[b].Weight })
	return found
}

// Find returns the pipe of an outside diameter and nominal weight, which together
// name one pipe. The error is a *NotFoundError that lists what there is.
func (c Catalogue) Find(od unit.Length, weight unit.WeightPerLength) (Entry, error) {
	for _, e := range c.entries {
		if same(e, od, weight) {
			return e, nil
		}
	}
	for _, e := range c.entries {
		if (sameSize(e.OD, od) || metricSize(e.OD, od)) && (same(e, e.OD, weight) || metricWeight(e.Weight, weight)) {
			return e, nil
		}
	}
	have := c.OfSize(od)
	if len(have) > 0 {
		od = have[0].OD
	}
	return Entry{}, fault.Join("catalogue", &NotFoundError{OD: od, Weight: weight, Sizes: c.Sizes(), Have: have})
}

// same tells whether e is the pipe of that size and weight, to the digits in
// which they are printed.
func same(e Entry, od unit.Length, weight unit.WeightPerLength) bool {
	const digit = 0.004 * unit.PoundPerFoot
	return sameSize(e.OD, od) && math.Abs(float64(e.Weight-weight)) <= float64(digit)
}

// digit is what two prints of one size may differ by.
const digit = 0.0006 * unit.Inch

// metricSize tells whether a size is that of the table as the metric trade calls it, to a
// tenth of a millimetre: 9-5/8 in is 244.475 mm, and called 244.5 mm.
func metricSize(table, od unit.Length) bool {
	return tenth(table.In(unit.Millimetre), od.In(unit.Millimetre))
}

// metricWeight tells the same of a weight, to a tenth of a kilogram per metre: 53.5 lb/ft
// are 79.617 kg/m, and called 79.6 kg/m.
func metricWeight(table, weight unit.WeightPerLength) bool {
	return tenth(table.In(unit.KilogramPerMetre), weight.In(unit.KilogramPerMetre))
}

// tenth tells whether x is a number of tenths, and as near to a figure as that says.
func tenth(figure, x float64) bool {
	return math.Abs(10*x-math.Round(10*x)) < 1e-6 && math.Abs(figure-x) <= 0.05001
}

func sameSize(a, b unit.Length) bool {
	return math.Abs(float64(a-b)) <= float64(digit)
}
