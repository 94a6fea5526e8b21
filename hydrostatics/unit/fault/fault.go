// Package fault is what every package here reports of a bad input: a list of
// faults, all at once, each with the path of the field that it is about.
//
//	for _, f := range fault.List(pipe.Validate()) {
//		fmt.Println(f.Path, f.Err) // OD  is -2.875 in; must be above 0 in
//	}
//
// An error of Validate, of a file that was read and of a calculation that
// checks its inputs unwraps to such a list; errors.As finds its first Fault,
// and errors.Is whatever a fault wraps. Everything here is safe for concurrent
// use.
package fault

import (
	"encoding/json"
	"errors"
	"strings"
)

// Fault is one thing wrong with an input, and where.
type Fault struct {
	// Path leads to the field, from the value that was validated: fields with
	// their names in Go, or in a file with its names, such as
	// steps[3].ramps[0].tubing. It is empty for the value itself.
	Path string
	// Err says what is wrong, with the value and what would do.
	Err error
}

func (f Fault) Error() string {
	if f.Path == "" {
		return f.Err.Error()
	}
	return f.Path + ": " + f.Err.Error()
}

// Unwrap returns the fault without its place.
func (f Fault) Unwrap() error { return f.Err }

// written is how a Fault stands in JSON.
type written struct {
	Path  string `json:"path"`
	Fault string `json:"fault"`
}

// MarshalJSON writes the path and what is wrong as text.
func (f Fault) MarshalJSON() ([]byte, error) {
	if f.Err == nil {
		return nil, errors.New("fault: a fault without an error")
	}
	return json.Marshal(written{f.Path, f.Err.Error()})
}

// UnmarshalJSON reads what MarshalJSON wrote; the error is then plain text.
func (f *Fault) UnmarshalJSON(text []byte) error {
	var w written
	if err := json.Unmarshal(text, &w); err != nil {
		return err
	}
	*f = Fault{w.Path, errors.New(w.Fault)}
	return nil
}

// List returns the faults that err holds, in their order, each with its whole
// path. An error that is no fault stands in it under an empty path; nil is no
// faults.
func List(err error) []Fault { return appendTo(nil, "", err) }

func appendTo(list []Fault, path string, err error) []Fault {
	if err == nil {
		return list
	}
	if f, ok := err.(Fault); ok {
		return appendTo(list, Join(path, f.Path), f.Err)
	}
	switch e := err.(type) {
	case interface{ Unwrap() []error }:
		for _, part := range e.Unwrap() {
			list = appendTo(list, path, part)
		}
		return list
	case interface{ Unwrap() error }:
		if within := e.Unwrap(); holds(within) {
			return appendTo(list, path, within)
		}
	}
	return append(list, Fault{path, err})
}

// holds tells whether err holds a Fault.
func holds(err error) bool {
	var f Fault
	return errors.As(err, &f)
}

// Join returns the path of a part in a whole: a dot between two names, none
// before an index.
func Join(whole, part string) string {
	if whole == "" || part == "" || strings.HasPrefix(part, "[") {
		return whole + part
	}
	return whole + "." + part
}
