// Package fault is the one kit for validating: it words and gathers the faults
// that completion.example/hydrostatics/unit/fault lets users list.
//
//	f := fault.In("tubular")
//	f.Add(fault.Above("OD", p.OD, 0), fault.Between("Share", x, 0, 1))
//	f.At(fault.Index("Sections", i), s.Pipe.Validate())
//	return f.Err() // nil, or every fault
package fault

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	public "completion.example/hydrostatics/unit/fault"
)

// Fault is one thing wrong with an input, and where.
type Fault = public.Fault

// Faults gathers what is wrong with the inputs of one package.
type Faults struct {
	scope string
	list  []error
}

// In returns an empty list of the package scope, whose name its errors begin
// with.
func In(scope string) Faults { return Faults{scope: scope} }

// Add notes errors; nil is none.
func (f *Faults) Add(errs ...error) {
	for _, err := range errs {
		if err != nil {
			f.list = append(f.list, err)
		}
	}
}

// New notes a fault in words of its own: "is %v; must be ...".
func (f *Faults) New(path, format string, args ...any) { f.Add(New(path, format, args...)) }

// At notes what is wrong with a part; nil is nothing.
func (f *Faults) At(path string, err error) { f.Add(At(path, err)) }

// AtIndex notes what is wrong with an element of a list; nil is nothing, and
// costs nothing.
func (f *Faults) AtIndex(list string, i int, err error) {
	if err != nil {
		f.At(Index(list, i), err)
	}
}

// Any tells whether something is wrong so far.
func (f *Faults) Any() bool { return len(f.list) > 0 }

// Err returns all faults, or nil.
func (f *Faults) Err() error {
	if len(f.list) == 0 {
		return nil
	}
	return join(f.scope, f.list)
}

// Join returns what is wrong with the inputs of a package, or nil.
func Join(scope string, errs ...error) error {
	f := In(scope)
	f.Add(errs...)
	return f.Err()
}

// New returns a fault in words of its own: "is %v; must be ...".
func New(path, format string, args ...any) error {
	return Fault{Path: path, Err: fmt.Errorf(format, args...)}
}

// NewIn returns an only fault in words of its own.
func NewIn(scope, path, format string, args ...any) error {
	return Join(scope, New(path, format, args...))
}

// At returns the faults of err under the path of the part that it is about.
func At(path string, err error) error {
	if err == nil {
		return nil
	}
	parts := public.List(err)
	list := make([]error, len(parts))
	for i, p := range parts {
		list[i] = Fault{Path: public.Join(path, p.Path), Err: p.Err}
	}
	if len(list) == 1 {
		return list[0]
	}
	return join("", list)
}

// Index names an element of a list, such as Sections[2].
func Index(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }

// all is what Err returns.
type all struct {
	scope string
	list  []error
}

func join(scope string, errs []error) error {
	flat := public.List(errors.Join(errs...))
	list := make([]error, len(flat))
	for i, f := range flat {
		if f.Path == "" {
			list[i] = f.Err
		} else {
			list[i] = f
		}
	}
	return &all{scope, list}
}

// Error writes a line for each fault, each with the package's name.
func (a *all) Error() string {
	lines := make([]string, len(a.list))
	for i, err := range a.list {
		lines[i] = err.Error()
		if a.scope != "" && !strings.HasPrefix(lines[i], a.scope+": ") {
			lines[i] = a.scope + ": " + lines[i]
		}
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns the faults.
func (a *all) Unwrap() []error { return a.list }
