package tubular

import "completion.example/internal/fault"

// MarshalJSON returns an error: what a Body was made of is what is written.
func (Body) MarshalJSON() ([]byte, error) { return nil, errBodyJSON }

// UnmarshalJSON returns an error, as MarshalJSON does.
func (*Body) UnmarshalJSON([]byte) error { return errBodyJSON }

var errBodyJSON = fault.NewIn("tubular", "", "a Body is neither written as JSON nor read; write the Pipe, and prepare it again")
