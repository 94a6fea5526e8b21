package hydrostatics

import "completion.example/internal/fault"

// MarshalJSON returns an error: what a Column was made of is what is written.
func (Column) MarshalJSON() ([]byte, error) { return nil, errColumnJSON }

// UnmarshalJSON returns an error, as MarshalJSON does.
func (*Column) UnmarshalJSON([]byte) error { return errColumnJSON }

var errColumnJSON = fault.NewIn("hydrostatics", "", "a Column is neither written as JSON nor read; write its Layers, temperatures and Reference, and make it again with NewColumn")
